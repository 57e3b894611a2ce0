package tallywell.trace;

import org.jspecify.annotations.Nullable;

/**
 * Creep that is not constant over the finished part: what t² and t³ beside the line would gain, and what creep that dies
 * away may do to the line at the trigger.
 *
 * <pre>{@code
 * y = line + s q2(t) + c q3(t),   q2, q3 orthogonal to the line and to each other over the readings used
 * gain = what both take from the sum of squares, or 1.34 times what q2 alone takes, if that is more
 *
 * y = line + d exp(-3 t / T)
 * allowance = (what d = 1 does to the line at t = 0)² d²   if |d| > u(d), else 0
 * }</pre>
 *
 * <p>A bend too small to be sure of still moves the line. It is not corrected for: where it is more than its noise, what it
 * does to the line enters the uncertainty, up to {@value #MOST_WIDENING} times what scatter and the burst left make of it, and
 * to what creep of this size does over the whole trace: a line that begins late would else have an uncertainty of thirty
 * times its error. Of rules that widen straight traces alike this protects bent ones
 * best, or nearly so (docs/creep.md). Noise is judged from what remains once the line may bend, since what a bend leaves
 * looks like noise that carries over.
 */
final class BentCreep {
    /** Fewest readings that show a bend. */
    static final int FEWEST = 8;

    /** Gain of two degrees of freedom exceeded in one of four hundred traces. */
    static final double SURE_GAIN = 12;

    /**
     * Creep that dies away is taken to do so three times over in the time read: faster it looks like a burst, slower it does
     * less to the line.
     */
    private static final double RATE = 3;

    /** What scatter about a bent line is at most, in units of that of neighbours. */
    private static final double MOST_CARRIED = 2.5;

    private static final double HALF = 0.5;

    /** What an uncertainty is enlarged to at most, in units of what it is without. */
    private static final double MOST_WIDENING = 5;

    private final LineFit fit;
    private final double[] t;
    private final double[] y;
    private final int from;
    private final boolean @Nullable [] leftOut;
    private final double scale;
    private double linear;
    private double level;
    private double third;
    private double cubeLinear;
    private double cubeLevel;
    private double square;
    private double cube;
    private double normOfSquare;
    private double both;

    private BentCreep(LineFit fit, double[] t, double[] y, int from, boolean @Nullable [] leftOut) {
        this.fit = fit;
        this.t = t;
        this.y = y;
        this.from = from;
        this.leftOut = leftOut;
        scale = 1 / (t[t.length - 1] - t[from]);
    }

    /**
     * Looks at the readings about their line.
     *
     * @return null under eight readings used
     */
    static @Nullable BentCreep of(LineFit fit, double[] t, double[] y, int from, boolean @Nullable [] leftOut) {
        if (fit.n() < FEWEST || !(fit.timeSquares() > 0)) {
            return null;
        }
        BentCreep bent = new BentCreep(fit, t, y, from, leftOut);
        bent.project();
        return bent;
    }

    private void project() {
        double bySquare = 0;
        double byCube = 0;
        double[] s = new double[7];
        for (int i = from; i < t.length; i++) {
            if (leftOut == null || !leftOut[i]) {
                double x = (t[i] - fit.timeMean()) * scale;
                double r = y[i] - fit.at(t[i]);
                bySquare += r * x * x;
                byCube += r * x * x * x;
                double power = 1;
                for (int k = 0; k < s.length; k++) {
                    s[k] += power;
                    power *= x;
                }
            }
        }
        linear = s[3] / s[2];
        level = s[2] / s[0];
        cubeLinear = s[4] / s[2];
        cubeLevel = s[3] / s[0];
        normOfSquare = s[4] - s[3] * linear - s[2] * level;
        third = (s[5] - linear * s[4] - level * s[3]) / normOfSquare;
        double normOfCube = s[6] - s[4] * cubeLinear - s[3] * cubeLevel - third * third * normOfSquare;
        square = bySquare / normOfSquare;
        cube = normOfCube > 0 ? (byCube - third * bySquare) / normOfCube : 0;
        both = square * bySquare + cube * cube * normOfCube;
    }

