package tallywell.readings;

import java.util.function.IntUnaryOperator;

/**
 * Where the readings of some wells stand in a sheet.
 *
 * @param size how many readings a well has, by the number of the well
 * @param row the row of a reading, by the number of the well and of the reading
 * @param column its column, likewise
 * @param byTime whether the sheet goes through all wells before it goes on to the next reading
 */
record Places(IntUnaryOperator size, Spot row, Spot column, boolean byTime) {
    /** A row or a column. */
    interface Spot {
        int at(int well, int reading);
    }

    /** One reading a well. */
    static Places single(int[] rows, int[] columns) {
        return new Places(well -> 1, (well, reading) -> rows[well], (well, reading) -> columns[well], true);
    }

    /** Wells across: each has a column, each reading a row. */
    static Places across(int[] rows, int[] columns) {
        return new Places(
                well -> rows.length, (well, reading) -> rows[reading], (well, reading) -> columns[well], true);
    }

    /** Wells down: each has a row, each reading a column. */
    static Places down(int[] rows, int[] columns) {
        return new Places(
                well -> columns.length, (well, reading) -> rows[well], (well, reading) -> columns[reading], false);
    }

    /** Each reading has a row of its own, all in one column. */
    static Places listed(int[][] rows, int column, boolean byTime) {
        return new Places(
                well -> rows[well].length, (well, reading) -> rows[well][reading], (well, reading) -> column, byTime);
    }
}
