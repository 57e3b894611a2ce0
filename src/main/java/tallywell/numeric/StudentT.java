package tallywell.numeric;

import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Student's t distribution.
 *
 * <p>Quantiles are those of Hipparchus, polished by Newton steps on its distribution function: at least 10 digits for
 * probabilities from 1e-6 on. Degrees of freedom need not be whole, as effective ones are not; from
 * {@value #MOST} on the normal distribution serves, which then agrees to 9 digits.
 */
public final class StudentT {
    private static final double MOST = 1e9;

    private StudentT() {}

    /**
     * The value below which t lies with a probability.
     *
     * @param probability between 0 and 1, both excluded
     * @param degreesOfFreedom positive, may be infinite
     */
    public static double quantile(double probability, double degreesOfFreedom) {
        Series.probability("probability", probability);
        Series.positive("degreesOfFreedom", degreesOfFreedom);
        if (degreesOfFreedom >= MOST) {
            return Gaussian.quantile(probability);
        }
        // The lower tail keeps its digits; the upper one follows by symmetry.
        boolean lower = probability <= 0.5;
        double tail = lower ? probability : 1 - probability;
        TDistribution t = new TDistribution(degreesOfFreedom);
        double x = t.inverseCumulativeProbability(tail);
        for (int i = 0; i < 3; i++) {
            double step = (t.cumulativeProbability(x) - tail) / t.density(x);
            x -= step;
            if (!(Math.abs(step) > 1e-14 * Math.abs(x))) {
                break;
            }
        }
        return lower ? x : -x;
    }

    /**
     * The factor of a two-sided interval, such as 1.96 for 0.95 and infinitely many degrees of freedom.
     *
     * @param level coverage, between 0 and 1, both excluded
     * @param degreesOfFreedom positive, may be infinite
     */
    public static double twoSided(double level, double degreesOfFreedom) {
        Series.probability("level", level);
        return -quantile((1 - level) / 2, degreesOfFreedom);
    }

    /**
     * The probability that t is at least as far from zero as a value.
     *
     * @param value finite
     * @param degreesOfFreedom positive and finite
     */
    public static double twoSidedTail(double value, double degreesOfFreedom) {
        Series.positive("degreesOfFreedom", degreesOfFreedom);
        return 2 * new TDistribution(degreesOfFreedom).cumulativeProbability(-Math.abs(value));
    }
}
