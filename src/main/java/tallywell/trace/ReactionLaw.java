package tallywell.trace;

import java.util.OptionalDouble;
import tallywell.numeric.LambertW;

/**
 * How far a reaction has come: the integrated Michaelis-Menten law, from half time and bend.
 *
 * <pre>{@code
 * a p - b ln(1 - p) = te / T,   a = 2 s,   b = (1 - s) / ln 2,   s = 1 - exp(-bend)
 * te = t                             without lag
 * te = t - lag (1 - exp(-t / lag))   induction, lag > 0
 * te = t - lag                       lag < 0
 * }</pre>
 *
 * <p>p is the part converted, T the half time without lag. With Km and the rate Vmax in absorbance, S0 the whole change:
 * {@code a = S0 / (Vmax T)} and {@code b = Km / (Vmax T)}. A bend of 0 is first order (k = ln 2 / T), a large one a
 * straight rise that stops dead; a negative one is competitive inhibition by the product, whose integrated law has the
 * same form with a negative a. With {@code w = a (1 - p) / b} the law reads {@code w + ln w = ln(a / b) + (a - te / T) / b}, which
 * is Lambert's W in logarithms; for a ≤ 0 Newton's method on ln(1 - p) serves, where the left side is monotone.
 *
 * <p>A lag comes in two kinds. Induction: the rate comes up as 1 - exp(-t / lag), which is the te above. Coupled: what has
 * reacted passes through an intermediate that is used up in first order,
 *
 * <pre>{@code
 * signal(t) = p(t) - integral over q from 0 to p(t) of exp(-(t - time(q)) / lag) dq,   time(q) = T (a q - b ln(1 - q))
 * }</pre>
 *
 * <p>and the integral, taken over q and not over time, has no corner where a saturated reaction stops dead; from reading
 * to reading it is carried on by Gauss's rule with three points. A negative lag of either kind is a reaction that began
 * before the trigger was counted; it joins smoothly at 0, so that no bound is needed there.
 *
 * <p>Source: integrated law by Lambert's W: S. Schnell and C. Mendoza, J. theor. Biol. 187 (1997) 207; product inhibition: A.
 * Cornish-Bowden, Fundamentals of Enzyme Kinetics, chapter 2; lag of coupled assays: W. R. McClure, Biochemistry 8 (1969)
 * 2782 (all from memory).
 */
final class ReactionLaw {
    /** Kind of lag. */
    enum Lag {
        /** The rate comes up. */
        INDUCTION,
        /** An intermediate is passed through. */
        COUPLED
    }

    private static final double LN2 = Math.log(2);
    /** Gauss-Legendre on 0 to 1, three points. */
    private static final double[] NODES = {0.5 - 0.5 * Math.sqrt(0.6), 0.5, 0.5 + 0.5 * Math.sqrt(0.6)};

    private static final double[] WEIGHTS = {5.0 / 18, 8.0 / 18, 5.0 / 18};

    /** Below this a the law is that of first order to the last digit but two. */
    private static final double LEAST_A = 1e-8;

    /** A part too small to matter in absorbance. */
    private static final double LEAST_LEFT = 1e-8;

    /** A part that 1 does not show in its last digit. */
    private static final double NOTHING_LEFT = 1e-17;

    private static final int MOST_PIECES = 200;

    private final double halfTimeS;
    private final double s;
    private final double a;
    private final double b;
    private final double logRatio;
    private final Lag lag;
    private final double lagS;

    ReactionLaw(double halfTimeS, double bend, Lag lag, double lagS) {
        this.halfTimeS = halfTimeS;
        this.s = -Math.expm1(-bend);
        this.a = 2 * s;
        this.b = (1 - s) / LN2;
        this.logRatio = a > LEAST_A ? Math.log(a / b) : 0;
        this.lag = lag;
        this.lagS = lagS;
    }

    /** From the constants of the law, in absorbance and s. */
    static ReactionLaw ofConstants(double change, double km, double vmaxPerS, Lag lag, double lagS) {
        double halfTimeS = (0.5 * change + km * LN2) / vmaxPerS;
        double s = 0.5 * change / (vmaxPerS * halfTimeS);
        return new ReactionLaw(halfTimeS, -Math.log1p(-s), lag, lagS);
    }

    /** Rate constant per s of first order with this half time. */
    double firstOrderPerS() {
        return LN2 / halfTimeS;
    }

    /** Michaelis constant in the unit of the change; empty where the law does not saturate. */
    OptionalDouble michaelisConstant(double change) {
        return a > LEAST_A ? OptionalDouble.of(change * b / a) : OptionalDouble.empty();
    }

    /** Largest rate in the unit of the change per s; empty where the law does not saturate. */
    OptionalDouble vmaxPerS(double change) {
        return a > LEAST_A ? OptionalDouble.of(change / (a * halfTimeS)) : OptionalDouble.empty();
    }

    /** What is left, 1 at the start, towards 0. */
    double left(double timeS) {
        double[] left = new double[1];
        double[] ignored = new double[1];
        fill(new double[] {timeS}, left, ignored, ignored, ignored);
        return left[0];
    }

