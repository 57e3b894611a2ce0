package tallywell.numeric;

import org.hipparchus.distribution.continuous.NormalDistribution;

/** The normal distribution with mean 0 and standard deviation 1. */
public final class Gaussian {
    private Gaussian() {}

    /**
     * The value below which a standard normal variable lies with a probability.
     *
     * @param probability between 0 and 1, both excluded
     */
    public static double quantile(double probability) {
        Series.probability("probability", probability);
        return new NormalDistribution(0, 1).inverseCumulativeProbability(probability);
    }
}
