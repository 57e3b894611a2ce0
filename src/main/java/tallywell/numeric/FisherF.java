package tallywell.numeric;

import org.hipparchus.distribution.continuous.FDistribution;

/**
 * Fisher's F distribution: the ratio of two variances.
 *
 * <p>Quantiles are those of Hipparchus, polished by Newton steps on its distribution function: at least 9 digits for
 * probabilities from 1e-5 to 1 − 1e-5.
 */
public final class FisherF {
    private FisherF() {}

    /**
     * The value below which F lies with a probability.
     *
     * @param probability between 0 and 1, both excluded
     * @param numerator degrees of freedom of the upper variance, positive and finite
     * @param denominator degrees of freedom of the lower variance, positive and finite
     */
    public static double quantile(double probability, double numerator, double denominator) {
        Series.probability("probability", probability);
        FDistribution f = distribution(numerator, denominator);
        double x = f.inverseCumulativeProbability(probability);
        for (int i = 0; i < 3; i++) {
            double step = (f.cumulativeProbability(x) - probability) / f.density(x);
            // A step beyond half the value would leave the region in which Newton's method converges.
            if (!(Math.abs(step) > 1e-14 * x && Math.abs(step) < 0.5 * x)) {
                break;
            }
            x -= step;
        }
        return x;
    }

    /**
     * The probability of an F at least as large as a value.
     *
     * @param value at least 0
     * @param numerator degrees of freedom of the upper variance, positive and finite
     * @param denominator degrees of freedom of the lower variance, positive and finite
     */
    public static double tail(double value, double numerator, double denominator) {
        if (!(value >= 0)) {
            throw new IllegalArgumentException("value must be at least 0 but was " + value);
        }
        // The reciprocal has the degrees of freedom exchanged, and its lower tail keeps its digits.
        return value == 0
                ? 1
                : distribution(/* numerator= */ denominator, /* denominator= */ numerator)
                        .cumulativeProbability(1 / value);
    }

    private static FDistribution distribution(double numerator, double denominator) {
        Series.positive("numerator", numerator);
        Series.positive("denominator", denominator);
        return new FDistribution(numerator, denominator);
    }
}
