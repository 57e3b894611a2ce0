package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tallywell.budget.NoisyPlate;
import tallywell.notice.InputException;
import tallywell.workup.Analysis;

/** Fieller's interval is shown where value ± U does not stand for it. */
class IntervalObservationTest {
    private static Check check(double scatter) throws InputException {
        NoisyPlate plate = NoisyPlate.of(
                NoisyPlate.method("{by: standards, model: line}"),
                NoisyPlate.LAYOUT,
                List.of(),
                level -> 2.83 * level,
                scatter,
                0);
        Analysis analysis = plate.analyse();
        return IntervalObservation.of(analysis, analysis.steps().get(0), "").orElseThrow();
    }

    @Test
    void goodLinesHaveSymmetricIntervals() throws InputException {
        Check good = check(0.004);
        assertThat(good.state()).isEqualTo(Check.State.PASSED);
        assertThat(good.found()).endsWith("% of U").doesNotContain("monte-carlo");
    }

    @Test
    void poorLinesAreShownWithTheirInterval() throws InputException {
        // Slope with a relative SE of some 17 %: g = (t SE / b)² about 0.16, where Fieller's interval is plainly
        // skewed.
        Check poor = check(0.2);
        assertThat(poor.state()).isEqualTo(Check.State.FAILED);
        assertThat(poor.found()).contains(" g/L, with all sources by draws");
        assertThat(poor.limit()).isEqualTo("at most 10 % of U");
    }
}
