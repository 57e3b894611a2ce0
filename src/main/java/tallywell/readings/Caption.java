package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** The words above readings: titles near them, settings and remarks further up. */
final class Caption {
    private static final int MOST_LINES = 200;
    /** Words in the name of a quantity. */
    private static final int LONGEST_NAME = 4;

    private static final Set<String> LENGTH_WORDS = Set.of("cm", "mm", "length", "light", "optical", "optische");

    private final Sheet sheet;
    private final int from;
    private final int to;

    /**
     * The rows between two others.
     *
     * @param from the first row
     * @param to the row behind the last one
     */
    Caption(Sheet sheet, int from, int to) {
        this.sheet = sheet;
        this.from = from;
        this.to = to;
    }

    /**
     * Takes up what the rows say of readings below them; what stands nearer counts more. Where several stand side by
     * side, a row with words over more than one of them speaks to each of them only through the words over it.
     *
     * @param all the readings below these rows
     */
    Facts over(Piece piece, List<Piece> all) {
        int last = Integer.MAX_VALUE;
        int first = 0;
        int left = piece.left();
        int right = piece.right();
        for (Piece other : all) {
            first = other.right() < left ? Math.max(first, other.right() + 1) : first;
            last = other.left() > right ? right : last;
        }
        Facts facts = Facts.none();
        boolean near = true;
        boolean seen = false;
        for (int row = to - 1; row >= Math.max(from, to - MOST_LINES); row--) {
            if (sheet.isBlank(row)) {
                near &= !seen;
                continue;
            }
            seen = true;
            List<Integer> over = over(row, first, last);
            boolean shared = !over.isEmpty() && over.size() < sheet.filled(row).size();
            String line = shared ? words(row, over) : sheet.line(row);
            boolean setting = (shared ? over.size() : sheet.filled(row).size()) >= 2
                    || line.matches("(?s)[^:=]*\\p{L}[^:=]*[:=].*")
                    || Claim.isAmount(line);
            facts = merged(facts, Claim.of(Facts.ofLine(line), line, facts), setting, near);
        }
        return facts;
    }

    private List<Integer> over(int row, int first, int last) {
        return sheet.filled(row).stream()
                .filter(column -> column >= first && column <= last)
                .toList();
    }

    private String words(int row, List<Integer> columns) {
        return columns.stream().map(column -> sheet.text(row, column)).collect(Collectors.joining(" "));
    }

    private static Facts merged(Facts facts, Facts line, boolean setting, boolean near) {
        boolean processed = line.isProcessed() || near && line.has(Meaning.PATH) && !isLength(line);
        boolean talksOfReadings = line.has(Meaning.VALUE) || line.has(Meaning.RAW) || line.isProcessed();
        boolean title = !setting || near && talksOfReadings && facts.label().isEmpty() && !line.has(Meaning.WAVELENGTH);
        Facts of = title ? line : line.withLabel("");
        if (!title || !facts.label().isEmpty() || of.label().isEmpty()) {
            // Words of settings do not describe the readings themselves.
            of = of.withMeanings(List.of());
        } else if (of.label().split(" ").length > LONGEST_NAME) {
            // A long title tells what was done; that it mentions another quantity does not make it one.
            of = of.without(Meaning.STATISTIC).without(Meaning.OTHER).without(Meaning.TEMPERATURE);
        }
        Facts merged = facts.or(of);
        return processed ? merged.plus(Meaning.PROCESSED) : merged;
    }

    /** A path length by itself is a setting; with other words it is what was done to the readings. */
    private static boolean isLength(Facts line) {
        return Words.split(line.label().toLowerCase(Locale.ROOT)).stream()
                .filter(word -> Character.isLetter(word.charAt(0)))
                .allMatch(word -> Words.of(word).contains(Meaning.PATH) || LENGTH_WORDS.contains(word));
    }

    /** Durations with their units that the words name: they may show the unit of times that have none. */
    static List<String> lines(Sheet sheet, int from, int to) {
        List<String> lines = new ArrayList<>();
        for (int row = Math.max(from, to - MOST_LINES); row < to; row++) {
            if (!sheet.isBlank(row)) {
                lines.add(sheet.line(row));
            }
        }
        return lines;
    }
}
