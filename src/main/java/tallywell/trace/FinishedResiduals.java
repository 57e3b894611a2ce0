package tallywell.trace;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.IntStream;

/** Residuals of one well in its finished part. */
final class FinishedResiduals {
    /** Burst left (in absorbance) under which a reading belongs to the finished part of a progress curve. */
    private static final double FINISHED = 0.0003;

    /** Flags that say that a well is off its own line or curve. */
    private static final Set<TraceFlag> OFF =
            EnumSet.of(TraceFlag.CREEP_NOT_CONSTANT, TraceFlag.JUMP, TraceFlag.CURVE_MISFIT);

    private final int[] passes;
    private final double[] times;
    private final double[] values;
    private final Set<TraceFlag> flags;

    private FinishedResiduals(int[] passes, double[] times, double[] values, Set<TraceFlag> flags) {
        this.passes = passes;
        this.times = times;
        this.values = values;
        this.flags = flags;
    }

    static FinishedResiduals of(CommonDrift.Followed well) {
        double[] residual = residuals(well.change(), well.after());
        int[] used = IntStream.range(0, residual.length)
                .filter(j -> !Double.isNaN(residual[j]))
                .toArray();
        return new FinishedResiduals(
                Arrays.stream(used).map(j -> well.passes().get(j)).toArray(),
                Arrays.stream(used).mapToDouble(well.after()::timeS).toArray(),
                Arrays.stream(used).mapToDouble(j -> residual[j]).toArray(),
                well.change().flags());
    }

    /** Reading by reading; NaN where a reading does not belong to the finished part. */
    private static double[] residuals(Change change, Series after) {
        double[] residual = new double[after.size()];
        Arrays.fill(residual, Double.NaN);
        change.finished().ifPresent(part -> {
            for (int j = part.from(); j < part.to(); j++) {
                if (part.uses(j)) {
                    residual[j] = after.absorbance(j) - part.at(after.timeS(j));
                }
            }
        });
        change.curve().ifPresent(curve -> {
            double[] fitted = curve.at(after.times());
            double[] left = curve.burstLeft(after.times());
            for (int j = 0; j < fitted.length; j++) {
                if (Math.abs(left[j]) < FINISHED && !curve.leftOut().contains(j)) {
                    residual[j] = after.absorbance(j) - fitted[j];
                }
            }
        });
        return residual;
    }

    /** In which pass over the plate a residual was read, counted from 0. */
    int pass(int k) {
        return passes[k];
    }

    /** When it was read, in s from the trigger. */
    double timeS(int k) {
        return times[k];
    }

    /** A residual in absorbance. */
    double value(int k) {
        return values[k];
    }

    /** The last pass it has, -1 without residuals. */
    int lastPass() {
        return Arrays.stream(passes).max().orElse(-1);
    }

    int size() {
        return values.length;
    }

    /** Root mean square, in absorbance. */
    double scatter() {
        return Math.sqrt(
                Arrays.stream(values).map(each -> each * each).average().orElse(0));
    }

    /** Whether they can say anything. */
    boolean areEnough() {
        return size() >= CommonDrift.FEWEST && scatter() > 0;
    }

    /** Whether nothing of the well's own is known that puts it off its line. */
    boolean arePlain() {
        return Collections.disjoint(flags, OFF);
    }

    /**
     * Lets the well vote whether it goes along with a trace of the plate.
     *
     * @param trace by pass, in standard deviations; 0 where there is none
     * @param own what of the trace is the well's own, as a factor of its residual
     */
    void vote(Votes votes, double[] trace, double[] own) {
        double[] along = new double[size()];
        double product = 0;
        for (int k = 0; k < along.length; k++) {
            along[k] = trace[passes[k]] - own[passes[k]] * values[k];
            product += along[k] * values[k];
        }
        // Its line has taken a line off the trace, too.
        double seen = LineFit.of(times, along, 0, along.length, null).squares();
        votes.add(product, Math.sqrt(seen) / scatter());
    }
}
