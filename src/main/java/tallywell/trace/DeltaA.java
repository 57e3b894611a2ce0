package tallywell.trace;

import java.util.EnumSet;
import java.util.List;
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
    private DeltaA() {}

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
        Set<TraceFlag> flags = EnumSet.noneOf(TraceFlag.class);
        if (after.over() > 0) {
            flags.add(TraceFlag.OVER_RANGE);
        }
        if (after.missing() > 0) {
            flags.add(TraceFlag.READINGS_MISSING);
        }
        if (rule instanceof AfterRule.None none) {
            return single(baseline, after, nearest(after, none.atS()), flags);
        }
        OptionalDouble byHand = rule instanceof AfterRule.Extrapolate extrapolate
                ? extrapolate.finishedFromS()
                : ((AfterRule.ProgressCurve) rule).finishedFromS();
        if (rule instanceof AfterRule.ProgressCurve && byHand.isEmpty()) {
            flags.add(TraceFlag.CURVE_MISFIT);
        }
        return extrapolated(baseline, after, byHand, flags);
    }

    private static Change single(Baseline baseline, Series after, int reading, Set<TraceFlag> flags) {
        BaselineFit before = BaselineRule.of(baseline, null, flags);
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
                Optional.empty(),
                flags);
    }

    private static int nearest(Series after, OptionalDouble atS) {
        int last = after.size() - 1;
        if (atS.isEmpty() || !after.isTimed()) {
            return last;
        }
        int best = last;
        for (int i = last - 1; i >= 0; i--) {
            if (Math.abs(after.timeS(i) - atS.getAsDouble()) < Math.abs(after.timeS(best) - atS.getAsDouble())) {
                best = i;
            }
        }
        return best;
    }

    private static Change extrapolated(Baseline baseline, Series after, OptionalDouble byHand, Set<TraceFlag> flags) {
        if (after.size() > 1 && !after.isTimed()) {
            throw new IllegalArgumentException(
                    "after must be a series with times but was " + after.size() + " readings without");
        }
        if (byHand.isPresent()) {
            flags.add(TraceFlag.FINISHED_BY_HAND);
        }
        int last = after.size() - 1;
        int chosen = byHand.isPresent() ? firstFrom(after, byHand.getAsDouble()) : 0;
        if (chosen >= last || after.timeS(last) == after.timeS(chosen)) {
            flags.add(TraceFlag.CREEP_NOT_MEASURED);
            return single(baseline, after, last, flags);
        }
        Line line = new Line(after, flags);
        if (byHand.isPresent() || after.size() - chosen < 3) {
            line.from(chosen, null);
        } else {
            line.choose(BaselineRule.of(baseline, null, EnumSet.noneOf(TraceFlag.class))
                    .value());
        }
        BaselineFit before = BaselineRule.of(baseline, line.noise, flags);
        FinishedPart part = line.part();
        return new Change(
                before,
                part.intercept(),
                OptionalInt.empty(),
                OptionalDouble.of(60 * part.slopePerS()),
                scaled(part.uSlopePerS(), 60),
                together(before.standardUncertainty(), line.u, baseline),
                Optional.of(part),
                flags);
    }

    private static int firstFrom(Series after, double fromS) {
        int i = 0;
        while (i < after.size() && after.timeS(i) < fromS) {
            i++;
        }
        return i;
    }

    private static OptionalDouble scaled(OptionalDouble value, double factor) {
        return value.isPresent() ? OptionalDouble.of(factor * value.getAsDouble()) : value;
    }

    private static OptionalDouble together(OptionalDouble before, OptionalDouble after, Baseline baseline) {
        if (after.isEmpty() || before.isEmpty() && baseline instanceof Baseline.Read) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Math.hypot(before.orElse(0), after.getAsDouble()));
    }

    /** The line through the finished part in the making. */
    private static final class Line {
        /** Burst left at the start that makes a line worthless, in absorbance. */
        private static final double MOST_BURST = 0.0005;

        private final Series after;
        private final double[] t;
        private final double[] y;
        private final Set<TraceFlag> flags;
        private final boolean[] leftOut;
        private int from;
        private @Nullable LineFit fit;
        private @Nullable Noise noise;
        private @Nullable BurstTail tail;
        private OptionalDouble u = OptionalDouble.empty();

        Line(Series after, Set<TraceFlag> flags) {
            this.after = after;
            this.t = after.times();
            this.y = after.values();
            this.flags = flags;
            this.leftOut = Spikes.in(y);
            if (!BaselineRule.listed(leftOut).isEmpty()) {
                flags.add(TraceFlag.SPIKE);
            }
        }

        void choose(double before) {
            tail = t.length < 5 ? null : BurstTail.of(t, y, leftOut, before);
            if (tail == null) {
                from(0, null);
                return;
            }
            int start = FinishedStart.of(tail, t, leftOut);
            if (Math.abs(tail.left(start)) + 2 * tail.leftSd(start) > MOST_BURST) {
                flags.add(TraceFlag.REACTION_INCOMPLETE);
            }
            from(start, tail);
        }

        void from(int start, @Nullable BurstTail known) {
            from = start;
            int n = t.length;
            fit = LineFit.of(t, y, start, n, leftOut);
            if (fit.n() < 3 || !(fit.timeSquares() > 0)) {
                flags.add(TraceFlag.CREEP_NOT_TESTED);
                return;
            }
            noise = Noise.about(fit, t, y, start, n, leftOut);
            double scatter = noise.ofLineAt(0, fit, t, start, n, leftOut) * Coverage.factor(noise.degreesOfFreedom());
            u = OptionalDouble.of(known == null ? scatter : Math.hypot(scatter, known.errorRms(start)));
        }

        FinishedPart part() {
            int n = t.length;
            if (fit == null) {
                throw new IllegalStateException("no line was fitted");
            }
            OptionalDouble uMean = OptionalDouble.empty();
            OptionalDouble uSlope = OptionalDouble.empty();
            OptionalDouble scatter = OptionalDouble.empty();
            if (noise != null) {
                double factor = Coverage.factor(noise.degreesOfFreedom());
                uMean = OptionalDouble.of(factor * noise.ofLineAt(fit.timeMean(), fit, t, from, n, leftOut));
                uSlope = OptionalDouble.of(factor * noise.ofSlope(fit, t, from, n, leftOut));
                scatter = OptionalDouble.of(noise.sd());
            }
            List<Integer> out = BaselineRule.listed(leftOut).stream()
                    .filter(each -> each >= from)
                    .toList();
            return new FinishedPart(
                    from,
                    after.size(),
                    out,
                    fit.at(0),
                    fit.slope(),
                    scatter,
                    noise == null ? 0 : noise.carry(),
                    fit.timeMean(),
                    uMean,
                    uSlope,
                    tail == null ? OptionalDouble.empty() : OptionalDouble.of(tail.left(from)),
                    tail == null
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(Math.abs(tail.left(from)) + 2 * tail.leftSd(from)));
        }
    }
}
