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
 * @param total how sure what counts of the total is
 * @param free how sure what counts of the free half is
 * @param standardUncertainty in the unit of the value
 * @param degreesOfFreedom effective ones over the scatter that is left
 * @param basis what it rests on
 */
public record DifferenceBudget(
        DifferenceResult result,
        ResultBudget total,
        ResultBudget free,
        double standardUncertainty,
        double degreesOfFreedom,
        Basis basis) {
    private static final double ONE_SIDED = 0.95;
    private static final double QUANTIFICATION = 10;

    /** The budget of a difference; the result must have a value. */
    public static DifferenceBudget of(DifferenceResult result, ResultBudget total, ResultBudget free) {
        double factor = result.factor();
        double yield = result.value().orElseThrow() * result.rule().yieldU().orElse(0);
        Combination combined =
                Combination.of(factor, total, factor, free, source -> true).and(yield);
        return new DifferenceBudget(
                result, total, free, combined.standardUncertainty(), combined.degreesOfFreedom(), combined.basis());
    }

    /** The coverage factor for 95 %. */
    public double coverageFactor() {
        return StudentT.twoSided(ResultBudget.COVERAGE, degreesOfFreedom);
    }

    /** The expanded uncertainty. */
    public double expandedUncertainty() {
        return coverageFactor() * standardUncertainty;
    }

    /**
     * Value up to which the difference is not to be told from none: t · u, one-sided at 95 %.
     *
     * <p>Source: Currie (1995), IUPAC recommendations, Pure Appl. Chem. 67, 1699 (from memory), with the u of the difference.
     */
    public double decision() {
        return StudentT.quantile(ONE_SIDED, degreesOfFreedom) * standardUncertainty;
    }

    /** Value from which on the difference says how much: 10 u. */
    public double quantification() {
        return QUANTIFICATION * standardUncertainty;
    }

    /** The most that there can be, with 95 %: the value, at least 0, and t · u, one-sided. */
    public double atMost() {
        return Math.max(0, result.value().orElseThrow()) + decision();
    }
}
