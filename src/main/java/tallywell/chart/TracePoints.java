package tallywell.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.trace.BaselineFit;
import tallywell.trace.Change;
import tallywell.trace.Series;
import tallywell.workup.Ref;
import tallywell.workup.WellReadings;
import tallywell.workup.WellTrace;

/** The readings of one well and step, each with its part in the result. */
final class TracePoints {
    /** What a reading is to the result. */
    enum Part {
        /** Before the trigger. */
        BASELINE,
        /** After it, but not in what ΔA follows from. */
        BURST,
        /** In the line, in the curve, or the one reading that counts. */
        USED,
        /** Off the trace, and left out. */
        LEFT_OUT
    }

    /**
     * One reading.
     *
     * @param part its part
     * @param minutes from the trigger, unless the trace is drawn later
     * @param absorbance as read
     * @param residualMa less the line or curve through it, in 1/1000 of absorbance; empty where none goes through it
     * @param ref where it was read
     */
    record Point(Part part, double minutes, double absorbance, OptionalDouble residualMa, Ref ref) {}

    /** An interval this many times as long as both its neighbours is a gap. */
    private static final double GAP = 3;

    private final List<Point> points = new ArrayList<>();
    private final List<Double> overMinutes;
    private final double triggerMin;
    private final boolean timed;

    /**
     * The readings of a well.
     *
     * @param triggerMin where the trigger is drawn, in min
     */
    TracePoints(WellTrace trace, double triggerMin) {
        WellReadings readings = trace.readings();
        this.triggerMin = triggerMin;
        timed = readings.isTimed() && DrawnTrace.count(readings) > 1;
        overMinutes = readings.afterOver().stream().map(this::minute).toList();
        // With an equilibrium in between, the readings before count from a trigger of their own.
        if (readings.between().isEmpty()) {
            baseline(readings, trace);
        }
        if (!readings.after().isEmpty()) {
            after(readings, trace.change());
        }
    }

    /** Whether the readings stand at their times, and not at -1 and +1. */
    boolean timed() {
        return timed;
    }

    /** Where the trigger is drawn, in min. */
    double triggerMin() {
        return triggerMin;
    }

    /** Where a time is drawn, in min, from s after the trigger. */
    double minute(double seconds) {
        return triggerMin + seconds / 60;
    }

    /** All readings that have a number, in time order. */
    List<Point> all() {
        return points;
    }

    /** The same in runs without a gap: where readings of a series are missing, or were left out of the file, one run ends. */
    List<List<Point>> runs() {
        List<List<Point>> runs = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            if (i == 0 || isGapBefore(i)) {
                runs.add(new ArrayList<>());
            }
            runs.get(runs.size() - 1).add(points.get(i));
        }
        return runs;
    }

    private boolean isGapBefore(int i) {
        Ref before = points.get(i - 1).ref();
        Ref own = points.get(i).ref();
        if (before.taken() != own.taken()) {
            return false;
        }
        double step = interval(i);
        boolean beforeIsShort = i < 2 || step > GAP * interval(i - 1);
        boolean afterIsShort = i + 1 >= points.size() || step > GAP * interval(i + 1);
        boolean known = i >= 2 || i + 1 < points.size();
        return own.index() != before.index() + 1 || known && beforeIsShort && afterIsShort;
    }

    private double interval(int i) {
        return points.get(i).minutes() - points.get(i - 1).minutes();
    }

    List<Point> of(Part part) {
        return points.stream().filter(point -> point.part() == part).toList();
    }

    /** When the reader was out of range after the trigger, in minutes. */
    List<Double> overMinutes() {
        return overMinutes;
    }

    /** Time of the first reading in minutes, the trigger if there is none before it. */
    double firstMinute() {
        return points.stream().mapToDouble(Point::minutes).reduce(triggerMin, Math::min);
    }

    /** Time of the last reading in minutes, those out of range included; the trigger if there is none. */
    double lastMinute() {
        double last = points.stream().mapToDouble(Point::minutes).reduce(triggerMin, Math::max);
        return overMinutes.stream().mapToDouble(Double::doubleValue).reduce(last, Math::max);
    }

    private void baseline(WellReadings readings, WellTrace trace) {
        Optional<BaselineFit> fit = trace.change().map(Change::baseline);
        for (int i = 0; i < readings.baseline().size(); i++) {
            WellReadings.Point point = readings.baseline().get(i);
            int index = i;
            boolean out = fit.map(each -> each.leftOut().contains(index)).orElse(false);
            // The line was laid through readings that had been multiplied.
            OptionalDouble residual = fit.isEmpty() || out
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(
                            1000 * (point.absorbance() - fit.get().at(point.timeS()) / trace.beforeFactor()));
            points.add(new Point(
                    out ? Part.LEFT_OUT : Part.BASELINE,
                    timed ? minute(point.timeS()) : triggerMin - 1,
                    point.absorbance(),
                    residual,
                    point.ref()));
        }
    }

    private void after(WellReadings readings, Optional<Change> change) {
        double[] t =
                readings.after().stream().mapToDouble(WellReadings.Point::timeS).toArray();
        double[] y = readings.after().stream()
                .mapToDouble(WellReadings.Point::absorbance)
                .toArray();
        Series series = Series.of(t, y);
        for (int i = 0; i < t.length; i++) {
            int index = i;
            OptionalDouble residual =
                    change.map(each -> each.residual(series, index)).orElse(OptionalDouble.empty());
            points.add(new Point(
                    change.map(each -> part(each, index)).orElse(Part.BURST),
                    timed ? minute(t[i]) : triggerMin + 1,
                    y[i],
                    residual.isPresent() ? OptionalDouble.of(1000 * residual.getAsDouble()) : residual,
                    readings.after().get(i).ref()));
        }
    }

    private static Part part(Change change, int reading) {
        if (change.reading().isPresent()) {
            return change.reading().getAsInt() == reading ? Part.USED : Part.BURST;
        }
        if (change.finished().isPresent()) {
            return change.finished().get().leftOut().contains(reading)
                    ? Part.LEFT_OUT
                    : change.finished().get().uses(reading) ? Part.USED : Part.BURST;
        }
        boolean out =
                change.curve().map(each -> each.leftOut().contains(reading)).orElse(false);
        return out ? Part.LEFT_OUT : Part.USED;
    }
}
