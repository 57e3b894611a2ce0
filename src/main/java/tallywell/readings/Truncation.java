package tallywell.readings;

import tallywell.notice.InputException;

/** Refuses files that end in the midst of a row of readings. */
final class Truncation {
    /** So many rows show whether numbers have a fixed number of decimals. */
    private static final int ROWS = 40;

    private Truncation() {}

    /**
     * Checks the last row of a piece, if it is the last of a file that ends without a line end.
     *
     * @throws InputException if it is shorter than the rows above it, or its last number has fewer decimals than all
     *     others
     */
    static void check(Piece piece) throws InputException {
        Sheet sheet = piece.sheet();
        int last = piece.last();
        if (!sheet.table().endsOpen() || last != sheet.rows() - 1 || last - 1 <= piece.first()) {
            return;
        }
        int width = sheet.width(last);
        int above = sheet.width(last - 1);
        if (width < above && above == sheet.width(last - 2)) {
            throw new InputException(
                    sheet.table().place(last),
                    "found the last row with " + width + " cells, the rows above with " + above
                            + "; expected all of them; the file is cut off, export it again");
        }
        int decimals = decimals(sheet, last, width - 1);
        int usual = usual(sheet, last, width);
        if (usual > 0 && decimals >= 0 && decimals < usual) {
            throw sheet.fault(
                    last,
                    width - 1,
                    "at the very end",
                    "a number with " + usual + " decimals as before it; the file is cut off, export it again");
        }
    }

    /** How many decimals all other numbers of the last rows have; 0 if they differ. */
    private static int usual(Sheet sheet, int last, int width) {
        int usual = -1;
        for (int row = Math.max(0, last - ROWS); row <= last; row++) {
            for (int column = 0; column < Math.min(sheet.width(row), width - (row == last ? 1 : 0)); column++) {
                int decimals = decimals(sheet, row, column);
                if (decimals > 0) {
                    if (usual >= 0 && decimals != usual) {
                        return 0;
                    }
                    usual = decimals;
                }
            }
        }
        return Math.max(usual, 0);
    }

    private static int decimals(Sheet sheet, int row, int column) {
        Look look = sheet.look(row, column);
        if (!look.isNumber()) {
            return -1;
        }
        String text = sheet.text(row, column);
        int mark = Math.max(text.lastIndexOf('.'), text.lastIndexOf(','));
        return mark < 0 ? 0 : text.length() - mark - 1;
    }
}
