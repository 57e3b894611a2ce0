package tallywell.report;

/** Addresses of cells as formulas write them; rows and columns count from 0. */
final class At {
    private static final String[] COLUMNS = new String[512];

    static {
        for (int i = 0; i < COLUMNS.length; i++) {
            COLUMNS[i] = spell(i);
        }
    }

    private At() {}

    /** The letters of a column. */
    static String column(int column) {
        return column < COLUMNS.length ? COLUMNS[column] : spell(column);
    }

    private static String spell(int column) {
        StringBuilder letters = new StringBuilder();
        for (int rest = column + 1; rest > 0; rest = (rest - 1) / 26) {
            letters.insert(0, (char) ('A' + (rest - 1) % 26));
        }
        return letters.toString();
    }

    /** A cell that moves with the formula, such as {@code B7}. */
    static String cell(int row, int column) {
        return column(column) + (row + 1);
    }

    /** A cell that stays, such as {@code $B$7}. */
    static String fixed(int row, int column) {
        return "$" + column(column) + "$" + (row + 1);
    }

    /** The cells of one column that stay, such as {@code $B$2:$B$97}. */
    static String fixed(int firstRow, int lastRow, int column) {
        return fixed(firstRow, column) + ":" + fixed(lastRow, column);
    }

    /** The cells of one row, such as {@code C7:F7}. */
    static String across(int row, int firstColumn, int lastColumn) {
        return cell(row, firstColumn) + ":" + cell(row, lastColumn);
    }
}
