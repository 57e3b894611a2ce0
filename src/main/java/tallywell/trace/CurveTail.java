package tallywell.trace;

import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The tail of the burst by the law of the reaction, averaged over the progress curves that the trace supports.
 *
 * <p>An exponential over the end of a trace alone often cannot bound what is left, where the burst as a whole can: then this
 * is asked, which costs a hundred times as much. The variance of the burst left, and of the error of a line, is that of the
 * curves by their slopes, and of the curves about their mean.
 */
final class CurveTail implements Tail {
    /** Standard deviations to the bound: wider than for one exponential, since slopes tell less of a law with a lag. */
    private static final double BOUND = 3;

    private final TailLines lines;
    private final double[] leftMean;
    private final double[] leftSquare;
    private final double[] errorSquare;
    private final double scatter;
    private final double carry;
    private final boolean jumps;
    private final boolean bends;

    private CurveTail(ProgressCurve curve, double[] t, boolean endBends) {
        int n = t.length;
        lines = new TailLines(t, 0);
        leftMean = new double[n];
        leftSquare = new double[n];
        errorSquare = new double[n];
        carry = curve.noise().carry();
        double last = curve.likeliest().at(t)[n - 1];
        scatter = curve.noise().sd(last);
        Set<TraceFlag> flags = curve.flags();
        jumps = flags.contains(TraceFlag.JUMP);
        bends = endBends || flags.contains(TraceFlag.CREEP_NOT_CONSTANT);
        curve.eachFit((fit, weight, variance) -> add(fit, weight, variance, t));
    }

    private void add(CurveFit fit, double weight, double variance, double[] t) {
        double[][] burst = fit.burst(t);
        double[][] intercepts = new double[burst.length][t.length];
        for (int k = 0; k < burst.length; k++) {
            lines.intercepts(burst[k], intercepts[k]);
        }
        for (int j = 0; j < t.length; j++) {
            double left = burst[0][j];
            leftMean[j] += weight * left;
            leftSquare[j] += weight * (left * left + variance * fit.varianceBy(burst, j));
            double error = intercepts[0][j];
            errorSquare[j] += weight * (error * error + variance * fit.varianceBy(intercepts, j));
        }
    }

    /**
     * Looks at the whole trace, spikes taken out.
     *
     * @param endBends whether its end alone shows more than one burst and a line, which a law with a lag may take for its own
     * @return null if no progress curve describes it, or there are too few readings for one
     */
    static @Nullable CurveTail of(double[] t, double[] y, BaselineRule baseline, boolean endBends) {
        if (t.length < ProgressCurve.FEWEST || !(t[t.length - 1] > t[0])) {
            return null;
        }
        Optional<ProgressCurve> curve = ProgressCurve.of(baseline, t, y);
        return curve.isEmpty() || curve.get().misfits() ? null : new CurveTail(curve.get(), t, endBends);
    }

    @Override
    public int from() {
        return 0;
    }

    @Override
    public int readings(int j) {
        return lines.count(j);
    }

    @Override
    public double lineVariance(int j) {
        return scatter * scatter * Noise.inflation(carry) * lines.varianceAtTrigger(j);
    }

    @Override
    public double errorRms(int j) {
        return Math.sqrt(errorSquare[j]);
    }

    @Override
    public double left(int j) {
        return leftMean[j];
    }

    @Override
    public double leftBound(int j) {
        double mean = leftMean[j];
        return Math.abs(mean) + BOUND * Math.sqrt(Math.max(0, leftSquare[j] - mean * mean));
    }

    @Override
    public double carry() {
        return carry;
    }

    @Override
    public boolean jumps() {
        return jumps;
    }

    @Override
    public boolean bends() {
        return bends;
    }

    /** The line alone says what it may bend. */
    @Override
    public double dyingSquare() {
        return 0;
    }
}
