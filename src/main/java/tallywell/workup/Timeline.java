package tallywell.workup;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.method.Step;
import tallywell.method.Timing;
import tallywell.notice.InputException;
import tallywell.plate.Mark;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/**
 * Sorts the readings of a run into steps, with times from the trigger of each well.
 *
 * <pre>{@code
 * trigger inside a series:  t = file time - trigger - delay of the column
 * separate files:           t = file time - its first time + trigger to first read - delay of the column
 * }</pre>
 *
 * <p>A reading at exactly t = 0 counts as after the trigger.
 */
final class Timeline {
    private final Assay assay;
    private final List<Step> triggers = new ArrayList<>();
    private final List<Segment> segments = new ArrayList<>();
    private final double[] firstS;
    private final double[] lastS;

    /** A part of one entry that lies between two triggers; step -1 is the baseline. */
    private record Segment(
            int taken, int step, double fromTriggerS, double toTriggerS, double offsetS, boolean timed) {}

    Timeline(Assay assay) throws InputException {
        this.assay = assay;
        for (Step step : assay.method().steps()) {
            for (int i = 0; i < step.signalFormula().triggers(); i++) {
                triggers.add(step);
            }
        }
        int entries = assay.readings().size();
        firstS = new double[entries];
        lastS = new double[entries];
        int step = -1;
        for (int i = 0; i < entries; i++) {
            Taken taken = assay.readings().get(i);
            measure(i, taken.series());
            if (taken.triggerBefore()) {
                step++;
            }
            step = cut(i, taken, step);
        }
        check(step + 1);
    }

    private void measure(int entry, ReadingSeries series) {
        double first = Double.POSITIVE_INFINITY;
        double last = Double.NEGATIVE_INFINITY;
        if (series.isTimed()) {
            for (Well well : series.wells()) {
                first = Math.min(first, series.timeS(well, 0));
                last = Math.max(last, series.timeS(well, series.size(well) - 1));
            }
        }
        firstS[entry] = first;
        lastS[entry] = last;
    }

    private int cut(int entry, Taken taken, int stepBefore) throws InputException {
        int step = stepBefore;
        boolean timed = taken.series().isTimed();
        if (!taken.triggerAtS().isEmpty() && !timed) {
            throw wrong(taken, "found 'trigger-at' with end points, which have no times; expected a time series");
        }
        double from = Double.NEGATIVE_INFINITY;
        double offset = startOf(entry, taken, step);
        for (double trigger : taken.triggerAtS()) {
            if (!(trigger > firstS[entry] && trigger <= lastS[entry])) {
                throw wrong(
                        taken,
                        "found a trigger at " + seconds(trigger)
                                + ", outside the series; expected a time between its first reading ("
                                + seconds(firstS[entry]) + ") and its last (" + seconds(lastS[entry]) + ")");
            }
            segments.add(new Segment(entry, step, from, trigger, step < 0 ? trigger : offset, timed));
            from = trigger;
            offset = trigger;
            step++;
        }
        // The last baseline reading of a file of its own stands at the trigger, as far as anyone can know.
        double own = step < 0 && timed ? lastS[entry] : offset;
        boolean known = step < 0 ? timed : timed || taken.timeS().isPresent();
        segments.add(new Segment(entry, step, from, Double.POSITIVE_INFINITY, own, known));
        return step;
    }

    /** File time of the first trigger of the step that an entry opens with. */
    private double startOf(int entry, Taken taken, int step) throws InputException {
        if (step < 0) {
            return 0;
        }
        boolean timed = taken.series().isTimed();
        double first = timed ? firstS[entry] : 0;
        if (taken.timeS().isPresent()) {
            return first - taken.timeS().getAsDouble();
        }
        boolean opens = segments.stream().noneMatch(segment -> segment.step() == step);
        if (timed && !opens) {
            throw wrong(
                    taken,
                    "found a further series after the same trigger; expected 'time:', the time of its first reading from the trigger");
        }
        return step < triggers.size() ? first - timing(step).triggerToFirstReadS() : first;
    }