    private double squareAt(double x) {
        return x * x - linear * x - level;
    }

    private double cubeAt(double x) {
        return x * x * x - cubeLinear * x - cubeLevel - third * squareAt(x);
    }

    private double gainOfSquare() {
        return square * square * normOfSquare;
    }

    private double remains() {
        return Math.max(0, fit.squares() - both);
    }

    private double variance() {
        return Math.max(BurstTail.LEAST_SCATTER * BurstTail.LEAST_SCATTER, remains() / (fit.n() - 4));
    }

    /** Gain, in variances, beyond which a bend of two degrees of freedom is sure, for noise that carries over so much. */
    static double sureGain(int n, double carry) {
        return Noise.gain(SURE_GAIN, n, 4, carry);
    }

    /** Whether the creep is not constant, beyond doubt. */
    boolean isSure() {
        double gain = Math.max(both, 1.34 * gainOfSquare());
        // A line through half of a burst leaves far more than noise even when it may bend, and that carries over.
        double scatter = Math.max(BurstTail.LEAST_SCATTER, MOST_CARRIED * Noise.ofNeighbours(y, from, leftOut));
        boolean more = variance() > scatter * scatter;
        double variance = more ? scatter * scatter : variance();
        if (!(gain > sureGain(fit.n(), 0) * variance)) {
            return false;
        }
        double carry = more ? Math.min(HALF, carry()) : carry();
        return gain > sureGain(fit.n(), carry) * variance * Noise.inflation(carry);
    }

    /** Variance of the line at the trigger that creep which dies away, seen or not, stands for. */
    double allowance() {
        double[] q = dyingAway(t, from, t.length);
        LineFit ofShape = LineFit.of(t, q, from, t.length, leftOut);
        double norm = ofShape.squares();
        double product = 0;
        for (int i = from; i < t.length; i++) {
            if (leftOut == null || !leftOut[i]) {
                product += q[i] * (y[i] - fit.at(t[i]));
            }
        }
        double gain = norm > 0 ? product * product / norm : 0;
        if (!(gain > variance()) || !(gain > variance() * Noise.inflation(carry()))) {
            return 0;
        }
        double lever = ofShape.at(0) - 1;
        return lever * lever * gain / norm;
    }

    /**
     * What of an allowance enters the uncertainty.
     *
     * @param allowance variance that creep which dies away stands for
     * @param known standard uncertainty without it
     * @param wholeCreep what creep of this size does over the whole trace, in absorbance
     */
    static double limited(double allowance, double known, double wholeCreep) {
        double most = (MOST_WIDENING * MOST_WIDENING - 1) * known * known;
        return Math.min(allowance, Math.min(most, wholeCreep * wholeCreep));
    }

    /** exp(-3 t / T), T being the last time. */
    static double[] dyingAway(double[] t, int from, int to) {
        double[] q = new double[to];
        double rate = RATE / t[to - 1];
        double lastStep = Double.NaN;
        double factor = 1;
        for (int i = from; i < to; i++) {
            if (i == from) {
                q[i] = Math.exp(-rate * t[i]);
                continue;
            }
            double step = t[i] - t[i - 1];
            if (step != lastStep) {
                factor = Math.exp(-rate * step);
                lastStep = step;
            }
            q[i] = q[i - 1] * factor;
        }
        return q;
    }

    private double carry() {
        return Noise.carry(products(), remains(), fit.n(), 4);
    }

    /** Sum of products of neighbouring residuals of the bent line. */
    private double products() {
        double products = 0;
        double before = 0;
        for (int i = from; i < t.length; i++) {
            if (leftOut == null || !leftOut[i]) {
                double x = (t[i] - fit.timeMean()) * scale;
                double r = y[i] - fit.at(t[i]) - square * squareAt(x) - cube * cubeAt(x);
                products += r * before;
                before = r;
            }
        }
        return products;
    }
}
