package tallywell.curve;

import tallywell.numeric.VarianceFunction;

/**
 * Weights from a variance function that was fitted to many replicates, never from the scatter of the two or three wells
 * of one level.
 *
 * @param variance the variance of a response over its size
 */
public record FittedVariance(VarianceFunction variance) implements Weigher {
    @Override
    public double weight(double level, double response) {
        return 1 / variance.at(response);
    }

    @Override
    public double weightOfBlank() {
        return variance.constant() > 0 ? weight(0, 0) : 0;
    }

    @Override
    public String word() {
        return "1/s2";
    }
}
