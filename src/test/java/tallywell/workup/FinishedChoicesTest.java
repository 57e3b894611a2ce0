package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.Well;

/** Six wells read every 30 s from 0 to 1200 s, the trigger at 210 s: the last readings are 960 and 990 s after it. */
class FinishedChoicesTest {
    private static final String METHOD = """
            tallywell: method/1
            id: one
            title: "One step, for a test"
            source: "made for a test"
            signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm, direction: rises}
            steps:
              - analyte: {name: acid, molar-mass: 63 g/mol}
                volumes: {sample: 10 µL, before-trigger: 90 µL, after-trigger: 100 µL}
            light-path: {beam: fixed, length: 1 cm}
            creep: {correct: %s}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            """;

    private static Plates plate(String rule) {
        double[] times = new double[41];
        double[][] traces = new double[6][times.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = 30.0 * i;
            double since = times[i] - 210;
            for (double[] trace : traces) {
                trace[i] = 0.1 + (since < 0 ? 0 : 0.3 * -Math.expm1(-0.02 * since) + 0.002 * since / 60);
            }
        }
        return Plates.small()
                .method(METHOD.formatted(rule))
                .layout("o 1 2", "3 4 .", "o: {role: blank}")
                .series(false, List.of(210.0), times, traces);
    }

    @Test
    void twoReadingsAreEnough() throws InputException {
        for (String rule : List.of("extrapolate", "progress-curve")) {
            Analysis analysis = plate(rule).finishedFrom("A2", 960).analyse();
            WellResult well = analysis.steps().get(0).wells().get(1);
            assertThat(well.flags()).contains(Flag.FINISHED_BY_HAND, Flag.CREEP_NOT_TESTED);
            assertThat(FinishedChoices.latestS(analysis, List.of(new Well(0, 1))))
                    .hasValue(960);
        }
    }

    @Test
    void timeThatLeavesFewerIsRefusedWithTheLatestThatDoes() {
        for (double time : new double[] {961, 990, 5000}) {
            assertThatThrownBy(
                            () -> plate("extrapolate").finishedFrom("A2", time).analyse())
                    .isInstanceOf(InputException.class)
                    .hasMessageContaining("run.yaml, line 7")
                    .hasMessageContaining(
                            "found 'finished-from' with a time of " + (int) time
                                    + " s for A2, which leaves fewer than two of its readings; expected at most 960 s from its trigger");
        }
    }

    @Test
    void whatCorrectsNoCreepHasNoFinishedPart() throws InputException {
        assertThat(plate("none").finishedFrom("A2", 5000).analyse().notices()).isEmpty();
    }

    @Test
    void wellsThatAreNotUsedAreNamed() throws InputException {
        Analysis analysis =
                plate("extrapolate").finishedFrom("B3", 600).exclude("B3").analyse();
        assertThat(analysis.notices())
                .extracting(Notice::text)
                .containsExactly(
                        "found B3 under 'exclude', not used on this plate, so that nothing changes; expected wells in use",
                        "found B3 under 'finished-from', not used on this plate, so that nothing changes; expected wells in use");
    }
}
