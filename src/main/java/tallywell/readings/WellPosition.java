package tallywell.readings;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tallywell.plate.Well;

/**
 * Where a row names its well.
 *
 * @param first the first column of the name
 * @param letter the column of the letter; -1 if one column holds all
 * @param number the column of the number; -1 likewise
 * @param numbered whether rows of the plate are numbered, too
 */
record WellPosition(int first, int letter, int number, boolean numbered) {
    WellPosition(int first, int letter, int number) {
        this(first, letter, number, false);
    }

    Optional<Well> well(Sheet sheet, int row) {
        if (letter < 0) {
            Optional<Well> well = sheet.well(row, first);
            return well.isPresent() || sheet.look(row, first) != Look.TEXT ? well : named(sheet.text(row, first));
        }
        int of = numbered ? sheet.plateColumn(row, letter) : sheet.plateRow(row, letter);
        int at = sheet.plateColumn(row, number);
        return of < 0 || at < 0 ? Optional.empty() : Optional.of(new Well(of, at));
    }

    private static Optional<Well> named(String text) {
        return WellHeading.parse(text)
                .filter(heading -> heading.facts().has(Meaning.WELL))
                .map(WellHeading::well);
    }

    /** Whether headings say that the two columns name rows and columns of a plate. */
    boolean isHeaded(Sheet sheet, int row) {
        if (well(sheet, row).isEmpty()) {
            return false;
        }
        for (int up = row - 1; up >= Math.max(0, row - WellsDown.MOST_HEADING_ROWS); up--) {
            if (numbered) {
                return Words.in(sheet.text(up, letter)).contains(Meaning.ROW)
                        && Words.in(sheet.text(up, number)).contains(Meaning.COLUMN);
            }
            if (Words.in(sheet.text(up, letter)).contains(Meaning.ROW)
                    || Words.in(sheet.text(up, number)).contains(Meaning.COLUMN)) {
                return true;
            }
        }
        return false;
    }

    /** Letters and numbers beside each other name wells if they repeat in a longer list. */
    boolean isPair(Sheet sheet, int row) {
        if (well(sheet, row).isEmpty()) {
            return false;
        }
        Map<Integer, Integer> letters = new HashMap<>();
        Map<Integer, Integer> numbers = new HashMap<>();
        Set<Well> wells = new java.util.HashSet<>();
        int lines = 0;
        for (int at = row;
                at < Math.min(sheet.rows(), row + 200) && well(sheet, at).isPresent();
                at++) {
            Well well = well(sheet, at).get();
            letters.merge(well.row(), 1, Integer::sum);
            numbers.merge(well.column(), 1, Integer::sum);
            wells.add(well);
            lines++;
        }
        int width = sheet.filled(row).size();
        return lines >= 3
                && (letters.size() < lines || numbers.size() < lines)
                && (wells.size() == lines || lines % wells.size() == 0)
                && !(letters.size() == lines && width > 4);
    }

    boolean holds(int column) {
        return column == first || column == letter || column == number;
    }
}