    /** What is left, from effective time over half time. */
    double leftAt(double u) {
        if (!(u > 0)) {
            return 1;
        }
        if (a > LEAST_A) {
            return LambertW.ofExp(logRatio + (a - u) / b) * b / a;
        }
        return Math.exp(a == 0 ? -u / b : -newton(u));
    }

    /** v = -ln(1 - p) of a (1 - exp(-v)) + b v = u, for a ≤ 0. */
    private double newton(double u) {
        // The left side is convex for a < 0 and lies above (b + a) v, so that a start at the root of its asymptote is
        // above
        // the root, and from there every step comes down to it.
        double v = (u - a) / b;
        for (int i = 0; i < 30; i++) {
            double e = Math.exp(-v);
            double step = (a * (1 - e) + b * v - u) / (b + a * e);
            v -= step;
            if (!(Math.abs(step) > 1e-15 * v)) {
                break;
            }
        }
        return Math.max(0, v);
    }

    /**
     * What is left at each time, and its derivatives.
     *
     * @param timeS times after the trigger, ascending
     * @param left takes what is left
     * @param byHalfTime takes its derivative by ln(half time)
     * @param byBend takes its derivative by the bend
     * @param byLag takes its derivative by the lag, per s
     */
    void fill(double[] timeS, double[] left, double[] byHalfTime, double[] byBend, double[] byLag) {
        if (lag == Lag.COUPLED && lagS > 0) {
            fillCoupled(timeS, left, byHalfTime, byBend, byLag);
            return;
        }
        boolean over = false;
        for (int i = 0; i < timeS.length; i++) {
            if (over) {
                left[i] = 0;
                byHalfTime[i] = 0;
                byBend[i] = 0;
                byLag[i] = 0;
                continue;
            }
            double t = timeS[i];
            double decay = lagS > 0 ? Math.exp(-t / lagS) : 0;
            double u = (lagS > 0 ? t - lagS * (1 - decay) : t - lagS) / halfTimeS;
            if (!(u > 0)) {
                left[i] = 1;
                byHalfTime[i] = 0;
                byBend[i] = 0;
                byLag[i] = 0;
                continue;
            }
            double y = leftAt(u);
            over = y < NOTHING_LEFT;
            // d left / d u; b + a y is positive for every bend allowed.
            double rate = -y / (b + a * y);
            left[i] = y;
            byHalfTime[i] = -u * rate;
            // ln y from the law itself: a (1 - y) - b ln y = u.
            byBend[i] = -rate * (2 * (1 - y) + (a * (1 - y) - u) / (b * LN2)) * (1 - s);
            byLag[i] = rate * (lagS > 0 ? decay * (1 + t / lagS) - 1 : -1) / halfTimeS;
        }
    }

    private void fillCoupled(double[] timeS, double[] left, double[] byHalfTime, double[] byBend, double[] byLag) {
        Intermediate held = new Intermediate();
        for (int i = 0; i < timeS.length; i++) {
            held.goTo(timeS[i]);
            left[i] = held.left + held.part;
            byHalfTime[i] = held.byHalfTime;
            byBend[i] = held.byBend * (1 - s);
            byLag[i] = held.byLag;
        }
    }

    /** What has reacted and not come through yet, with its derivatives, carried on in time. */
    private final class Intermediate {
        private double t;
        private double left = 1;
        private double part;
        private double byHalfTime;
        private double byBend;
        private double byLag;
        private final double perLag = 1 / lagS;
        private double lastStep = Double.NaN;
        private double decay = 1;

        /** Steps longer than the lag are cut, for the weight of what reacted goes as exp(-age / lag). */
        void goTo(double timeS) {
            double from = t;
            double step = timeS - from;
            boolean over = left < LEAST_LEFT;
            int pieces = over ? 1 : (int) Math.min(MOST_PIECES, Math.max(1, Math.ceil(step / lagS)));
            for (int k = 1; k <= pieces; k++) {
                oneStep(k == pieces ? timeS : from + k * step / pieces);
            }
        }

        private void oneStep(double timeS) {
            double step = timeS - t;
            if (step != lastStep) {
                decay = Math.exp(-step / lagS);
                lastStep = step;
            }
            byLag = decay * (byLag + step * perLag * perLag * part);
            byHalfTime *= decay;
            byBend *= decay;
            part *= decay;
            double leftNow = left < NOTHING_LEFT ? 0 : leftAt(timeS / halfTimeS);
            if (left - leftNow > LEAST_LEFT) {
                addReacted(timeS, left - leftNow);
            }
            t = timeS;
            left = leftNow;
        }

        private void addReacted(double timeS, double dp) {
            for (int g = 0; g < NODES.length; g++) {
                double y = left - dp * NODES[g];
                double q = 1 - y;
                double log = Math.log(y);
                double time = halfTimeS * (a * q - b * log);
                double f = dp * WEIGHTS[g] * Math.exp((time - timeS) * perLag);
                part += f;
                byHalfTime += f * time * perLag;
                byBend += f * halfTimeS * (2 * q + log / LN2) * perLag;
                byLag += f * (timeS - time) * perLag * perLag;
            }
        }
    }
}
