package tallywell.budget;

import tallywell.numeric.StudentT;
import tallywell.workup.DifferenceResult;

/**
 * How sure a result by difference is: what both results share (calibration, light path, pipette) is wrong in both alike,
 * so their covariance is taken out.
 *
 * <pre>{@code
 * u² = f² (u²(total) + u²(free) - 2 u(total, free)) + (value · u(yield))²
 * }</pre>
 *
 * <p>Source: JCGM 100:2008 (GUM), 5.2.2.
 *
 * @param result the result
 * @param standardUncertainty in the unit of the value
 * @param degreesOfFreedom effective ones over the scatter that is left
 */
public record DifferenceBudget(DifferenceResult result, double standardUncertainty, double degreesOfFreedom) {
    /** The budget of a difference; the result must have a value. */
    public static DifferenceBudget of(DifferenceResult result, ResultBudget total, ResultBudget free) {
        double factor = result.factor();
        double yield = result.value().orElseThrow() * result.rule().yieldU().orElse(0);
        Combination combined =
                Combination.of(factor, total, factor, free, source -> true).and(yield);
        return new DifferenceBudget(result, combined.standardUncertainty(), combined.degreesOfFreedom());
    }

    /** The coverage factor for 95 %. */
    public double coverageFactor() {
        return StudentT.twoSided(ResultBudget.COVERAGE, degreesOfFreedom);
    }

    /** The expanded uncertainty. */
    public double expandedUncertainty() {
        return coverageFactor() * standardUncertainty;
    }
}
