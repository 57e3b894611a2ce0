package tallywell.across;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.Published;
import tallywell.assess.Verdict;
import tallywell.method.RepeatRule;
import tallywell.numeric.StudentT;
import tallywell.quantity.Unit;

/** One result of several, by each rule. */
class CombiningTest {
    private static CombinedResult combine(RepeatRule rule, Found... found) {
        return new Combining(rule, false).combine(new Linking.Link(List.of(found)));
    }

    private static Found[] found(double own, double... values) {
        Found[] found = new Found[values.length];
        for (int i = 0; i < values.length; i++) {
            found[i] = Made.found("run " + i, values[i], Made.parts(own, Map.of()));
        }
        return found;
    }

    /** JCGM 100:2008, 5.2.2: what is own shrinks with 1/n, what is in common does not. */
    @Test
    void commonErrorsDoNotShrinkInTheMean() {
        CombinedResult mean = combine(
                RepeatRule.MEAN,
                Made.found("a", 1.0, Made.parts(0.06, Map.of("standard", 0.04))),
                Made.found("b", 1.2, Made.parts(0.06, Map.of("standard", 0.04))),
                Made.found("c", 1.1, Made.parts(0.06, Map.of("standard", 0.04))),
                Made.found("d", 1.1, Made.parts(0.06, Map.of("standard", 0.04))));
        assertThat(mean.value().getAsDouble()).isCloseTo(1.1, within(1e-14));
        assertThat(mean.u().getAsDouble()).isCloseTo(0.05, within(1e-14));
        assertThat(mean.sd().getAsDouble()).isCloseTo(Math.sqrt(0.02 / 3), within(1e-14));
    }

    /** Weighted mean of independent results: weights 1/u², u = (sum of 1/u²)^(-1/2) (any textbook of statistics). */
    @Test
    void weightedMeanOfIndependentResults() {
        CombinedResult mean = combine(
                RepeatRule.WEIGHTED,
                Made.found("a", 10, Made.parts(1, Map.of())),
                Made.found("b", 13, Made.parts(2, Map.of())));
        assertThat(mean.value().getAsDouble()).isCloseTo((10 + 13 / 4.0) / 1.25, within(1e-13));
        assertThat(mean.u().getAsDouble()).isCloseTo(1 / Math.sqrt(1.25), within(1e-14));
        assertThat(mean.parts().get(0).weight().getAsDouble()).isCloseTo(0.8, within(1e-14));
    }

