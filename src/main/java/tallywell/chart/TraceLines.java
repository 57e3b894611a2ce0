package tallywell.chart;

import java.util.Optional;
import java.util.OptionalDouble;
import org.jfree.data.xy.XYSeries;
import tallywell.trace.Change;
import tallywell.trace.FinishedPart;
import tallywell.trace.FittedCurve;
import tallywell.workup.WellTrace;

/** The lines and curves that were laid through the readings of one well, in minutes and absorbance. */
final class TraceLines {
    static final String BASELINE = "baseline";
    static final String CORRECTED = "baseline, corrected for the volume added";
    static final String CARRIED = "before the trigger, from the step before";
    static final String EQUIVALENT = "baseline equivalent to the equilibrium";
    static final String LINE = "line through the finished part, carried back";
    static final String READING = "the reading that counts";
    static final String CURVE = "progress curve";
    static final String CURVE_LINE = "the curve's finished line, carried back";

    private static final int CURVE_STEPS = 240;

    private final WellTrace trace;
    private final TracePoints points;

    TraceLines(WellTrace trace, TracePoints points) {
        this.trace = trace;
        this.points = points;
    }

    /** The baseline as far as it was read. */
    Optional<XYSeries> baseline() {
        if (trace.change().isEmpty() || points.of(TracePoints.Part.BASELINE).isEmpty()) {
            return Optional.empty();
        }
        Change change = trace.change().get();
        double from = points.firstMinute();
        double fromS = points.timed() ? 60 * (from - points.triggerMin()) : 0;
        return Optional.of(line(
                BASELINE,
                from,
                change.baseline().at(fromS) / trace.beforeFactor(),
                points.triggerMin(),
                change.before() / trace.beforeFactor()));
    }

    /** The level that ΔA counts from, where it is not the one that was read in this step. */
    Optional<XYSeries> level(double fromMinute) {
        if (trace.change().isEmpty()) {
            return Optional.empty();
        }
        boolean read = !points.of(TracePoints.Part.BASELINE).isEmpty();
        if (read && trace.beforeFactor() == 1) {
            return Optional.empty();
        }
        double before = trace.change().get().before();
        String name = read ? CORRECTED : trace.readings().between().isEmpty() ? CARRIED : EQUIVALENT;
        return Optional.of(line(name, fromMinute, before, points.triggerMin(), before));
    }

    /** From the trigger to the one reading that counts, where there is no line. */
    Optional<XYSeries> reading() {
        if (trace.change().isEmpty() || trace.change().get().reading().isEmpty()) {
            return Optional.empty();
        }
        double after = trace.change().get().after();
        double to = points.of(TracePoints.Part.USED).get(0).minutes();
        return Optional.of(line(READING, points.triggerMin(), after, to, after));
    }

    /** The finished line from the trigger to the last reading, of a line or of a curve. */
    Optional<XYSeries> finished() {
        double from = points.triggerMin();
        double to = points.lastMinute();
        double toS = 60 * (to - from);
        Optional<FinishedPart> part = trace.change().flatMap(Change::finished);
        if (part.isPresent()) {
            return Optional.of(line(LINE, from, part.get().at(0), to, part.get().at(toS)));
        }
        return trace.change()
                .flatMap(Change::curve)
                .map(curve -> line(CURVE_LINE, from, curve.finishedAt(0), to, curve.finishedAt(toS)));
    }

    /** The progress curve, where ΔA is from one. */
    Optional<XYSeries> curve() {
        return trace.change().flatMap(Change::curve).map(this::curve);
    }

    private XYSeries curve(FittedCurve fitted) {
        XYSeries series = new XYSeries(CURVE, false);
        double span = points.lastMinute() - points.triggerMin();
        for (int i = 0; i <= CURVE_STEPS; i++) {
            double seconds = 60 * span * i / CURVE_STEPS;
            series.add(points.minute(seconds), fitted.at(seconds));
        }
        return series;
    }

    /** Start of the finished part in minutes, where a line was drawn. */
    OptionalDouble finishedFrom() {
        Optional<FinishedPart> part = trace.change().flatMap(Change::finished);
        return part.isPresent()
                ? OptionalDouble.of(points.minute(
                        trace.readings().after().get(part.get().from()).timeS()))
                : OptionalDouble.empty();
    }

    private static XYSeries line(String name, double x1, double y1, double x2, double y2) {
        XYSeries series = new XYSeries(name, false);
        series.add(x1, y1);
        series.add(x2, y2);
        return series;
    }
}
