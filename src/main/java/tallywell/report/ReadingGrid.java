package tallywell.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.Ref;
import tallywell.workup.StepAnalysis;
import tallywell.workup.Taken;
import tallywell.workup.WellReadings;
import tallywell.workup.WellResult;

/**
 * Where each reading and its time stand on the sheet Readings: wells down, readings across, times above.
 *
 * <p>Wells that share their times share one row of them: one row for the plate, or one for each column where the trigger
 * is staggered.
 */
final class ReadingGrid {
    static final String SHEET = "Readings";

    /** Columns before the first reading: well and content. */
    static final int FIRST_COLUMN = 2;

    /** Rows above the times: title, entry, part, file time. */
    static final int FIRST_TIME_ROW = 4;

    /** As many columns as a sheet has (ECMA-376-1:2016, 18.3.1.13 max). */
    private static final int MOST_COLUMNS = 16_384;

    private final List<Taken> taken;
    private final int[] firstColumn;
    private final int columns;
    private final List<Well> wells;
    private final Map<Well, Integer> order = new HashMap<>();
    private final List<double[]> times = new ArrayList<>();
    private final List<List<Well>> timesOf = new ArrayList<>();
    private final Map<Well, Integer> timesAt = new HashMap<>();

    ReadingGrid(Analysis analysis) throws IOException {
        taken = analysis.assay().allReadings();
        firstColumn = new int[taken.size()];
        TreeSet<Well> read = new TreeSet<>();
        int next = 0;
        for (int i = 0; i < taken.size(); i++) {
            firstColumn[i] = next;
            ReadingSeries series = taken.get(i).series();
            int most = 0;
            for (Well well : series.wells()) {
                read.add(well);
                most = Math.max(most, series.size(well));
            }
            next += most;
        }
        columns = next;
        if (columns + FIRST_COLUMN > MOST_COLUMNS) {
            throw new IOException("the run has " + columns + " readings a well, but a worksheet has room for "
                    + (MOST_COLUMNS - FIRST_COLUMN) + "; write the tables instead, or read less often");
        }
        wells = List.copyOf(read);
        for (int i = 0; i < wells.size(); i++) {
            order.put(wells.get(i), i);
        }
        collectTimes(analysis);
    }

    private void collectTimes(Analysis analysis) {
        Map<Well, double[]> known = new HashMap<>();
        for (StepAnalysis step : analysis.steps()) {
            for (WellResult well : step.wells()) {
                double[] of = known.computeIfAbsent(well.well(), each -> {
                    double[] none = new double[columns];
                    Arrays.fill(none, Double.NaN);
                    return none;
                });
                keep(of, well.trace().readings().baseline());
                keep(of, well.trace().readings().after());
            }
        }
        for (Well well : wells) {
            double[] of = known.get(well);
            if (of != null && Arrays.stream(of).anyMatch(time -> !Double.isNaN(time))) {
                share(well, of);
            }
        }
    }

    private void keep(double[] of, List<WellReadings.Point> points) {
        for (WellReadings.Point point : points) {
            if (point.timed()) {
                of[offset(point.ref())] = point.timeS();
            }
        }
    }

    private void share(Well well, double[] of) {
        for (int i = 0; i < times.size(); i++) {
            if (agree(times.get(i), of)) {
                fill(times.get(i), of);
                timesOf.get(i).add(well);
                timesAt.put(well, i);
                return;
            }
        }
        timesAt.put(well, times.size());
        times.add(of);
        timesOf.add(new ArrayList<>(List.of(well)));
    }

    private static boolean agree(double[] one, double[] other) {
        for (int i = 0; i < one.length; i++) {
            if (!Double.isNaN(one[i]) && !Double.isNaN(other[i]) && one[i] != other[i]) {
                return false;
            }
        }
        return true;
    }

    private static void fill(double[] one, double[] other) {
        for (int i = 0; i < one.length; i++) {
            if (Double.isNaN(one[i])) {
                one[i] = other[i];
            }
        }
    }

    private int offset(Ref ref) {
        return firstColumn[ref.taken()] + ref.index();
    }

    /** The wells that were read, in row order. */
    List<Well> wells() {
        return wells;
    }

    /** How many columns of readings there are. */
    int columns() {
        return columns;
    }

    /** Where the readings of an entry begin. */
    int firstColumn(int entry) {
        return FIRST_COLUMN + firstColumn[entry];
    }

    /** One past the column where the readings of an entry end. */
    int endColumn(int entry) {
        return FIRST_COLUMN + (entry + 1 < firstColumn.length ? firstColumn[entry + 1] : columns);
    }

    /** How many rows of times there are. */
    int timeRows() {
        return times.size();
    }

    /** The times in a row of times, NaN where nothing is known. */
    double time(int timeRow, int column) {
        return times.get(timeRow)[column - FIRST_COLUMN];
    }

    /** The wells that a row of times belongs to. */
    List<Well> wellsOf(int timeRow) {
        return timesOf.get(timeRow);
    }

    /** The row of the headings right above the readings. */
    int headRow() {
        return FIRST_TIME_ROW + times.size();
    }

    /** The row of a well. */
    int row(Well well) {
        Integer at = order.get(well);
        if (at == null) {
            throw new IllegalArgumentException("well must have been read but was " + well);
        }
        return headRow() + 1 + at;
    }

    /** The column of a reading. */
    int column(Ref ref) {
        return FIRST_COLUMN + offset(ref);
    }

    /** A reading as formulas of other sheets write it. */
    String cell(Well well, Ref ref) {
        return SHEET + "!" + At.cell(row(well), column(ref));
    }

    /** Readings side by side, both ends included. */
    String range(Well well, int from, int to) {
        return SHEET + "!" + At.across(row(well), from, to);
    }

    /** The times of readings side by side. */
    String timeRange(Well well, int from, int to) {
        Integer at = timesAt.get(well);
        if (at == null) {
            throw new IllegalArgumentException("well must have times but was " + well);
        }
        int row = FIRST_TIME_ROW + at;
        return SHEET + "!" + At.column(from) + "$" + (row + 1) + ":" + At.column(to) + "$" + (row + 1);
    }

    /** Whether what stands between two readings of a well carries marks only, so that a range may run over it. */
    boolean onlyMarksBetween(Well well, Ref one, Ref other) {
        if (one.taken() != other.taken() || other.index() <= one.index()) {
            return false;
        }
        ReadingSeries series = taken.get(one.taken()).series();
        for (int i = one.index() + 1; i < other.index(); i++) {
            if (series.mark(well, i) == Mark.NONE) {
                return false;
            }
        }
        return true;
    }
}
