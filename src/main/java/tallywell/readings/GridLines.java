package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import tallywell.notice.InputException;
import tallywell.plate.Well;

/** The lines of one grid. */
final class GridLines {
    final List<Integer> lines = new ArrayList<>();
    final List<Integer> sides = new ArrayList<>();
    final List<Integer> depths = new ArrayList<>();
    int end = -1;
    int deep = 1;

    int last() {
        return sides.get(sides.size() - 1);
    }

    /** Whether the rows run from the last of the plate to the first. */
    boolean isUpward() {
        return sides.size() > 1 && sides.get(1) < sides.get(0);
    }

    void add(int row, int side) {
        lines.add(row);
        sides.add(side);
        depths.add(1);
        end = row;
    }

    void addMore(int row) {
        lines.add(row);
        depths.set(depths.size() - 1, depths.get(depths.size() - 1) + 1);
        end = row;
    }

    /** Each row must have as many lines as the others; a rest behind the last row is no part of the grid. */
    void settle(Sheet sheet, int side) throws InputException {
        if (lines.isEmpty()) {
            return;
        }
        deep = depths.get(0);
        int lastDepth = depths.get(depths.size() - 1);
        if (depths.size() > 1 && lastDepth > deep) {
            while (depths.get(depths.size() - 1) > deep
                    && sheet.look(lines.get(lines.size() - 1), side) == Look.EMPTY) {
                lines.remove(lines.size() - 1);
                depths.set(depths.size() - 1, depths.get(depths.size() - 1) - 1);
            }
            end = lines.get(lines.size() - 1);
        }
        int at = 0;
        for (int depth : depths) {
            if (depth != deep) {
                throw new InputException(
                        sheet.table().place(lines.get(depth > deep ? at + deep : at)),
                        "found row " + Well.rowName(sides.get(depths.indexOf(depth))) + " of the plate " + depth
                                + (depth == 1 ? " time" : " times") + ", the first row " + deep
                                + (deep == 1 ? " time" : " times") + "; expected each row equally often");
            }
            at += depth;
        }
    }
}
