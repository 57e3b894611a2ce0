package tallywell.readings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tallywell.notice.InputException;
import tallywell.plate.Well;

/** Rows of a list that belong together, by well. */
final class RowGroup {
    private final Map<Well, Rows> wells = new LinkedHashMap<>();
    private int lastRow = -1;
    private int turns;
    private int rows;
    private Well before = new Well(0, 0);

    /** Takes up a row; rows must come in ascending order. */
    void add(Well well, int row) {
        if (lastRow >= 0 && !well.equals(before)) {
            turns++;
        }
        before = well;
        lastRow = row;
        rows++;
        wells.computeIfAbsent(well, none -> new Rows()).add(row);
    }

    /** The wells in the order of the file. */
    List<Well> wells() {
        return List.copyOf(wells.keySet());
    }

    /** The rows of each well. */
    int[][] rows() {
        return wells.values().stream().map(Rows::array).toArray(int[][]::new);
    }

    /** The first row of each well. */
    int[] firstRows() {
        return wells.values().stream().mapToInt(of -> of.rows[0]).toArray();
    }

    /** Whether the wells take turns, rather than each having all its rows together. */
    boolean isByTime() {
        return turns >= wells.size() && rows > wells.size();
    }

    /** Whether each well has all its rows together, or all wells take turns in one order. */
    boolean isRegular() {
        if (turns == wells.size() - 1) {
            return true;
        }
        List<Rows> all = List.copyOf(wells.values());
        for (int i = 1; i < all.size(); i++) {
            Rows one = all.get(i - 1);
            Rows next = all.get(i);
            for (int round = 0; round < Math.min(one.count, next.count); round++) {
                boolean turn = one.rows[round] < next.rows[round]
                        && (round + 1 >= one.count || next.rows[round] < one.rows[round + 1]);
                if (!turn) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Refuses a well that comes twice. */
    void refuseDoubles(Sheet sheet) throws InputException {
        for (Map.Entry<Well, Rows> each : wells.entrySet()) {
            if (each.getValue().count > 1) {
                throw doubled(sheet, each.getKey(), each.getValue());
            }
        }
    }

    private static InputException doubled(Sheet sheet, Well well, Rows of) {
        return new InputException(
                sheet.table().place(of.rows[1]),
                "found the well " + well + " a second time, first in "
                        + sheet.table().where(of.rows[0])
                        + "; expected each well once, or a time, a plate or a wavelength that tells the rows apart");
    }

    /**
     * Parts rows that nothing tells apart into lists in which each well comes once.
     *
     * @throws InputException unless each well comes equally often
     */
    List<RowGroup> rounds(Sheet sheet) throws InputException {
        int often = wells.values().iterator().next().count;
        if (wells.values().stream().anyMatch(of -> of.count != often)) {
            for (Map.Entry<Well, Rows> each : wells.entrySet()) {
                if (each.getValue().count > 1) {
                    throw doubled(sheet, each.getKey(), each.getValue());
                }
            }
        }
        List<RowGroup> rounds = new ArrayList<>();
        for (int i = 0; i < often; i++) {
            RowGroup round = new RowGroup();
            for (Map.Entry<Well, Rows> each : wells.entrySet()) {
                round.add(each.getKey(), each.getValue().rows[i]);
            }
            rounds.add(round);
        }
        return rounds;
    }

    private static final class Rows {
        private int[] rows = new int[1];
        private int count;

        void add(int row) {
            if (count == rows.length) {
                rows = Arrays.copyOf(rows, count * 2);
            }
            rows[count++] = row;
        }

        int[] array() {
            return Arrays.copyOf(rows, count);
        }
    }
}
