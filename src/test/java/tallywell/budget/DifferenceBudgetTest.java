package tallywell.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tallywell.method.Analyte;
import tallywell.method.Chemistry;
import tallywell.method.Difference;
import tallywell.method.UncertaintyRule.Stated;
import tallywell.quantity.Dilution;
import tallywell.quantity.Unit;
import tallywell.workup.DifferenceResult;
import tallywell.workup.Half;
import tallywell.workup.Result;

class DifferenceBudgetTest {
    private static final Source SHARED = new Source("calibration", "line", Estimate.CALIBRATION_RESIDUALS);

    private static Result result(double value) {
        return new Result(
                "sample",
                "1",
                OptionalInt.of(1),
                "Nectar",
                "D-glucose",
                1,
                List.of(),
                OptionalDouble.of(value),
                Unit.GRAM_PER_LITRE,
                2,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Dilution.NONE,
                OptionalDouble.of(value),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Set.of());
    }

    private static ResultBudget budget(double value, double shared, String own, double ownU, double freedom) {
        return new ResultBudget(
                result(value),
                List.of(
                        new Contribution(SHARED, shared, 1),
                        new Contribution(new Source("repeatability", own, Estimate.POOLED_REPEATABILITY), 1, ownU)),
                freedom,
                OptionalDouble.empty(),
                Stated.BUDGET,
                Set.of());
    }

    /**
     * JCGM 100:2008, 5.2.2, by hand: total 20 with 0.5 shared and 0.3 own, free 5 with 0.125 shared and 0.1 own, factor
     * 1.9, yield 95 % known to 1 %: u² = 1.9² ((0.5 - 0.125)² + 0.3² + 0.1²) + (28.5 · 0.01)² = 0.949881, of which
     * 0.868656 is scatter: ν = 9 · (0.949881 / 0.868656)².
     */
    @Test
    void whatBothShareIsTakenOut() {
        Difference rule = new Difference(
                new Analyte("sucrose", Optional.empty(), OptionalDouble.of(342.3), 1),
                "D-glucose",
                1,
                0.95,
                OptionalDouble.of(0.01),
                Chemistry.NONE,
                Optional.empty());
        DifferenceBudget budget = DifferenceBudget.of(
                new DifferenceResult(rule, Half.of(result(20)), Half.of(result(5)), 1.9, "Nectar"),
                budget(20, 0.5, "total", 0.3, 12),
                budget(5, 0.125, "free", 0.1, 9));
        assertThat(budget.standardUncertainty()).isCloseTo(Math.sqrt(0.94988125), within(1e-9));
        assertThat(budget.degreesOfFreedom()).isCloseTo(9 * Math.pow(0.94988125 / 0.86865625, 2), within(1e-9));
    }

    /**
     * A stated source of 3 in both makes each well known, with 9 · (9.09 / 0.09)² effective degrees of freedom; it cancels,
     * and what is left is known with 9.
     */
    @Test
    void statedSourceThatCancelsLendsNoDegreesOfFreedom() {
        Source stated = new Source("plate", "", Estimate.STATED);
        double freedom = 9 * Math.pow(9.09 / 0.09, 2);
        Combination left = Combination.of(
                1, budget(20, stated, "total", freedom), 1, budget(19, stated, "free", freedom), source -> true);
        assertThat(left.standardUncertainty()).isCloseTo(Math.sqrt(0.18), within(1e-12));
        assertThat(left.degreesOfFreedom()).isCloseTo(9, within(1e-9));
    }

    private static ResultBudget budget(double value, Source shared, String own, double freedom) {
        return new ResultBudget(
                result(value),
                List.of(
                        new Contribution(shared, 3, 1),
                        new Contribution(new Source("repeatability", own, Estimate.POOLED_REPEATABILITY), 1, 0.3)),
                freedom,
                OptionalDouble.empty(),
                Stated.BUDGET,
                Set.of());
    }
}
