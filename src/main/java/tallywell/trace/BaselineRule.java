package tallywell.trace;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Works the baseline of one well.
 *
 * <p>A baseline is short, so how much of its noise carries over from reading to reading is taken from the readings after
 * the trigger; under {@value #FEWEST_FOR_OWN_SCATTER} readings its scatter is too.
 */
final class BaselineRule {
    /** A drift this small over the baseline matters to nobody. */
    private static final double LEAST_DRIFT = 0.0005;

    /** Slope over its uncertainty above which a baseline drifts; one steady baseline in some four hundred is called so. */
    private static final double SURE = 3;

    private static final int FEWEST_FOR_OWN_SCATTER = 5;

    private final double value;
    private final double slopePerS;
    private final boolean useLine;
    private final boolean last;
    private final OptionalDouble given;
    private final boolean[] leftOut;
    private final double[] t;
    private final double[] y;
    private final @Nullable LineFit line;

    private BaselineRule(Baseline.Given known) {
        value = known.value();
        slopePerS = 0;
        useLine = false;
        last = false;
        given = known.standardUncertainty() > 0
                ? OptionalDouble.of(known.standardUncertainty())
                : OptionalDouble.empty();
        leftOut = new boolean[0];
        t = new double[0];
        y = new double[0];
        line = null;
    }

    private BaselineRule(Baseline.Read read) {
        Series readings = read.readings();
        t = readings.isTimed() ? readings.times() : indexes(readings.size());
        y = readings.values();
        last = read.rule() == BeforeRule.LAST;
        leftOut = last ? new boolean[y.length] : Spikes.offLevel(y);
        line = LineFit.of(t, y, 0, y.length, leftOut);
        useLine = read.rule() == BeforeRule.LINE && readings.isTimed() && line.timeSquares() > 0;
        value = last ? y[y.length - 1] : useLine ? line.at(0) : line.mean();
        slopePerS = useLine ? line.slope() : 0;
        given = OptionalDouble.empty();
    }

    static BaselineRule of(Baseline baseline) {
        return baseline instanceof Baseline.Given known
                ? new BaselineRule(known)
                : new BaselineRule((Baseline.Read) baseline);
    }

    /** The absorbance before the trigger. */
    double value() {
        return value;
    }

    /**
     * The baseline in full.
     *
     * @param ofTrace noise after the trigger, or null if unknown
     * @param flags takes what is to be flagged
     */
    BaselineFit fit(@Nullable Noise ofTrace, Set<TraceFlag> flags) {
        if (line == null) {
            return new BaselineFit(value, 0, List.of(), OptionalDouble.empty(), given);
        }
        List<Integer> out = Spikes.listed(leftOut);
        if (!out.isEmpty()) {
            flags.add(TraceFlag.SPIKE);
        }
        double carry = ofTrace == null ? 0 : ofTrace.carry();
        Noise own = own(carry);
        if (own != null && !useLine && drifts(line, own) || leavesItsLevel()) {
            flags.add(TraceFlag.BASELINE_DRIFTS);
        }
        OptionalDouble scatter = own == null ? OptionalDouble.empty() : OptionalDouble.of(own.sd());
        return new BaselineFit(value, slopePerS, out, scatter, uncertainty(ofTrace));
    }

    private @Nullable Noise own(double carry) {
        return line != null && line.n() >= 3 && line.timeSquares() > 0
                ? Noise.about(line, carry, t, 0, y.length, leftOut)
                : null;
    }

    /** Standard uncertainty of the value; empty where nothing shows it. */
    OptionalDouble uncertainty(@Nullable Noise ofTrace) {
        if (line == null) {
            return given;
        }
        Noise own = own(ofTrace == null ? 0 : ofTrace.carry());
        Noise noise = own != null && (line.n() >= FEWEST_FOR_OWN_SCATTER || ofTrace == null) ? own : ofTrace;
        return noise == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(deviation(line, noise) * Coverage.factor(noise.degreesOfFreedom()));
    }

    /** Standard uncertainty of the value for a reading of this scatter; empty where the value was given. */
    OptionalDouble uncertainty(double sd, double carry) {
        return line == null ? given : OptionalDouble.of(deviation(line, new Noise(sd, carry, line.n())));
    }

    /** Sum of squares of the readings about the baseline; 0 where they show no scatter of their own. */
    double squares() {
        return line == null
                ? 0
                : useLine ? line.squares() : line.squares() + line.slope() * line.slope() * line.timeSquares();
    }

    /** Degrees of freedom of that sum. */
    int freedom() {
        return line == null ? 0 : Math.max(0, line.n() - (useLine ? 2 : 1));
    }

    /** Sum of products of neighbouring residuals. */
    double products() {
        double products = 0;
        double before = 0;
        for (int i = 0; i < y.length; i++) {
            if (!leftOut[i]) {
                double e = y[i] - (useLine ? value + slopePerS * t[i] : line == null ? value : line.mean());
                products += e * before;
                before = e;
            }
        }
        return products;
    }

    /** How many readings are used. */
    int readings() {
        return line == null ? 0 : line.n();
    }

    private double deviation(LineFit fitted, Noise noise) {
        return last ? noise.sd() : noise.ofLineAt(useLine ? 0 : fitted.timeMean(), fitted, t, 0, y.length, leftOut);
    }

    /** Whether not one reading, which a bubble may spoil, but its last two or more are off: something reacts already. */
    private boolean leavesItsLevel() {
        int n = leftOut.length;
        return n > 2 && leftOut[n - 1] && leftOut[n - 2];
    }

    private boolean drifts(LineFit fitted, Noise noise) {
        double moved = fitted.slope() * (t[y.length - 1] - t[0]);
        double u = noise.ofSlope(fitted, t, 0, y.length, leftOut) * Coverage.factor(noise.degreesOfFreedom());
        return Math.abs(moved) > LEAST_DRIFT && Math.abs(fitted.slope()) > SURE * u;
    }

    private static double[] indexes(int n) {
        double[] index = new double[n];
        for (int i = 0; i < n; i++) {
            index[i] = i - (n - 1);
        }
        return index;
    }
}