    private void check(int found) throws InputException {
        int steps = triggers.size();
        if (found != steps) {
            throw new InputException(
                    assay.place(),
                    "found " + count(found, "trigger") + " among the readings, but the method '"
                            + assay.method().id() + "' has "
                            + (steps == assay.method().steps().size() ? count(steps, "step") : count(steps, "trigger"))
                            + "; mark each reading that follows a trigger with 'trigger: before', or give 'trigger-at' in a series");
        }
        if (segments.stream().noneMatch(segment -> segment.step() < 0)) {
            throw new InputException(
                    assay.place(),
                    "found no reading before the first trigger; expected a baseline: an export read before the trigger, or a series with the trigger inside");
        }
        for (int step = 0; step < steps; step++) {
            int current = step;
            List<Segment> own = segments.stream()
                    .filter(segment -> segment.step() == current)
                    .toList();
            if (own.size() > 1 && own.stream().anyMatch(segment -> !segment.timed())) {
                throw new InputException(
                        assay.place(),
                        "found " + own.size()
                                + " readings after the same trigger without times; expected 'time:' with each, such as 'time: 10 min'");
            }
        }
    }

    /** The readings of one well after one trigger, counted from 0; before the first one also the baseline. */
    WellReadings of(Well well, int step) {
        List<WellReadings.Point> baseline = new ArrayList<>();
        List<WellReadings.Point> after = new ArrayList<>();
        List<Double> afterOver = new ArrayList<>();
        List<Double> afterMissing = new ArrayList<>();
        int[] lost = new int[2];
        for (Segment segment : segments) {
            if (segment.step() == step) {
                collect(well, segment, after, afterOver, afterMissing);
            } else if (step == 0 && segment.step() < 0) {
                List<Double> over = new ArrayList<>();
                List<Double> missing = new ArrayList<>();
                collect(well, segment, baseline, over, missing);
                lost[0] += over.size();
                lost[1] += missing.size();
            }
        }
        after.sort(Comparator.comparingDouble(WellReadings.Point::timeS));
        return new WellReadings(
                baseline, List.of(), after, nextTrigger(well, step, after), lost[0], lost[1], afterOver, afterMissing);
    }

    private void collect(
            Well well, Segment segment, List<WellReadings.Point> points, List<Double> over, List<Double> missing) {
        ReadingSeries series = assay.readings().get(segment.taken()).series();
        for (int i = 0; i < series.size(well); i++) {
            double file = series.isTimed() ? series.timeS(well, i) : 0;
            if (inside(well, segment, file)) {
                double time = segment.timed() ? file - segment.offsetS() - delay(well, Math.max(0, segment.step())) : 0;
                Mark mark = series.mark(well, i);
                if (mark == Mark.NONE) {
                    points.add(new WellReadings.Point(
                            new Ref(segment.taken(), i), segment.timed(), time, series.absorbance(well, i)));
                } else {
                    (mark == Mark.OVER ? over : missing).add(time);
                }
            }
        }
    }

    /** Triggers reach the columns one after the other, so each well has its own cut. */
    private boolean inside(Well well, Segment segment, double fileS) {
        double ownDelay = delay(well, Math.max(0, segment.step()));
        double nextDelay = delay(well, Math.max(0, segment.step() + 1));
        return fileS >= segment.fromTriggerS() + ownDelay
                && fileS < segment.toTriggerS() + nextDelay
                && settled(segment, fileS);
    }

    private boolean settled(Segment segment, double fileS) {
        if (segment.step() < 0 || !segment.timed()) {
            return true;
        }
        Timing timing = timing(segment.step());
        if (timing.settleS() == 0) {
            return true;
        }
        double lastDelay = timing.staggerPerColumnS() * (assay.layout().format().columns() - 1);
        return fileS - segment.offsetS() >= lastDelay + timing.settleS();
    }

    private double nextTrigger(Well well, int step, List<WellReadings.Point> after) {
        OptionalDouble next = OptionalDouble.empty();
        for (Segment segment : segments) {
            if (segment.step() == step && segment.toTriggerS() < Double.POSITIVE_INFINITY) {
                next = OptionalDouble.of(
                        segment.toTriggerS() + delay(well, step + 1) - segment.offsetS() - delay(well, step));
            }
        }
        return next.orElse(after.isEmpty() ? 0 : after.get(after.size() - 1).timeS());
    }

    private double delay(Well well, int step) {
        Timing timing = triggers.get(Math.min(step, triggers.size() - 1)).timing();
        return timing.delayS(well.column(), assay.layout().format().columns());
    }

    private Timing timing(int step) {
        return triggers.get(step).timing();
    }

    private InputException wrong(Taken taken, String message) {
        return new InputException(assay.place(), taken.name() + ": " + message);
    }

    private static String seconds(double value) {
        return tallywell.quantity.Numbers.plain(value) + " s";
    }

    private static String count(int n, String noun) {
        return n == 0 ? "no " + noun : n + " " + noun + (n == 1 ? "" : "s");
    }
}
