package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.notice.InputException;

/** Two steps in one series read every 15 s, 20 min after each trigger; noise of 0.5 mA. */
class CreepBelongsTest {
    private static final String METHOD = """
            tallywell: method/1
            id: two
            title: "Two steps, for a test"
            source: "made for a test"
            signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm, direction: rises}
            steps:
              - analyte: {name: acid, molar-mass: 63 g/mol}
                volumes: {sample: 10 µL, before-trigger: 90 µL, after-trigger: 100 µL}
              - analyte: {name: base, molar-mass: 63 g/mol}
                volumes: {sample: 10 µL, before-trigger: 100 µL, after-trigger: 100 µL}
            light-path: {beam: fixed, length: 1 cm}
            creep: {correct: %s}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            """;

    private static final int PLATES = 10;

    @ParameterizedTest
    @ValueSource(strings = {"extrapolate", "progress-curve"})
    void creepThatMovesTheChangeIsSaid(String rule) throws InputException {
        assertThat(flagged(rule, 0.003)).isEqualTo(6 * PLATES);
        assertThat(flagged(rule, 0.001)).isEqualTo(6 * PLATES);
    }

    /** Of creeps that are nothing but noise one in twenty lies beyond twice its uncertainty. */
    @ParameterizedTest
    @ValueSource(strings = {"extrapolate", "progress-curve"})
    void noiseIsNoCreep(String rule) throws InputException {
        assertThat(flagged(rule, 0)).isLessThanOrEqualTo(6);
    }

    /** How many of the wells of ten plates of six have the flag in step 1; none must in step 2. */
    private static int flagged(String rule, double creepPerMin) throws InputException {
        Random random = new Random(3);
        int flagged = 0;
        for (int plate = 0; plate < PLATES; plate++) {
            double[] times = new double[172];
            double[][] traces = new double[6][times.length];
            for (int i = 0; i < times.length; i++) {
                times[i] = 15.0 * i;
                for (double[] trace : traces) {
                    double first = times[i] - 182;
                    double second = first - 1200;
                    trace[i] = 0.1
                            + (first < 0 ? 0 : 0.4 * -Math.expm1(-0.02 * first) + creepPerMin / 60 * first)
                            + (second < 0 ? 0 : 0.3 * -Math.expm1(-0.02 * second))
                            + 0.0005 * random.nextGaussian();
                }
            }
            Analysis analysis = Plates.small()
                    .method(METHOD.formatted(rule))
                    .layout("o 1 2", "3 4 5", "o: {role: blank}")
                    .series(false, List.of(182.0, 1382.0), times, traces)
                    .analyse();
            flagged += analysis.steps()
                    .get(0)
                    .where(well -> well.flags().contains(Flag.CREEP_BELONGS))
                    .size();
            assertThat(analysis.steps().get(1).where(well -> well.flags().contains(Flag.CREEP_BELONGS)))
                    .isEmpty();
        }
        return flagged;
    }
}
