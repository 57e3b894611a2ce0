package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tallywell.notice.InputException;
import tallywell.workup.Plates;

/** Two blanks and two samples in duplicate, read for 20 min after the trigger; creep in mA/min given well by well. */
class CreepObservationsTest {
    private static final String METHOD = """
            tallywell: method/1
            id: kinetic
            signal: {absorptivity: 6300 L/mol/cm}
            steps:
              - analyte: {name: acid, molar-mass: 63 g/mol}
                volumes: {sample: 10 µL, before-trigger: 90 µL, after-trigger: 100 µL}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            creep: {correct: extrapolate}
            report: {unit: g/L}
            """;

    private static Check check(String name, double... milliPerMin) throws InputException {
        Random random = new Random(5);
        double[] t = new double[90];
        double[][] wells = new double[6][t.length];
        for (int i = 0; i < t.length; i++) {
            t[i] = 15.0 * i;
        }
        for (int w = 0; w < wells.length; w++) {
            double change = w % 3 == 0 ? 0.003 : 0.2 * (w % 3);
            for (int i = 0; i < t.length; i++) {
                double after = Math.max(0, t[i] - 150);
                wells[w][i] = 0.1
                        + change * -Math.expm1(-0.03 * after)
                        + 0.001 * milliPerMin[w] * after / 60
                        + 0.0004 * random.nextGaussian();
            }
        }
        Assessment assessment = new Assessor()
                .assess(Plates.small()
                        .method(METHOD)
                        .layout("o 1 2", "o 1 2", "o: {role: blank}")
                        .series(false, List.of(150.0), t, wells)
                        .analyse());
        return Stream.of(assessment.observations())
                .flatMap(List::stream)
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void wellThatCreepsOtherwiseThanItsReplicateIsNamed() throws InputException {
        Check check = check("replicates creep alike", 0.3, 1, 1, 0.3, 1, 3);

        // Of two, nothing says which one is right.
        assertThat(check.state()).isEqualTo(Check.State.FAILED);
        assertThat(check.found()).isEqualTo("2 wells: A3, B3");
    }

    @Test
    void replicatesThatCreepAlikePass() throws InputException {
        assertThat(check("replicates creep alike", 0.3, 1, 2, 0.3, 1, 2).state())
                .isEqualTo(Check.State.PASSED);
    }

    @Test
    void creepIsShownBesideThatOfTheBlanks() throws InputException {
        Check check = check("creep beside the blanks", 0, 0, 2, 0, 0, 2);

        assertThat(check.state()).isEqualTo(Check.State.NOT_ASSESSED);
        assertThat(check.found()).contains("2 of 4 creep otherwise than the blanks; 2 of 6 wells creep at all");
    }
}
