package tallywell.chart;

import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.WellReadings;
import tallywell.workup.WellResult;

/**
 * What is drawn of the trace of one well. Times are in min from the trigger; readings without times stand at -1 and +1
 * about it.
 */
public final class DrawnTrace {
    private final WellResult result;
    private final TracePoints points;
    private final TraceLines lines;

    private DrawnTrace(WellResult result, double triggerMin) {
        this.result = result;
        points = new TracePoints(result.trace(), triggerMin);
        lines = new TraceLines(result.trace(), points);
    }

    static DrawnTrace of(WellResult result) {
        return new DrawnTrace(result, 0);
    }

    /** The traces of some wells in one step, from 1, in row order; wells without readings are left out. */
    public static List<DrawnTrace> of(Analysis analysis, int step, Collection<Well> wells) {
        return of(analysis.steps().get(step - 1).where(result -> wells.contains(result.well())));
    }

    /** The traces of wells; those without readings after the trigger are left out. */
    public static List<DrawnTrace> of(Collection<WellResult> results) {
        return results.stream()
                .filter(result -> count(result.trace().readings()) > 0)
                .map(DrawnTrace::of)
                .toList();
    }

    /** How many readings there are after the trigger, those over range included. */
    static int count(WellReadings readings) {
        return readings.after().size() + readings.afterOver().size();
    }

    /** The same drawn later by some minutes, as a trigger that is being moved leaves the readings where they are. */
    public DrawnTrace later(double min) {
        return new DrawnTrace(result, triggerMin() + min);
    }

    /** What the well came to. */
    public WellResult result() {
        return result;
    }

    /** Where. */
    public Well well() {
        return result.well();
    }

    /** Well and content in a few letters. */
    String label() {
        return well() + " · " + result.content().role().replace('-', ' ') + " "
                + result.content().word();
    }

    /** Whether the times are real. */
    public boolean timed() {
        return points.timed();
    }

    /** Where the trigger stands; 0 but while it is moved. */
    public double triggerMin() {
        return points.triggerMin();
    }

    /** Start of the finished part, where a line was drawn. */
    public OptionalDouble finishedFromMin() {
        return lines.finishedFrom();
    }

    /** Time of the last reading. */
    public double endMin() {
        return points.lastMinute();
    }

    /** Times of the readings, in order. */
    public List<Double> minutes() {
        return points.all().stream().map(TracePoints.Point::minutes).toList();
    }

    TracePoints points() {
        return points;
    }

    TraceLines lines() {
        return lines;
    }
}
