package tallywell.across;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import tallywell.assess.Assessment;
import tallywell.assess.Assessor;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.budget.NoisyPlate;
import tallywell.method.Sample;
import tallywell.method.Treatment;
import tallywell.notice.InputException;

/** Budgets taken apart must come to the same when put together again. */
class UncertaintyPartsTest {
    private static final DoubleUnaryOperator RESPONSE = level -> 2.8 * level;

    private static Assessment assessed(long seed, List<Sample> samples, String... further) throws InputException {
        NoisyPlate plate = NoisyPlate.of(
                NoisyPlate.method("{by: standards, model: line, weights: none}", further),
                NoisyPlate.LAYOUT,
                samples,
                RESPONSE,
                0.002,
                0);
        return new Assessor().assess(plate.redrawn(RESPONSE, 0.002, 0, seed).analyse());
    }

    private static List<Sample> nectar() {
        List<Sample> samples = new ArrayList<>();
        for (int slot = 1; slot <= 4; slot++) {
            Sample plain = Sample.plain(slot);
            samples.add(new Sample(
                    slot,
                    slot <= 2 ? "Nectar" : "Must",
                    plain.dilution(),
                    plain.volumeUl(),
                    plain.solid(),
                    plain.densityGPerMl(),
                    "",
                    slot <= 2 ? "N1" : "",
                    "",
                    slot % 2 == 1 ? Treatment.FREE : Treatment.TOTAL));
        }
        return samples;
    }

    private static final String[] DIFFERENCE = {
        "uncertainty:",
        "  standard: {standard: 2 %}",
        "  plate: {standard: 1 %}",
        "difference:",
        "  - analyte: {name: bound acid, molar-mass: 150 g/mol}",
        "    of: malic acid",
        "    yield: 95 %",
        "    yield-uncertainty: 1 %"
    };

    @Test
    void partsOfEveryResultComeToItsUncertainty() throws Exception {
        Assessment assessment = assessed(1, nectar(), DIFFERENCE);
        List<Found> found = RunResults.of("a", assessment, SharedSources.USUAL).found();
        int at = 0;
        for (Judgement each : assessment.judgements()) {
            same(
                    found.get(at++),
                    each.budget().orElseThrow().standardUncertainty(),
                    each.budget().get().degreesOfFreedom());
        }
        assertThat(assessment.differences()).hasSize(2);
        for (JudgedDifference each : assessment.differences()) {
            same(
                    found.get(at++),
                    each.budget().orElseThrow().standardUncertainty(),
                    each.budget().get().degreesOfFreedom());
        }
        assertThat(found).hasSize(at);
    }

    /** Welch and Satterthwaite over the scatter alone lead back to the degrees of freedom of the budget. */
    private static void same(Found found, double u, double freedom) {
        UncertaintyParts parts = found.parts().orElseThrow();
        assertThat(parts.total()).isCloseTo(u, within(1e-12 * u));
        WeightedSum alone = WeightedSum.of(new double[] {1}, List.of(parts));
        assertThat(alone.degreesOfFreedom()).isCloseTo(freedom, within(1e-9 * freedom));
    }

    @Test
    void differencesOfTwoPlatesShareStandardAndYield() throws Exception {
        Comparison comparison = Comparison.of(
                RunResults.of("a", assessed(1, nectar(), DIFFERENCE), SharedSources.USUAL),
                RunResults.of("b", assessed(2, nectar(), DIFFERENCE), SharedSources.USUAL));
        assertThat(comparison.rows())
                .filteredOn(row -> row.first().result().role().equals("difference"))
                .hasSize(2)
                .allMatch(row -> row.shared()
                        .equals(List.of(
                                "assigned value of the standard (malic acid)", "yield of the treatment (bound acid)")));
    }

    /** By validation: u² = precision² (x² + y²) + bias² (y - x)², since the bias of a method is in both. */
    @Test
    void validationGivesPrecisionToEachAndBiasToBoth() throws Exception {
        String[] validated = {"uncertainty:", "  by: validation", "  validation: {precision: 2.5 %, bias: 4 %}"};
        Comparison comparison = Comparison.of(
                RunResults.of("a", assessed(1, List.of(), validated), SharedSources.USUAL),
                RunResults.of("b", assessed(2, List.of(), validated), SharedSources.USUAL));
        for (ComparedResult row : comparison.rows()) {
            double x = row.first().value().orElseThrow();
            double y = row.second().value().orElseThrow();
            double u = Math.hypot(0.025 * Math.hypot(x, y), 0.04 * (y - x));
            assertThat(row.doubt().orElseThrow().u()).isCloseTo(u, within(1e-12));
            assertThat(row.shared()).containsExactly("bias of the method (made-up)");
        }
    }
}
