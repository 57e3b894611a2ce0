package tallywell.across;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tallywell.budget.ResultBudget;
import tallywell.numeric.StudentT;

/**
 * How sure a weighted sum of results of several plates is.
 *
 * <pre>{@code
 * u² = sum over results of (w own)² + sum over common sources of (sum over results of w effect)²
 * }</pre>
 *
 * <p>What two results have in common is wrong in both alike: it is added with its signs before it is squared, so that it
 * cancels in a difference and does not shrink in a mean.
 *
 * <p>Source: JCGM 100:2008 (GUM), 5.2.2.
 *
 * @param standardUncertainty u
 * @param degreesOfFreedom effective ones, may be infinite
 */
record WeightedSum(double standardUncertainty, double degreesOfFreedom) {
    /**
     * A weighted sum.
     *
     * @param weights one a result
     */
    static WeightedSum of(double[] weights, List<UncertaintyParts> parts) {
        double u = Math.sqrt(ownSquares(weights, parts) + commonSquares(weights, parts));
        return new WeightedSum(u, Freedom.of(u, weights, parts));
    }

    /** What of the variance is of each result alone. */
    static double ownSquares(double[] weights, List<UncertaintyParts> parts) {
        double squares = 0;
        for (int i = 0; i < weights.length; i++) {
            double own = weights[i] * parts.get(i).own();
            squares += own * own;
        }
        return squares;
    }

    /** What of the variance comes from sources that results have in common. */
    static double commonSquares(double[] weights, List<UncertaintyParts> parts) {
        Map<Common, Double> sums = new HashMap<>();
        for (int i = 0; i < weights.length; i++) {
            double weight = weights[i];
            parts.get(i).common().forEach((source, effect) -> sums.merge(source, weight * effect, Double::sum));
        }
        double squares = 0;
        for (double sum : sums.values()) {
            squares += sum * sum;
        }
        return squares;
    }

    /** The coverage factor for 95 %. */
    double coverageFactor() {
        return StudentT.twoSided(ResultBudget.COVERAGE, degreesOfFreedom);
    }

    /** The expanded uncertainty for 95 %. */
    double expandedUncertainty() {
        return coverageFactor() * standardUncertainty;
    }
}
