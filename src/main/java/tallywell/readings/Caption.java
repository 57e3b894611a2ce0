package tallywell.readings;

import java.util.ArrayList;
import java.util.List;

/** The words above readings: titles near them, settings and remarks further up. */
final class Caption {
    private static final int MOST_LINES = 200;
    /** Words in the name of a quantity. */
    private static final int LONGEST_NAME = 4;

    private Caption() {}

    /**
     * Takes up what the rows between two others say of the readings below them; what stands nearer counts more.
     *
     * @param from the first row
     * @param to the row behind the last one
     */
    static Facts of(Sheet sheet, int from, int to) {
        Facts facts = Facts.none();
        boolean near = true;
        boolean seen = false;
        for (int row = to - 1; row >= Math.max(from, to - MOST_LINES); row--) {
            if (sheet.isBlank(row)) {
                near &= !seen;
                continue;
            }
            seen = true;
            String line = sheet.line(row);
            boolean setting = isSetting(sheet, row, line);
            Facts of = Facts.ofLine(line);
            facts = merged(facts, of, setting, near);
        }
        return facts;
    }

    private static Facts merged(Facts facts, Facts line, boolean setting, boolean near) {
        boolean processed = line.isProcessed() || line.has(Meaning.PATH) && !setting && near;
        boolean talksOfReadings =
                line.has(Meaning.VALUE) || line.has(Meaning.RAW) || line.isProcessed() || line.isOtherQuantity();
        boolean title = !setting || near && talksOfReadings && facts.label().isEmpty();
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

    private static boolean isSetting(Sheet sheet, int row, String line) {
        return sheet.filled(row).size() >= 2 || line.matches("(?s)[^:=]*\\p{L}[^:=]*[:=].*");
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
