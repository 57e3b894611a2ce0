package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tallywell.budget.NoisyPlate;
import tallywell.notice.InputException;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;

/** "Below the lowest standard" is a statement about a content, and as true as the curve is at its low end. */
class LowestStandardTest {
    private static final int PLATES = 200;

    /** Seeds in a row give the generator of the plates draws that are alike. */
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    /** Slot 1 holds 0.07 g/L; standards are 0.1 to 0.5 g/L, or from 0.06 g/L. */
    private static String layout(double lowest) {
        return NoisyPlate.LAYOUT.replace("level: 0.05 g/L", "level: " + lowest + " g/L");
    }

    private static final String METHOD = NoisyPlate.method("{by: standards, model: line, weights: none}");

    private static double line(double level) {
        return 2.83 * level;
    }

    /** Two bottles of standards changed places: 0.3 and 0.4 g/L. */
    private static double swapped(double level) {
        return line(level == 0.3 ? 0.4 : level == 0.4 ? 0.3 : level);
    }

    @Test
    void aSpoiledCurveDoesNotShowThatASampleLiesBelowIt() throws InputException {
        // 0.07 g/L stands over the lowest standard; the line of the swapped ones says that it stands below.
        NoisyPlate plate = NoisyPlate.of(METHOD, layout(0.06), List.of(), LowestStandardTest::swapped, 0.001, 0.004);
        Judgement judged = first(plate.analyse());
        assertThat(judged.result().flags()).contains(Flag.BELOW_STANDARDS, Flag.BOUND_NOT_SHOWN);
        assertThat(judged.verdict()).isEqualTo(Verdict.CHECK);
    }

    @Test
    void whatClearlyLiesBelowIsReported() throws InputException {
        NoisyPlate plate = NoisyPlate.of(METHOD, layout(0.09), List.of(), LowestStandardTest::line, 0.001, 0.004);
        Judgement judged = first(plate.analyse());
        assertThat(judged.result().flags()).contains(Flag.BELOW_STANDARDS).doesNotContain(Flag.BOUND_NOT_SHOWN);
        assertThat(judged.verdict()).isEqualTo(Verdict.REPORT);
    }

    @Test
    void aSampleAtTheLowestStandardIsSeldomReportedBelowIt() throws InputException {
        NoisyPlate plate = NoisyPlate.of(METHOD, layout(0.07), List.of(), LowestStandardTest::line, 0.002, 0.01);
        int reported = 0;
        for (int i = 0; i < PLATES; i++) {
            Judgement judged = first(plate.redrawn(LowestStandardTest::line, 0.002, 0.01, i * SPREAD)
                    .analyse());
            boolean below = judged.result().flags().contains(Flag.BELOW_STANDARDS);
            reported += below && !judged.result().flags().contains(Flag.BOUND_NOT_SHOWN) ? 1 : 0;
        }
        // One-sided at 5 %; 200 plates have a standard error of 1.5 %.
        assertThat(100.0 * reported / PLATES).isBetween(0.5, 9.5);
    }

    private static Judgement first(Analysis analysis) {
        return new Assessor().assess(analysis).judgements().get(0);
    }
}
