package tallywell.across;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tallywell.assess.Verdict;
import tallywell.numeric.StudentT;
import tallywell.quantity.Unit;

/** Differences of two results, by hand from the law of propagation (JCGM 100:2008, 5.2.2, equation 16). */
class ComparisonTest {
    @Test
    void whatBothShareCancelsInTheDifference() {
        // u² = 0.03² + 0.04² + (0.20 - 0.20)²
        WeightedSum sum = WeightedSum.of(
                new double[] {-1, 1},
                List.of(Made.parts(0.03, Map.of("standard", 0.2)), Made.parts(0.04, Map.of("standard", 0.2))));
        assertThat(sum.standardUncertainty()).isCloseTo(0.05, within(1e-15));
    }

    @Test
    void whatOnlyOneHasStays() {
        // u² = 0.03² + 0.04² + 0.12² = 0.13²
        WeightedSum sum = WeightedSum.of(
                new double[] {-1, 1}, List.of(Made.parts(0.03, Map.of("reader", 0.12)), Made.parts(0.04, Map.of())));
        assertThat(sum.standardUncertainty()).isCloseTo(0.13, within(1e-15));
    }

    @Test
    void unequalEffectsCancelAsFarAsTheyAreEqual() {
        // Values 10 and 13 with a relative error of 1 % in common: (0.13 - 0.10)² is left beside 0.04².
        WeightedSum sum = WeightedSum.of(
                new double[] {-1, 1},
                List.of(Made.parts(0.04, Map.of("standard", 0.1)), Made.parts(0, Map.of("standard", 0.13))));
        assertThat(sum.standardUncertainty()).isCloseTo(0.05, within(1e-15));
    }

    /** JCGM 100:2008, G.4.1: u⁴ over the sum of u(i)⁴/ν(i); here 0.05⁴ / (0.03⁴/9 + 0.04⁴/16) = 25. */
    @Test
    void degreesOfFreedomAreThoseOfWelchAndSatterthwaite() {
        WeightedSum sum = WeightedSum.of(
                new double[] {-1, 1}, List.of(Made.parts(0.03, 9, Map.of()), Made.parts(0.04, 16, Map.of())));
        assertThat(sum.degreesOfFreedom()).isCloseTo(6.25e-6 / (8.1e-7 / 9 + 2.56e-6 / 16), within(1e-9));
        assertThat(sum.coverageFactor()).isCloseTo(StudentT.twoSided(0.95, sum.degreesOfFreedom()), within(1e-15));
    }

    /**
     * Independent results with k = 1.96 on both sides: E is (x - X) / √(U² + U²), zeta (x - X) / √(u² + u²). ISO
     * 13528:2015, 9.6 and 9.7 (from memory).
     */
    @Test
    void scoresOfIndependentResultsAreThoseOfIso13528() {
        ComparedResult row = ComparedResult.of(
                Made.found("a", 2.00, Made.parts(0.03, Map.of())),
                Made.found("b", 2.12, Made.parts(0.04, Map.of())),
                "");
        assertThat(row.zeta().getAsDouble()).isCloseTo(0.12 / 0.05, within(1e-12));
        double expanded = Math.hypot(1.959963984540054 * 0.03, 1.959963984540054 * 0.04);
        assertThat(row.score().getAsDouble()).isCloseTo(0.12 / expanded, within(1e-12));
        assertThat(row.agreement()).isEqualTo(ComparedResult.Agreement.DIFFER);
    }

    @Test
    void differenceEqualToItsExpandedUncertaintyAgrees() {
        double limit = 1.959963984540054 * 0.05;
        for (double d : new double[] {0.999 * limit, 1.001 * limit, -0.999 * limit, -1.001 * limit}) {
            ComparedResult row = ComparedResult.of(
                    Made.found("a", 2, Made.parts(0.03, Map.of())),
                    Made.found("b", 2 + d, Made.parts(0.04, Map.of())),
                    "");
            assertThat(row.agreement() == ComparedResult.Agreement.AGREE).isEqualTo(Math.abs(d) < limit);
        }
    }

    @Test
    void unitsOfOneKindAreConvertedToThatOfTheFirst() throws Exception {
        Found other = Made.found(
                "b",
                4,
                "Vat 1",
                "",
                "malic acid",
                Unit.MILLIGRAM_PER_LITRE,
                2100,
                Verdict.REPORT,
                Made.parts(40, Map.of()));
        Comparison comparison =
                Comparison.of(Made.run("a", Made.found("a", 2, Made.parts(0.03, Map.of()))), Made.run("b", other));
        ComparedResult row = comparison.rows().get(0);
        assertThat(row.unit()).isEqualTo(Unit.GRAM_PER_LITRE);
        assertThat(row.difference().getAsDouble()).isCloseTo(0.1, within(1e-12));
        assertThat(row.doubt().orElseThrow().u()).isCloseTo(0.05, within(1e-12));
    }
}
