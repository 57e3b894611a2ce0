package tallywell.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.curve.Calibration;
import tallywell.notice.InputException;
import tallywell.plate.Well;
import tallywell.quantity.Dilution;
import tallywell.workup.Analysis;
import tallywell.workup.Repeatability;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Recoveries of controls and spikes against the derivative of the whole calculation, and by hand. */
class RecoveryBudgetTest {
    private static final String LAYOUT = NoisyPlate.LAYOUT
            .replace("C: o 1 2 3 4 q", "C: o 1 2 3 p q")
            .replace("D: o 1 2 3 4 q", "D: o 1 2 3 p q")
            .replace(
                    "  o: {role: blank}",
                    "  o: {role: blank}\n  p: {role: spike, of: 2, added: 0.1 g/L, fraction: 10 %}");

    private static final int CONTROL = 3;
    private static final int SPIKE = 4;

    private static NoisyPlate plate(String calibration, double dilution, String... further) throws InputException {
        return NoisyPlate.of(
                NoisyPlate.method(calibration, further),
                LAYOUT,
                NoisyPlate.samples(3, OptionalDouble.empty(), new Dilution(dilution), ""),
                c -> 2.1 * c,
                0.002,
                0.006);
    }

    private static RecoveryBudget of(Analysis analysis, int result) {
        return PlateBudget.of(analysis).recoveries().get(result).orElseThrow();
    }

    /** Variance of the ΔA of each well: pooled, or of standards the residual one. */
    private static Map<Well, Double> variances(Analysis analysis) {
        StepAnalysis step = analysis.steps().get(0);
        Repeatability scatter = Repeatability.of(step).orElseThrow();
        Map<Well, Double> variances = new HashMap<>();
        for (WellResult well : step.wells()) {
            variances.put(well.well(), scatter.function().at(Repeatability.netOf(well)));
        }
        if (step.calibration().isPresent()) {
            Calibration line = step.calibration().get();
            step.calibrationWells()
                    .forEach(well -> variances.put(well, line.fit().residualVariance()));
        }
        return variances;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"{by: standards, model: line}", "{by: standards, model: line-through-zero}", "{by: absorptivity}"
            })
    void scatterReachesRecoveriesLikeTheDerivativeOfTheWholeCalculation(String calibration) throws InputException {
        NoisyPlate plate = plate(calibration, 5);
        Analysis found = plate.analyse();
        Map<Well, Double> variances = variances(found);
        double h = 1e-6;
        for (int result : new int[] {CONTROL, SPIKE}) {
            double square = 0;
            for (Well well : plate.after().keySet()) {
                double up = recovery(plate.moved(well, h), result);
                double down = recovery(plate.moved(well, -h), result);
                square += Math.pow((up - down) / (2 * h), 2) * variances.getOrDefault(well, 0.0);
            }
            double u = of(found, result).standardUncertainty();
            assertThat(u)
                    .as("%s, %s", calibration, found.results().get(result).role())
                    .isCloseTo(Math.sqrt(square), within(1e-5 * u));
        }
    }

    private static double recovery(Analysis analysis, int result) {
        return analysis.results().get(result).recoveryPercent().orElseThrow();
    }

    @Test
    void whatSpikeAndSampleShareCountsOnceAndWhatComesAfterPipettingNotAtAll() throws InputException {
        String calibration = "{by: standards, model: line}";
        double plain = of(plate(calibration, 5).analyse(), SPIKE).standardUncertainty();
        double diluted = of(
                        plate(calibration, 5, "uncertainty: {dilution: {standard: 3 %}}")
                                .analyse(),
                        SPIKE)
                .standardUncertainty();
        assertThat(diluted).isCloseTo(plain, within(1e-12));
        // A standard that is 2 % off makes every concentration 2 % off, and so the recovery.
        Analysis off = plate(calibration, 5, "uncertainty: {standard: {standard: 2 %}}")
                .analyse();
        double shared = 0.02 * recovery(off, SPIKE);
        assertThat(of(off, SPIKE).standardUncertainty()).isCloseTo(Math.hypot(plain, shared), within(1e-9));
    }

    @Test
    void controlIsAsUncertainAsItsValue() throws InputException {
        Analysis found = plate("{by: standards, model: line}", 1, "uncertainty: {plate: {standard: 1 %}}")
                .analyse();
        ResultBudget value = PlateBudget.of(found).results().get(CONTROL).orElseThrow();
        RecoveryBudget recovery = of(found, CONTROL);
        assertThat(recovery.standardUncertainty()).isCloseTo(100 / 0.25 * value.byBudget(), within(1e-9));
        assertThat(recovery.degreesOfFreedom())
                .isCloseTo(value.degreesOfFreedom(), within(1e-9 * value.degreesOfFreedom()));
        assertThat(recovery.expandedUncertainty()).isCloseTo(100 / 0.25 * value.expandedUncertainty(), within(1e-6));
    }

    @Test
    void samplesHaveNoRecovery() throws InputException {
        List<Optional<RecoveryBudget>> recoveries = PlateBudget.of(
                        plate("{by: standards, model: line}", 1).analyse())
                .recoveries()
                .subList(0, CONTROL);
        assertThat(recoveries).hasSize(3).allMatch(Optional::isEmpty);
    }
}
