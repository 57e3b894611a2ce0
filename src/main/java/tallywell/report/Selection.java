package tallywell.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import tallywell.plate.Well;
import tallywell.workup.WellReadings;

/**
 * Some readings of one well, as formulas name them: ranges of neighbouring cells, broken where a reading was left out.
 *
 * <p>Cells that hold {@code over} or {@code missing} may lie inside a range, since the functions pass over text.
 */
final class Selection {
    private final ReadingGrid grid;
    private final Well well;
    private final List<int[]> ranges = new ArrayList<>();
    private final int readings;
    private final boolean timed;

    /** Takes the points that are wanted, by their index in the list. */
    Selection(ReadingGrid grid, Well well, List<WellReadings.Point> points, IntPredicate wanted) {
        this.grid = grid;
        this.well = well;
        List<WellReadings.Point> taken = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            if (wanted.test(i)) {
                taken.add(points.get(i));
            }
        }
        readings = taken.size();
        timed = taken.stream().allMatch(WellReadings.Point::timed);
        collect(taken, true);
        if (ranges.size() > 1) {
            // Sums written out, unlike functions of ranges, do not pass over text.
            ranges.clear();
            collect(taken, false);
        }
    }

    private void collect(List<WellReadings.Point> taken, boolean overMarks) {
        WellReadings.Point last = null;
        for (WellReadings.Point point : taken) {
            int column = grid.column(point.ref());
            boolean next = last != null
                    && (column == grid.column(last.ref()) + 1
                            || overMarks && grid.onlyMarksBetween(well, last.ref(), point.ref()));
            if (next) {
                ranges.get(ranges.size() - 1)[1] = column;
            } else {
                ranges.add(new int[] {column, column});
            }
            last = point;
        }
    }

    /** How many readings there are. */
    int readings() {
        return readings;
    }

    boolean isTimed() {
        return timed;
    }

    private String list(boolean times) {
        StringBuilder list = new StringBuilder();
        for (int[] range : ranges) {
            if (list.length() > 0) {
                list.append(',');
            }
            list.append(times ? grid.timeRange(well, range[0], range[1]) : grid.range(well, range[0], range[1]));
        }
        return list.toString();
    }

    /** The mean, empty where no reading is a number. */
    String mean() {
        return "IF(COUNT(" + list(false) + ")=0,\"\",AVERAGE(" + list(false) + "))";
    }

    /** The slope of the straight line in absorbance per second times a factor, empty where it cannot be drawn. */
    String slope(String times) {
        return guarded(times + slope());
    }

    /** The straight line at t = 0, empty where it cannot be drawn. */
    String intercept() {
        return guarded(
                ranges.size() == 1
                        ? "INTERCEPT(" + list(false) + "," + list(true) + ")"
                        : "AVERAGE(" + list(false) + ")-AVERAGE(" + list(true) + ")*" + slope());
    }

    private String slope() {
        if (ranges.size() == 1) {
            return "SLOPE(" + list(false) + "," + list(true) + ")";
        }
        // SLOPE takes one range each: with readings left out in between, its sums are written out.
        String mean = "AVERAGE(" + list(true) + ")";
        StringBuilder xy = new StringBuilder();
        StringBuilder xx = new StringBuilder();
        for (int[] range : ranges) {
            String t = "(" + grid.timeRange(well, range[0], range[1]) + "-" + mean + ")";
            xy.append(xy.length() == 0 ? "" : "+")
                    .append("SUMPRODUCT(" + t + "*" + grid.range(well, range[0], range[1]) + ")");
            xx.append(xx.length() == 0 ? "" : "+").append("SUMPRODUCT(" + t + "*" + t + ")");
        }
        return "(" + xy + ")/(" + xx + ")";
    }

    /** One range passes over text by itself; several need every reading to be a number. */
    private String guarded(String formula) {
        String fewest = ranges.size() == 1 ? "<2" : "<" + readings;
        return "IF(COUNT(" + list(false) + ")" + fewest + ",\"\"," + formula + ")";
    }
}
