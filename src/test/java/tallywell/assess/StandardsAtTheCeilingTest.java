package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;
import tallywell.workup.Assay;
import tallywell.workup.DrawnPlate;
import tallywell.workup.Workup;

/** A reader that stops below the highest standards bends the calibration of every sample: the batch cannot pass. */
class StandardsAtTheCeilingTest {
    private static final double[] CHANGES = {0.004, 0.4, 1.0, 2.0, 3.0, 0.5, 0.6, 0.7, 0.8, 0.9, 1.1, 1.2};

    @ParameterizedTest(name = "the reader stops at {0}: {1}")
    @CsvSource({"1.8, FAILED", "100, PASSED"})
    void standardsAtTheCeilingFailTheBatch(double ceiling, Check.State state) throws InputException {
        Assay assay = DrawnPlate.of(
                        DrawnPlate.STANDARDS,
                        "{by: standards, model: line, weights: none}",
                        "creep: {correct: extrapolate}")
                .drawn((pair, well) -> t -> CHANGES[pair] * -Math.expm1(-0.03 * t), ceiling, new Random(4));
        Assessment assessment = new Assessor().assess(new Workup().analyse(assay));
        assertThat(assessment.checks())
                .filteredOn(check -> check.name().equals("standards within the range of the reader"))
                .hasSize(1)
                .allMatch(check -> check.state() == state);
        assertThat(assessment.judgements())
                .filteredOn(each -> each.verdict() == Verdict.REPORT)
                .hasSize(state == Check.State.FAILED ? 0 : 7);
    }
}
