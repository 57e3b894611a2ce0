package tallywell.readings;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tallywell.notice.InputException;

/**
 * Refuses rows of delimited text that have another number of cells than the rest of their table: a cell too many or too
 * few moves all behind it into the columns of their neighbours.
 */
final class RowWidths {
    private RowWidths() {}

    /**
     * Checks the rows of a table.
     *
     * @param heading the row of headings; -1 if there is none
     * @throws InputException at the first row of another width
     */
    static void check(Sheet sheet, List<Integer> rows, int heading) throws InputException {
        if (rows.size() < 2 || isPlaced(sheet)) {
            return;
        }
        Map<Integer, Integer> counts = new HashMap<>();
        for (int row : rows) {
            counts.merge(sheet.width(row), 1, Integer::sum);
        }
        int headed = heading < 0 ? 0 : sheet.width(heading);
        int usual = usual(counts, headed);
        for (int row : rows) {
            int width = sheet.width(row);
            int beyond = lastFilled(sheet, row) + 1;
            boolean wide = width > usual && beyond > Math.max(usual, headed);
            boolean narrow = width < usual && !isEnd(sheet, row);
            if (wide || narrow) {
                throw new InputException(
                        sheet.table().place(row),
                        "found a row of " + width + (width == 1 ? " cell" : " cells") + " in a table of " + usual
                                + "; expected as many as the rows beside it have, since one too many or too few moves"
                                + " readings to other wells"
                                + (wide ? "; a decimal comma among commas cuts a number in two" : ""));
            }
        }
    }

    /**
     * Refuses rows with readings behind their last heading.
     *
     * @throws InputException at the first such cell
     */
    static void checkHeaded(Sheet sheet, List<Integer> rows, int heading) throws InputException {
        if (isPlaced(sheet)) {
            return;
        }
        for (int row : rows) {
            for (int column = sheet.width(heading); column < sheet.width(row); column++) {
                if (sheet.look(row, column).isReading()) {
                    throw sheet.fault(
                            row,
                            column,
                            "beyond the last heading",
                            "one cell for each heading; a decimal comma between cells that are set apart by commas"
                                    + " cuts numbers in two");
                }
            }
        }
    }

    /** Whether cells have a place of their own, as in a workbook or in a table drawn with blanks. */
    private static boolean isPlaced(Sheet sheet) {
        return sheet.table().form().map(form -> form.delimiter().isBlank()).orElse(true);
    }

    private static int usual(Map<Integer, Integer> counts, int headed) {
        int most = counts.values().stream().mapToInt(Integer::intValue).max().orElse(0);
        return counts.entrySet().stream()
                .filter(each -> each.getValue() == most)
                .mapToInt(Map.Entry::getKey)
                .reduce((one, other) -> other == headed || one != headed && other > one ? other : one)
                .orElse(0);
    }

    /** The end of a file without a line end may be cut off, which has a message of its own. */
    private static boolean isEnd(Sheet sheet, int row) {
        return sheet.table().endsOpen() && row == sheet.rows() - 1;
    }

    private static int lastFilled(Sheet sheet, int row) {
        for (int column = sheet.width(row) - 1; column >= 0; column--) {
            if (sheet.look(row, column) != Look.EMPTY) {
                return column;
            }
        }
        return -1;
    }
}