    /**
     * Peelle's puzzle (1987, from memory): 1.5 and 1.0, each with 10 % of its own and 20 % in common. Least squares with
     * the covariance as it stands answers 0.88 ± 0.22, below both. Ours lies between, and is no surer than what is common.
     */
    @Test
    void commonErrorsDoNotPullTheWeightedMeanOutsideTheResults() {
        UncertaintyParts one = Made.parts(0.15, Map.of("standard", 0.30));
        UncertaintyParts other = Made.parts(0.10, Map.of("standard", 0.20));
        CombinedResult mean = combine(RepeatRule.WEIGHTED, Made.found("a", 1.5, one), Made.found("b", 1.0, other));
        double weight = (1 / 0.0225) / (1 / 0.0225 + 1 / 0.01);
        assertThat(mean.value().getAsDouble()).isCloseTo(1.0 + 0.5 * weight, within(1e-14));
        assertThat(mean.u().getAsDouble()).isGreaterThan(0.2);
        // The puzzle's own answer, to show that it is the puzzle.
        double a = 0.15 * 0.15 + 0.3 * 0.3;
        double b = 0.1 * 0.1 + 0.2 * 0.2;
        double c = 0.3 * 0.2;
        assertThat((1.5 * (b - c) + 1.0 * (a - c)) / (a + b - 2 * c)).isCloseTo(0.88, within(0.005));
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 5, 6, 7, 8, 9, 10})
    void medianAndCriticalRangeFollowTheDistribution(int n) {
        Published byR = Published.read("across_by_r").where("n", Integer.toString(n));
        byR.check("ratio of variances for " + n, Median.varianceRatio(n), byR.number(0, "median_ratio"), 9);
        // ISO 5725-6 prints two digits.
        assertThat(CriticalRange.factor(n)).isCloseTo(byR.number(0, "range_95"), within(0.0501));
        double[] values = new double[n];
        java.util.Arrays.setAll(values, i -> i % 2 == 0 ? 1 : 1.001);
        CombinedResult median = combine(RepeatRule.MEDIAN, found(0.1, values));
        assertThat(median.u().getAsDouble())
                .isCloseTo(0.1 * Math.sqrt(byR.number(0, "median_ratio") / n), within(1e-10));
    }

    /**
     * The ways through ISO 5725-6:1994, 5.2.2 (from memory), with σ = 0.1: critical ranges 0.28, 0.33 and 0.36 for 2, 3 and
     * 4 results. Within: the mean. Two beyond: more results. Three or four beyond: the median.
     */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "1.00 1.27, 1.135, mean",
                "1.00 1.29, -, measure twice more",
                "1.00 1.29 1.32, 1.2033333333333334, mean",
                "1.00 1.29 1.34, 1.29, median",
                "1.00 1.29 1.30 1.35, 1.235, mean",
                "1.00 1.29 1.30 1.37, 1.295, median"
            })
    void criticalRangeDecidesBetweenMeanMoreAndMedian(String typed, String value, String remark) {
        double[] values = java.util.Arrays.stream(typed.split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        CombinedResult result = combine(RepeatRule.CRITICAL_RANGE, found(0.1, values));
        assertThat(result.remark()).endsWith(": " + remark);
        if (value == null) {
            assertThat(result.value()).isEmpty();
        } else {
            assertThat(result.value().getAsDouble()).isCloseTo(Double.parseDouble(value), within(1e-14));
        }
    }

    @Test
    void consistencyOfTwoIsTheComparisonOfTheirDifference() {
        Found first = Made.found("a", 2.0, Made.parts(0.03, 7, Map.of("standard", 0.2)));
        Found second = Made.found("b", 2.2, Made.parts(0.04, 11, Map.of("standard", 0.22)));
        ComparedResult compared = ComparedResult.of(first, second, "");
        Consistency consistency = Consistency.of(
                new double[] {2.0, 2.2},
                List.of(first.parts().get(), second.parts().get()));
        assertThat(consistency.birge()).isCloseTo(compared.zeta().getAsDouble(), within(1e-9));
        assertThat(consistency.limit()).isCloseTo(compared.doubt().orElseThrow().k(), within(1e-6));
    }

    /** Independent results: Q is the weighted sum of squares about the weighted mean (Birge 1932, from memory). */
    @Test
    void birgeRatioOfIndependentResultsIsTheTextbookOne() {
        double[] values = {10.1, 9.8, 10.6, 10.0};
        double[] u = {0.2, 0.1, 0.3, 0.15};
        double weights = 0;
        double sum = 0;
        List<UncertaintyParts> parts = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            weights += 1 / (u[i] * u[i]);
            sum += values[i] / (u[i] * u[i]);
            parts.add(Made.parts(u[i], Map.of()));
        }
        double q = 0;
        for (int i = 0; i < 4; i++) {
            q += Math.pow((values[i] - sum / weights) / u[i], 2);
        }
        Consistency consistency = Consistency.of(values, parts);
        assertThat(consistency.birge()).isCloseTo(Math.sqrt(q / 3), within(1e-9));
        // 95 % point of chi-squared with 3 degrees of freedom, 7.8147 (any table).
        assertThat(consistency.limit()).isCloseTo(Math.sqrt(7.8147 / 3), within(1e-4));
    }

    @Test
    void commonErrorsDoNotHideThatResultsDiffer() {
        CombinedResult result = combine(
                RepeatRule.MEAN,
                Made.found("a", 1.0, Made.parts(0.01, Map.of("standard", 0.5))),
                Made.found("b", 1.1, Made.parts(0.01, Map.of("standard", 0.5))));
        assertThat(result.isInconsistent()).isTrue();
        assertThat(result.remark()).contains("differ by more than their uncertainties explain (Birge ratio 7.07");
    }

    @Test
    void resultsThatMayNotStandAreListedWithTheirReason() {
        UncertaintyParts sure = Made.parts(0.1, Map.of());
        Found check = Made.found("b", 2, "Vat 1", "", "malic acid", Unit.GRAM_PER_LITRE, 3, Verdict.CHECK, sure);
        Found repeat = Made.found("c", 3, "Vat 1", "", "malic acid", Unit.GRAM_PER_LITRE, 9, Verdict.REPEAT, sure);
        Linking.Link link = new Linking.Link(List.of(Made.found("a", 2, sure), check, repeat));
        CombinedResult strict = new Combining(RepeatRule.MEAN, false).combine(link);
        assertThat(strict.value()).hasValue(2);
        assertThat(strict.parts().stream().map(CombinedResult.Part::leftOut))
                .containsExactly("", "verdict check: a person must look first", "verdict repeat");
        assertThat(strict.remark()).isEqualTo("1 of 3 results count; one result only");
        CombinedResult looked = new Combining(RepeatRule.MEAN, true).combine(link);
        assertThat(looked.value()).hasValue(2.5);
        assertThat(looked.n()).isEqualTo(2);
    }

    @Test
    void singleResultStaysAsItsRunReportsIt() {
        CombinedResult result = combine(RepeatRule.CRITICAL_RANGE, Made.found("a", 2, Made.parts(0.1, Map.of())));
        assertThat(result.value()).hasValue(2);
        assertThat(result.expanded().getAsDouble()).isCloseTo(0.2, within(1e-15));
    }

    @ParameterizedTest
    @EnumSource(RepeatRule.class)
    void orderOfTheRunsDoesNotMatter(RepeatRule rule) {
        Random random = new Random(20260309);
        for (int trial = 0; trial < 50; trial++) {
            List<Found> found = new ArrayList<>();
            for (int i = 0; i < 2 + trial % 5; i++) {
                double value = 1 + 0.1 * random.nextGaussian();
                found.add(Made.found(
                        "run " + i,
                        value,
                        Made.parts(0.05 + 0.05 * random.nextDouble(), 4 + i, Map.of("standard", 0.02 * value))));
            }
            CombinedResult one = combine(rule, found.toArray(Found[]::new));
            Collections.shuffle(found, random);
            CombinedResult other = combine(rule, found.toArray(Found[]::new));
            assertThat(other.value().isPresent()).isEqualTo(one.value().isPresent());
            assertThat(other.value().orElse(0)).isCloseTo(one.value().orElse(0), within(1e-12));
            assertThat(other.u().orElse(0)).isCloseTo(one.u().orElse(0), within(1e-12));
            assertThat(other.consistency().orElseThrow().birge())
                    .isCloseTo(one.consistency().orElseThrow().birge(), within(1e-8));
        }
    }

    @Test
    void coverageFactorFollowsTheDegreesOfFreedom() {
        CombinedResult mean = combine(
                RepeatRule.MEAN,
                Made.found("a", 1, Made.parts(0.1, 5, Map.of())),
                Made.found("b", 1, Made.parts(0.1, 5, Map.of())));
        // Two equal parts of 5 degrees of freedom each are known like one of 10.
        assertThat(mean.degreesOfFreedom()).isCloseTo(10, within(1e-10));
        assertThat(mean.k()).isCloseTo(StudentT.twoSided(0.95, 10), within(1e-12));
    }
}
