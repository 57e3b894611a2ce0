package tallywell.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Works the baseline of one well. */
final class BaselineRule {
    /** A drift this small over the baseline matters to nobody. */
    private static final double LEAST_DRIFT = 0.0005;

    private static final double SURE = 1.5;
    private static final int FEWEST_FOR_OWN_SCATTER = 5;

    private BaselineRule() {}

    /**
     * Applies the rule.
     *
     * @param flags takes what is to be flagged
     * @param ofTrace scatter after the trigger, for baselines too short to show their own; null if unknown
     */
    static BaselineFit of(Baseline baseline, @Nullable Noise ofTrace, Set<TraceFlag> flags) {
        if (baseline instanceof Baseline.Given given) {
            OptionalDouble u = given.standardUncertainty() > 0
                    ? OptionalDouble.of(given.standardUncertainty())
                    : OptionalDouble.empty();
            return new BaselineFit(given.value(), 0, List.of(), OptionalDouble.empty(), u);
        }
        Baseline.Read read = (Baseline.Read) baseline;
        return new Worker(read, flags).fit(ofTrace);
    }

    private static final class Worker {
        private final double[] t;
        private final double[] y;
        private final BeforeRule rule;
        private final boolean[] leftOut;
        private final Set<TraceFlag> flags;
        private final int n;

        Worker(Baseline.Read read, Set<TraceFlag> flags) {
            Series readings = read.readings();
            this.t = readings.isTimed() ? readings.times() : indexes(readings.size());
            this.y = readings.values();
            this.n = y.length;
            this.rule = readings.isTimed() || read.rule() != BeforeRule.LINE ? read.rule() : BeforeRule.MEAN;
            this.flags = flags;
            this.leftOut = rule == BeforeRule.LAST ? new boolean[n] : Spikes.offLevel(y);
        }

        BaselineFit fit(@Nullable Noise ofTrace) {
            List<Integer> out = listed(leftOut);
            if (!out.isEmpty()) {
                flags.add(TraceFlag.SPIKE);
            }
            LineFit line = LineFit.of(t, y, 0, n, leftOut);
            Noise own = line.n() >= 3 && line.timeSquares() > 0 ? Noise.about(line, t, y, 0, n, leftOut) : null;
            if (own != null && rule != BeforeRule.LINE && drifts(line, own)) {
                flags.add(TraceFlag.BASELINE_DRIFTS);
            }
            boolean useLine = rule == BeforeRule.LINE && line.timeSquares() > 0;
            double value = rule == BeforeRule.LAST ? y[n - 1] : useLine ? line.at(0) : line.mean();
            OptionalDouble scatter = own == null ? OptionalDouble.empty() : OptionalDouble.of(own.sd());
            return new BaselineFit(
                    value, useLine ? line.slope() : 0, out, scatter, uncertainty(line, own, ofTrace, useLine));
        }

        private OptionalDouble uncertainty(
                LineFit line, @Nullable Noise own, @Nullable Noise ofTrace, boolean useLine) {
            Noise noise = own != null && (line.n() >= FEWEST_FOR_OWN_SCATTER || ofTrace == null) ? own : ofTrace;
            if (noise == null) {
                return OptionalDouble.empty();
            }
            if (ofTrace != null && ofTrace.carry() > noise.carry()) {
                noise = new Noise(noise.sd(), ofTrace.carry(), noise.degreesOfFreedom());
            }
            double sd = rule == BeforeRule.LAST
                    ? noise.sd()
                    : noise.ofLineAt(useLine ? 0 : line.timeMean(), line, t, 0, n, leftOut);
            return OptionalDouble.of(sd * Coverage.factor(noise.degreesOfFreedom()));
        }

        private boolean drifts(LineFit line, Noise noise) {
            double moved = line.slope() * (t[n - 1] - t[0]);
            double u = noise.ofSlope(line, t, 0, n, leftOut) * Coverage.factor(noise.degreesOfFreedom());
            return Math.abs(moved) > LEAST_DRIFT && Math.abs(line.slope()) > 2 * SURE * u;
        }
    }

    /** The marked readings, ascending. */
    static List<Integer> listed(boolean[] marked) {
        List<Integer> list = new ArrayList<>();
        for (int i = 0; i < marked.length; i++) {
            if (marked[i]) {
                list.add(i);
            }
        }
        return list;
    }

    private static double[] indexes(int n) {
        double[] index = new double[n];
        for (int i = 0; i < n; i++) {
            index[i] = i - (n - 1);
        }
        return index;
    }
}
