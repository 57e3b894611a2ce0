package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tallywell.budget.NoisyPlate;
import tallywell.curve.FittedVariance;
import tallywell.notice.InputException;
import tallywell.workup.Analysis;
import tallywell.workup.Repeatability;
import tallywell.workup.StepAnalysis;

/** Weights that follow the scatter, and when the plate asks for them. */
class WeightsObservationTest {
    private static final int PLATES = 2000;
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    /** Plates of 100 on which the observation fails, by the weights and the scatter. */
    private static double failing(String weights, double s0, double s1) throws InputException {
        NoisyPlate first = NoisyPlate.of(
                NoisyPlate.method("{by: standards, model: line, weights: " + weights + "}"),
                NoisyPlate.LAYOUT,
                List.of(),
                level -> 2.83 * level,
                s0,
                s1);
        int failed = 0;
        for (int i = 0; i < PLATES; i++) {
            Analysis analysis =
                    first.redrawn(level -> 2.83 * level, s0, s1, i * SPREAD).analyse();
            StepAnalysis step = analysis.steps().get(0);
            Check check =
                    WeightsObservation.of(step, Repeatability.of(step), "").orElseThrow();
            failed += check.state() == Check.State.FAILED ? 1 : 0;
        }
        return 100.0 * failed / PLATES;
    }

    @Test
    void onePlateInAHundredFailsWithoutAFault() throws InputException {
        assertThat(failing("none", 0.002, 0)).isBetween(0.4, 1.8);
    }

    @Test
    void scatterInProportionIsSeenUnderNoWeights() throws InputException {
        assertThat(failing("none", 0.0005, 0.02)).isGreaterThan(60);
    }

    @Test
    void weightsComeFromTheReplicatesOfThePlate() throws InputException {
        NoisyPlate plate = NoisyPlate.of(
                NoisyPlate.method("{by: standards, model: line, weights: variance-function}"),
                NoisyPlate.LAYOUT,
                List.of(),
                level -> 2.83 * level,
                0.001,
                0.01);
        StepAnalysis step = plate.analyse().steps().get(0);
        FittedVariance found = (FittedVariance) step.calibration().orElseThrow().weighting();
        Repeatability scatter = Repeatability.of(step).orElseThrow();
        assertThat(found.variance().constant()).isCloseTo(scatter.function().constant(), within(1e-18));
        assertThat(found.variance().proportional()).isCloseTo(scatter.function().proportional(), within(1e-15));
        assertThat(WeightsObservation.of(step, Optional.of(scatter), "")).isEmpty();
    }

    @Test
    void withoutReplicatesTheWeightsAreRefused() throws InputException {
        NoisyPlate single = NoisyPlate.of(
                NoisyPlate.method("{by: standards, model: line, weights: variance-function}"),
                """
                tallywell: layout/1
                name: single wells
                plate: 6
                wells:
                  A: o a b
                  B: c 1 .
                legend:
                  o: {role: blank}
                  a: {role: standard, level: 0.1 g/L}
                  b: {role: standard, level: 0.2 g/L}
                  c: {role: standard, level: 0.3 g/L}
                """,
                List.of(),
                level -> 2.83 * level,
                0.001,
                0.01);
        assertThatThrownBy(single::analyse)
                .isInstanceOf(InputException.class)
                .hasMessageContaining(
                        "standards of malic acid: found no replicates that differ, which the weights variance-function are"
                                + " fitted to; expected two wells or more of samples, controls, standards or blanks, or"
                                + " weights none");
    }
}
