package tallywell.trace;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What one well did in one step.
 *
 * <p>Nothing is corrected for direction or dilution: {@code after - before} is positive where the signal rises.
 *
 * @param baseline the absorbance before the trigger
 * @param after the absorbance after the reaction, at the trigger
 * @param reading the one reading that {@code after} is, counted from 0; empty where a line or a curve gave it
 * @param creepPerMin creep in absorbance per min; empty where it was not measured
 * @param uCreepPerMin its standard uncertainty; empty where nothing shows it
 * @param uDeltaA standard uncertainty of {@code after - before}: its double covers about 95 %; empty where nothing shows it
 * @param uCourse the part of it that the course of the trace leaves open, in absorbance: burst that may be left, creep that
 *     may die away. It is much the same in replicates, and so neither in their scatter nor smaller for their number
 * @param finished the finished part and its line; empty unless a line was drawn
 * @param curve the likeliest progress curve; empty unless ΔA is from one
 * @param flags what a reader should know
 */
public record Change(
        BaselineFit baseline,
        double after,
        OptionalInt reading,
        OptionalDouble creepPerMin,
        OptionalDouble uCreepPerMin,
        OptionalDouble uDeltaA,
        double uCourse,
        Optional<FinishedPart> finished,
        Optional<FittedCurve> curve,
        Set<TraceFlag> flags) {
    /** Keeps a copy that cannot change. */
    public Change {
        EnumSet<TraceFlag> copy = EnumSet.noneOf(TraceFlag.class);
        copy.addAll(flags);
        flags = Collections.unmodifiableSet(copy);
    }

    /** The absorbance before the trigger. */
    public double before() {
        return baseline.value();
    }

    /** After less before. */
    public double deltaA() {
        return after - baseline.value();
    }

    /**
     * A reading less the line or the curve.
     *
     * @param after the series that this came from
     * @param reading counted from 0
     * @return empty where no line or curve goes through that reading, or it was left out
     */
    public OptionalDouble residual(Series after, int reading) {
        double y = after.absorbance(reading);
        double t = after.timeS(reading);
        if (finished.isPresent()) {
            return finished.get().uses(reading)
                    ? OptionalDouble.of(y - finished.get().at(t))
                    : OptionalDouble.empty();
        }
        return curve.isEmpty() || curve.get().leftOut().contains(reading)
                ? OptionalDouble.empty()
                : OptionalDouble.of(y - curve.get().at(t));
    }

    /**
     * The baseline of the next step: the finished line at its trigger, or the reading of this step where there is no
     * line.
     *
     * @param nextTriggerS time of the next trigger in s from this one
     */
    public Baseline.Given baselineOfNext(double nextTriggerS) {
        if (finished.isPresent()) {
            FinishedPart part = finished.get();
            return new Baseline.Given(
                    part.at(nextTriggerS), part.uAt(nextTriggerS).orElse(0));
        }
        return curve.map(fitted -> new Baseline.Given(fitted.finishedAt(nextTriggerS), fitted.uAtEnd()))
                .orElseGet(() -> new Baseline.Given(after, 0));
    }
}
