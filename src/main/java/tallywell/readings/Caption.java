package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tallywell.notice.Notice;
import tallywell.quantity.Numbers;

/** The words above readings, or below them: titles near them, settings and remarks further up. */
final class Caption {
    private static final int MOST_LINES = 200;
    /** Words in the name of a quantity. */
    private static final int LONGEST_NAME = 4;

    private static final Set<String> LENGTH_WORDS = Vocabulary.of("LENGTH");

    private final Sheet sheet;
    private final int from;
    private final int to;
    private final boolean below;
    private final List<Notice> notes = new ArrayList<>();

    private Caption(Sheet sheet, int from, int to, boolean below) {
        this.sheet = sheet;
        this.from = from;
        this.to = to;
        this.below = below;
    }

    /**
     * The rows above readings.
     *
     * @param from the first row
     * @param to the row behind the last one, where the readings begin
     */
    static Caption above(Sheet sheet, int from, int to) {
        return new Caption(sheet, from, to, false);
    }

    /** The rows below readings, likewise. */
    static Caption below(Sheet sheet, int from, int to) {
        return new Caption(sheet, from, to, true);
    }

    /** The lines that decisions rest on, and mentions that were passed over. */
    List<Notice> notes() {
        return notes;
    }

    /**
     * Takes up what the rows say of readings beside them; what stands nearer counts more. Where several stand side by
     * side, a row with words over more than one of them speaks to each of them only through the words over it.
     *
     * @param all the readings that these rows may speak of
     */
    Facts of(Piece piece, List<Piece> all) {
        int last = Integer.MAX_VALUE;
        int first = 0;
        int left = piece.left();
        int right = piece.right();
        for (Piece other : all) {
            first = other.right() < left ? Math.max(first, other.right() + 1) : first;
            last = other.left() > right ? right : last;
        }
        WavelengthMentions mentions = new WavelengthMentions();
        Facts facts = Facts.none();
        boolean near = true;
        boolean seen = false;
        for (int row : nearestFirst()) {
            if (sheet.isBlank(row)) {
                near &= !seen;
                continue;
            }
            seen = true;
            List<Integer> over = over(row, first, last);
            boolean shared = !over.isEmpty() && over.size() < sheet.filled(row).size();
            String text = shared ? words(row, over) : sheet.line(row);
            boolean setting = (shared ? over.size() : sheet.filled(row).size()) >= 2 || isSetting(text);
            Facts line = Claim.of(Facts.ofLine(text), text, mentions.nearest(facts));
            mentions.add(line, new Line(text, sheet.table().place(row)), near);
            facts = merged(facts, line.withoutWavelength(), new Setting(setting, text), near);
        }
        Facts settled = mentions.settle(facts);
        noteGrounds(mentions, settled);
        return settled;
    }

    private void noteGrounds(WavelengthMentions mentions, Facts settled) {
        settled.wavelengthNm()
                .ifPresent(nm -> mentions.ground(nm)
                        .ifPresent(line -> notes.add(Notice.information(
                                line.place(),
                                "'" + line.text() + "' gives the wavelength, " + Numbers.plain(nm) + " nm"))));
        if (settled.wavelengthNm().isEmpty()) {
            mentions.chances()
                    .forEach(text -> notes.add(Notice.information(sheet.table().place(from), text)));
        }
    }

    private List<Integer> nearestFirst() {
        int length = Math.min(to - from, MOST_LINES);
        return IntStream.range(0, length)
                .map(i -> below ? from + i : to - 1 - i)
                .boxed()
                .toList();
    }

    /** Whether a line says what something is set to, rather than what the readings are called. */
    static boolean isSetting(String line) {
        return line.matches("(?s)[^:=：]*\\p{L}[^:=：]*[:=：].*") || Claim.isAmount(line);
    }

    /** A line and whether it is a setting. */
    private record Setting(boolean is, String text) {
        /** Whether it says what the readings are: their unit, or what was measured. */
        boolean ofReadings(Facts line) {
            return line.has(Meaning.UNIT_KEY) || line.has(Meaning.READING_KEY);
        }
    }

    private List<Integer> over(int row, int first, int last) {
        return sheet.filled(row).stream()
                .filter(column -> column >= first && column <= last)
                .toList();
    }

    private String words(int row, List<Integer> columns) {
        return columns.stream().map(column -> sheet.text(row, column)).collect(Collectors.joining(" "));
    }

    private static Facts merged(Facts facts, Facts line, Setting setting, boolean near) {
        boolean processed = line.isProcessed() || near && line.has(Meaning.PATH) && !isLength(line);
        boolean talksOfReadings = line.has(Meaning.VALUE) || line.has(Meaning.RAW) || line.isProcessed();
        boolean title =
                !setting.is() || near && talksOfReadings && facts.label().isEmpty() && !line.has(Meaning.WAVELENGTH);
        Facts of = title ? line : line.withLabel("");
        if (!title || !facts.label().isEmpty() || of.label().isEmpty()) {
            // Words of settings do not describe the readings themselves.
            of = of.withMeanings(List.of());
        } else if (of.label().split(" ").length > LONGEST_NAME) {
            // A long title tells what was done; that it mentions another quantity does not make it one.
            of = of.without(Meaning.STATISTIC).without(Meaning.OTHER).without(Meaning.TEMPERATURE);
        }
        Facts merged = signal(facts.or(of), facts, line, setting);
        return processed ? merged.plus(Meaning.PROCESSED) : merged;
    }

    /** Whatever names the quantity that was measured holds for the readings, in a title or in a setting. */
    private static Facts signal(Facts merged, Facts nearer, Facts line, Setting setting) {
        boolean settled = nearer.has(Meaning.ABSORBANCE) || nearer.has(Meaning.OTHER_SIGNAL);
        if (settled || line.has(Meaning.NOTE) || line.has(Meaning.ACTION)) {
            return merged;
        }
        Facts found = merged;
        if (line.has(Meaning.ABSORBANCE)) {
            found = found.plus(Meaning.ABSORBANCE);
        } else if (line.has(Meaning.OTHER_SIGNAL) && (setting.ofReadings(line) || Claim.isSignal(setting.text()))) {
            found = found.plus(Meaning.OTHER_SIGNAL);
        } else if (setting.is() && line.has(Meaning.UNIT_KEY) && Claim.isOtherUnit(setting.text())) {
            found = found.plus(Meaning.OTHER_SIGNAL);
        }
        return setting.is() && line.has(Meaning.UNIT_KEY) && line.has(Meaning.MILLI)
                ? found.plus(Meaning.MILLI)
                : found;
    }

    /** A path length by itself is a setting; with other words it is what was done to the readings. */
    private static boolean isLength(Facts line) {
        return Words.split(line.label().toLowerCase(Locale.ROOT)).stream()
                .filter(word -> Character.isLetter(word.charAt(0)))
                .allMatch(word -> Words.of(word).contains(Meaning.PATH) || LENGTH_WORDS.contains(word));
    }

    /** The lines of words among some rows. */
    static List<Line> lines(Sheet sheet, int from, int to) {
        List<Line> lines = new ArrayList<>();
        for (int row = Math.max(from, to - MOST_LINES); row < to; row++) {
            if (!sheet.isBlank(row)) {
                lines.add(new Line(sheet.line(row), sheet.table().place(row)));
            }
        }
        return lines;
    }
}
