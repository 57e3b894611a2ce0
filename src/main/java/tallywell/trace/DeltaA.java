package tallywell.trace;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The change of absorbance of one well in one step, at the moment of the trigger.
 *
 * <p>A function of its arguments and nothing else: the same readings give the same last bit.
 */
public final class DeltaA {
    private static final double OUTLIER = 5.5;

    private final Baseline baseline;
    private final BaselineRule rule;
    private final Series after;
    private final @Nullable ReadingScatter plate;
    private final Set<TraceFlag> flags = EnumSet.noneOf(TraceFlag.class);

    private DeltaA(Baseline baseline, Series after, @Nullable ReadingScatter plate) {
        this.plate = plate;
        this.baseline = baseline;
        this.rule = BaselineRule.of(baseline);
        this.after = after;
        if (after.over() > 0) {
            flags.add(TraceFlag.OVER_RANGE);
        }
        if (after.missing() > 0) {
            flags.add(TraceFlag.READINGS_MISSING);
        }
    }

    /**
     * Works one well and step.
     *
     * @param baseline what was there before the trigger
     * @param after readings after the trigger, t in s from the trigger; without times only a rule that takes one reading
     *     can be followed if there are two or more
     * @param rule how the readings after the trigger become one absorbance
     * @throws IllegalArgumentException if a line or a curve is asked for and two or more readings have no times
     */
    public static Change of(Baseline baseline, Series after, AfterRule rule) {
        return of(baseline, after, rule, null);
    }

    /**
     * The same for a well of a plate.
     *
     * @param plate how readings of the plate scatter, by which a few end points are judged; null where nothing shows it
     * @throws IllegalArgumentException if a line or a curve is asked for and two or more readings have no times
     */
    public static Change of(Baseline baseline, Series after, AfterRule rule, @Nullable ReadingScatter plate) {
        DeltaA well = new DeltaA(baseline, after, plate);
        if (rule instanceof AfterRule.None none) {
            return well.single(well.nearest(none.atS()));
        }
        if (after.size() > 1 && !after.isTimed()) {
            throw new IllegalArgumentException(
                    "after must be a series with times but was " + after.size() + " readings without");
        }
        if (rule instanceof AfterRule.Extrapolate extrapolate) {
            return well.extrapolated(extrapolate.finishedFromS());
        }
        return well.byCurve(((AfterRule.ProgressCurve) rule).finishedFromS());
    }

    private Change single(int reading) {
        BaselineFit before = rule.fit(null, flags);
        OptionalDouble u = OptionalDouble.empty();
        if (before.scatter().isPresent() && before.standardUncertainty().isPresent()) {
            // One reading scatters after the trigger as it did before.
            u = OptionalDouble.of(Math.hypot(
                    before.standardUncertainty().getAsDouble(), before.scatter().getAsDouble()));
        }
        return new Change(
                before,
                after.absorbance(reading),
                OptionalInt.of(reading),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                u,
                0,
                Optional.empty(),
                Optional.empty(),
                flags);
    }

    private int nearest(OptionalDouble atS) {
        int best = after.size() - 1;
        if (atS.isEmpty() || !after.isTimed()) {
            return best;
        }
        for (int i = best - 1; i >= 0; i--) {
            if (Math.abs(after.timeS(i) - atS.getAsDouble()) < Math.abs(after.timeS(best) - atS.getAsDouble())) {
                best = i;
            }
        }
        return best;
    }

    private Change extrapolated(OptionalDouble byHand) {
        int last = after.size() - 1;
        int start = 0;
        if (byHand.isPresent()) {
            flags.add(TraceFlag.FINISHED_BY_HAND);
            while (start < last && after.timeS(start) < byHand.getAsDouble()) {
                start++;
            }
        }
        if (start >= last || after.timeS(last) == after.timeS(start)) {
            flags.add(TraceFlag.CREEP_NOT_MEASURED);
            return single(last);
        }
        FinishedLine line = byHand.isPresent()
                ? FinishedLine.from(start, after.times(), after.values())
                : FinishedLine.chosen(after.times(), after.values(), rule, plate);
        flags.addAll(line.flags(rule.value()));
        BaselineFit before = rule.fit(line.noise(), flags);
        FinishedPart part = line.part();
        double ofCourse = line.ofCourse();
        return new Change(
                before,
                part.intercept(),
                OptionalInt.empty(),
                OptionalDouble.of(60 * part.slopePerS()),
                part.uSlopePerS().isPresent()
                        ? OptionalDouble.of(60 * part.uSlopePerS().getAsDouble())
                        : OptionalDouble.empty(),
                together(before.standardUncertainty(), line.uncertainty(ofCourse)),
                ofCourse,
                Optional.of(part),
                Optional.empty(),
                flags);
    }

