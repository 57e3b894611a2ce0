package tallywell.curve;

import tallywell.numeric.VarianceFunction;

/**
 * Weights from a variance function that was fitted to many replicates, never from the scatter of the two or three wells
 * of one level.
 *
 * @param variance the variance of a response over its size
 * @param unit the variance of weight 1, positive
 */
public record FittedVariance(VarianceFunction variance, double unit) implements Weigher {
    /** Refuses a unit that is none. */
    public FittedVariance {
        if (!(unit > 0 && unit <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("unit must be positive and finite but was " + unit);
        }
    }

    /**
     * Weights of which that of a blank is 1, so that the residual standard deviation is that of a blank; of a response as
     * large as the largest where the function has no constant part.
     *
     * @param variance the function
     * @param largest the largest response, not 0
     */
    public static FittedVariance ofBlank(VarianceFunction variance, double largest) {
        return new FittedVariance(variance, variance.constant() > 0 ? variance.constant() : variance.at(largest));
    }

    @Override
    public double weight(double level, double response) {
        return unit / variance.at(response);
    }

    @Override
    public double weightOfBlank() {
        return variance.constant() > 0 ? weight(0, 0) : 0;
    }

    /** The variance of a blank over that of weight 1. */
    public double ofConstant() {
        return variance.constant() / unit;
    }

    /** What the variance of a net ΔA of 1 is larger than that of a blank, over that of weight 1. */
    public double ofProportional() {
        return variance.proportional() / unit;
    }

    @Override
    public String word() {
        return "variance-function";
    }
}
