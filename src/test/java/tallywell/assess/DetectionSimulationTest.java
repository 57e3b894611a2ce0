package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.budget.NoisyPlate;
import tallywell.notice.InputException;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.Result;

/** Five of a hundred samples that hold nothing are called detected, whatever their blanks. */
class DetectionSimulationTest {
    private static final int PLATES = 1500;

    /** Seeds in a row give the generator of the plates draws that are alike. */
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            plain blanks                       | o o o o o o | o o 1 1 2 2 | 3 3 . . . .
            2 sample blanks, 1 without trigger | o o o o o o | o o 1 1 x x | 2 2 y y n .
            1 sample blank, 2 without trigger  | o o o o . . | 1 1 x 2 2 y | n n . . . .
            """)
    void falseDetectionsAreFivePerCent(String name, String rowA, String rowB, String rowC) throws InputException {
        String wells = rowA + rowB + rowC;
        String layout = """
                tallywell: layout/1
                name: nothing in it
                plate: 24
                wells:
                  A: %s
                  B: %s
                  C: %s
                  D: . . . . . .
                legend:
                  o: {role: blank}
                """.formatted(rowA, rowB, rowC)
                + (wells.contains("n") ? "  n: {role: blank, trigger: none}\n" : "")
                + (wells.contains("x") ? "  x: {role: sample-blank, of: 1}\n  y: {role: sample-blank, of: 2}\n" : "");
        NoisyPlate first =
                NoisyPlate.of(NoisyPlate.method("{by: absorptivity}"), layout, List.of(), level -> 0, 0.002, 0);
        int detected = 0;
        int below = 0;
        int all = 0;
        for (int i = 0; i < PLATES; i++) {
            Analysis analysis = first.redrawn(level -> 0, 0.002, 0, i * SPREAD).analyse();
            for (Result result : analysis.results()) {
                Optional<Flag> flag = Detection.of(analysis.steps().get(0), Optional.empty(), result)
                        .orElseThrow()
                        .flag(result.netDeltaA().orElseThrow());
                below += flag.equals(Optional.of(Flag.BELOW_ZERO)) ? 1 : 0;
                detected += flag.isEmpty() || flag.get() == Flag.BELOW_QUANTIFICATION ? 1 : 0;
                all++;
            }
        }
        // The samples of a plate share blanks, so that the standard error is up to 0.6 %.
        assertThat(100.0 * detected / all)
                .as("%s: false detections in %%", name)
                .isBetween(3.5, 6.5);
        assertThat(100.0 * below / all).as("%s: called below zero in %%", name).isBetween(0.5, 1.7);
    }
}