    private OptionalDouble together(OptionalDouble before, OptionalDouble line) {
        if (line.isEmpty() || before.isEmpty() && baseline instanceof Baseline.Read) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Math.max(BurstTail.LEAST_SCATTER, Math.hypot(before.orElse(0), line.getAsDouble())));
    }

    private Change byCurve(OptionalDouble byHand) {
        if (byHand.isPresent()) {
            return extrapolated(byHand);
        }
        boolean[] out = Spikes.in(after.values());
        SeenBurst seen = SeenBurst.in(Spikes.kept(after.times(), out), Spikes.kept(after.values(), out), rule);
        if (seen == SeenBurst.NONE) {
            // Where nothing reacts there is no law to fit, and the line says all.
            return extrapolated(byHand);
        }
        Optional<ProgressCurve> curve = curve(out);
        if (curve.isPresent()) {
            boolean[] farther = outliers(curve.get(), out);
            if (farther != out) {
                out = farther;
                curve = curve(out);
            }
        }
        if (curve.isEmpty() || curve.get().misfits()) {
            flags.add(TraceFlag.CURVE_MISFIT);
            return extrapolated(byHand);
        }
        if (seen == SeenBurst.STRAIGHT && curve.get().flags().contains(TraceFlag.REACTION_INCOMPLETE)) {
            // Creep, or a reaction as slow: ΔA of a curve is anything then.
            flags.add(TraceFlag.REACTION_INCOMPLETE);
            return extrapolated(byHand);
        }
        return changeOf(curve.get(), out);
    }

    private Optional<ProgressCurve> curve(boolean[] leftOut) {
        double[] t = Spikes.kept(after.times(), leftOut);
        return t.length < ProgressCurve.FEWEST || !(t[t.length - 1] > t[0])
                ? Optional.empty()
                : ProgressCurve.of(rule, t, Spikes.kept(after.values(), leftOut));
    }

    /** The same readings left out, and those besides that lie off the curve by more than noise ever does. */
    private boolean[] outliers(ProgressCurve curve, boolean[] leftOut) {
        double[] fitted = curve.likeliest().at(after.times());
        boolean[] out = leftOut;
        for (int i = 0; i < fitted.length; i++) {
            double off = Math.abs(after.absorbance(i) - fitted[i]);
            if (!leftOut[i] && off > OUTLIER * curve.noise().sd(fitted[i])) {
                out = out == leftOut ? leftOut.clone() : out;
                out[i] = true;
            }
        }
        return out;
    }

    private Change changeOf(ProgressCurve curve, boolean[] leftOut) {
        flags.addAll(curve.flags());
        if (!Spikes.listed(leftOut).isEmpty()) {
            flags.add(TraceFlag.SPIKE);
        }
        ReadingNoise noise = curve.noise();
        double sd = noise.sd(rule.value());
        BaselineFit before = rule.fit(new Noise(sd, noise.carry(), after.size()), flags);
        double lastS = after.timeS(after.size() - 1);
        double ofCourse = curve.ofCourse();
        return new Change(
                before,
                curve.after(),
                OptionalInt.empty(),
                OptionalDouble.of(60 * curve.creepPerS()),
                OptionalDouble.of(60 * curve.uCreepPerS()),
                OptionalDouble.of(Math.max(BurstTail.LEAST_SCATTER, curve.uncertainty(ofCourse))),
                ofCourse,
                Optional.empty(),
                Optional.of(new FittedCurve(
                        curve.likeliest(), curve.after(), curve.creepPerS(), curve.uAt(lastS), Spikes.listed(leftOut))),
                flags);
    }
}
