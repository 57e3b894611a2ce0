package tallywell.task;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.method.AssayMethod;
import tallywell.method.CalibrationRule;
import tallywell.method.Creep;
import tallywell.method.Direction;
import tallywell.method.Limits;
import tallywell.method.Step;
import tallywell.method.Timing;
import tallywell.method.TriggerDilution;
import tallywell.method.Volumes;
import tallywell.quantity.Numbers;

/** What the settings of a method that are no constants of the result do to it, a line each. */
final class MethodSettings {
    private static final double PERCENT = 100;
    private static final double S_PER_MIN = 60;

    private final AssayMethod method;
    private final Step step;
    private final List<String> lines = new ArrayList<>();

    private MethodSettings(AssayMethod method, Step step) {
        this.method = method;
        this.step = step;
    }

    static List<String> of(AssayMethod method, Step step) {
        return new MethodSettings(method, step).all();
    }

    private List<String> all() {
        lines.add("direction " + step.signal().direction().word() + ": ΔA = "
                + (step.signal().direction() == Direction.RISES ? "A after - A before" : "A before - A after")
                + "; set the wrong way round, every net ΔA would be negative");
        lines.add("before " + method.before().word() + ": "
                + switch (method.before()) {
                    case MEAN ->
                        "the mean of the readings before the trigger; half of what a drift makes while they are read goes into ΔA";
                    case LINE ->
                        "their straight line at the trigger; takes a drift out, and scatters more than the mean";
                    case LAST -> "the last of them; scatters as one reading does";
                });
        if (method.triggerDilution() == TriggerDilution.CORRECT
                && step.volumes().isPresent()) {
            Volumes volumes = step.volumes().get();
            lines.add("trigger-dilution correct: A before is taken "
                    + Numbers.fixed(volumes.beforeTriggerUl() / volumes.afterTriggerUl(), 4) + " times");
        }
        timing(step.timing());
        calibration();
        lines.add("report unit " + step.report().unit().symbol() + ", solids "
                + step.report().solids().symbol()
                + ": changes how results are stated, not what they rest on");
        limits(step.limits());
        return lines;
    }

    private void timing(Timing timing) {
        String rule = step.creep() == Creep.NONE
                ? "the reading nearest " + minutes(timing.afterS()) + " min after the trigger counts"
                : "plans the work; every reading after the trigger counts";
        if (timing.afterS().isPresent()) {
            lines.add("after " + minutes(timing.afterS()) + " min: " + rule);
        }
        if (step.creep() != Creep.NONE) {
            lines.add("trigger-to-first-read " + Numbers.plain(timing.triggerToFirstReadS())
                    + " s: where a file begins after the trigger; 60 s more carry the line 60 s further back, which moves ΔA"
                    + " by one minute's creep, in blanks too");
        }
        if (timing.staggerPerColumnS() > 0) {
            lines.add("stagger-per-column " + Numbers.plain(timing.staggerPerColumnS())
                    + " s: each column's time counts from its own trigger");
        }
    }

    private void calibration() {
        if (!(step.calibration() instanceof CalibrationRule.ByStandards rule)) {
            return;
        }
        lines.add("model " + rule.model().word() + ": "
                + switch (rule.model()) {
                    case LINE -> "intercept and slope; what all wells share, as a blank does, cancels";
                    case LINE_THROUGH_ZERO -> "slope only; an error of the blank stays in every result";
                    case QUADRATIC -> "follows a bend; needs a level more, and is no safer beyond the standards";
                    case LOGISTIC_4, LOGISTIC_5 -> "follows saturation; needs levels on both of its bends";
                });
        lines.add("weights " + rule.weights().word() + ": "
                + switch (rule.weights()) {
                    case NONE -> "every standard counts alike; right where scatter is the same at all levels";
                    default ->
                        "low standards count more; right where scatter grows with the level, and low results depend on it";
                });
        lines.add("outside the standards there is no value, only a bound");
    }

    private void limits(Limits limits) {
        range(
                "accept delta-a",
                limits.deltaALeast(),
                limits.deltaAMost(),
                1,
                "",
                "net ΔA outside it advises another dilution; below it at dilution 1 it is stated with a flag");
        limit("accept absorbance", limits.absorbanceMost(), 1, "", "any reading beyond it advises a higher dilution");
        limit("accept blank-delta-a", limits.blankDeltaAMost(), 1, "", "beyond it the batch fails");
        if (limits.replicateCv().isPresent() || limits.replicateRange().isPresent()) {
            List<String> either = new ArrayList<>();
            limits.replicateCv().ifPresent(cv -> either.add("CV " + Numbers.brief(PERCENT * cv, 3) + " %"));
            limits.replicateRange().ifPresent(range -> either.add("range of net ΔA " + Numbers.plain(range)));
            lines.add("accept replicates, " + String.join(" or ", either)
                    + ": beyond both, the sample is to be repeated");
        } else {
            lines.add("accept replicates: not stated, so not assessed");
        }
        range(
                "accept control-recovery",
                limits.controlLeast(),
                limits.controlMost(),
                PERCENT,
                " %",
                "outside it the batch fails, unless the layout gives the control a tolerance of its own");
        range(
                "accept spike-recovery",
                limits.spikeLeast(),
                limits.spikeMost(),
                PERCENT,
                " %",
                "outside it the batch fails");
    }

    private void limit(String name, OptionalDouble limit, double scale, String unit, String effect) {
        range(name, OptionalDouble.empty(), limit, scale, unit, effect);
    }

    private void range(
            String name, OptionalDouble least, OptionalDouble most, double scale, String unit, String effect) {
        if (least.isEmpty() && most.isEmpty()) {
            lines.add(name + ": not stated, so not assessed");
            return;
        }
        String from = least.isPresent() ? "at least " + Numbers.brief(scale * least.getAsDouble(), 4) + unit : "";
        String to = most.isPresent() ? "at most " + Numbers.brief(scale * most.getAsDouble(), 4) + unit : "";
        lines.add(name + ", " + (from + " " + to).strip() + ": " + effect);
    }

    private static String minutes(OptionalDouble seconds) {
        return Numbers.brief(seconds.orElse(0) / S_PER_MIN, 3);
    }
}
