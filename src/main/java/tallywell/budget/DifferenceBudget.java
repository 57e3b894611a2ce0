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
 * @param degreesOfFreedom those of the less well known of the two, which is on the safe side
 */
public record DifferenceBudget(DifferenceResult result, double standardUncertainty, double degreesOfFreedom) {
    /** The budget of a difference; the result must have a value. */
    public static DifferenceBudget of(DifferenceResult result, ResultBudget total, ResultBudget free) {
        double all = total.byBudget();
        double some = free.byBudget();
        double apart = Math.max(0, all * all + some * some - 2 * total.covariance(free));
        double yield = result.value().orElseThrow() * result.rule().yieldU().orElse(0);
        return new DifferenceBudget(
                result,
                Math.hypot(result.factor() * Math.sqrt(apart), yield),
                Math.min(total.degreesOfFreedom(), free.degreesOfFreedom()));
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
