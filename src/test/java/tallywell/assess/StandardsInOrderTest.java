package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;
import tallywell.workup.Assay;
import tallywell.workup.DrawnPlate;
import tallywell.workup.Workup;

/** Two standards that change places bend every value, whatever the curve: the batch cannot pass. */
class StandardsInOrderTest {
    private static final double[] CHANGES = {0.004, 0.1, 0.25, 0.5, 0.75, 0.15, 0.2, 0.3, 0.4, 0.6, 0.65, 0.7};

    @ParameterizedTest(name = "pairs {0} and {1} swapped: {2}")
    @CsvSource({"3, 4, FAILED, 0.5 above 0.75 g/L", "1, 2, FAILED, 0.1 above 0.25 g/L", "1, 1, PASSED, none"})
    void swappedStandardsFailTheBatch(int one, int other, Check.State state, String found) throws InputException {
        double[] changes = CHANGES.clone();
        changes[one] = CHANGES[other];
        changes[other] = CHANGES[one];
        Assay assay = DrawnPlate.of(
                        DrawnPlate.STANDARDS,
                        "{by: standards, model: line, weights: none}",
                        "creep: {correct: extrapolate}")
                .drawn((pair, well) -> t -> changes[pair] * -Math.expm1(-0.03 * t), 100, new Random(5));
        Assessment assessment = new Assessor().assess(new Workup().analyse(assay));
        Check check = assessment.checks().stream()
                .filter(each -> each.name().equals("standards in the order of their levels"))
                .findFirst()
                .orElseThrow();
        assertThat(check.state()).isEqualTo(state);
        assertThat(check.found()).isEqualTo(found);
        assertThat(assessment.judgements())
                .filteredOn(each -> each.verdict() == Verdict.REPORT)
                .hasSize(state == Check.State.FAILED ? 0 : 7);
    }
}
