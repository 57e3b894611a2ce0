package tallywell.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import tallywell.Published;
import tallywell.numeric.VarianceFunction;

/** Limits of detection from lines with and without weights. */
class DetectionLimitsTest {
    /** Standards of 1 to 10 mg/L in g/L, whose scatter grows with the level: the set "milligrams" of detection_by_r.R. */
    private static final double[] LEVELS = {
        0.001, 0.001, 0.002, 0.002, 0.004, 0.004, 0.006, 0.006, 0.008, 0.008, 0.01, 0.01
    };

    private static final double[] RESPONSES = {
        0.002851, 0.002805, 0.005618, 0.005719, 0.01136, 0.01124, 0.01687, 0.01709, 0.02284, 0.02251, 0.02815, 0.02859
    };

    @Test
    void limitsAgreeWithThePredictionOfR() throws StandardsException {
        Published rows = Published.read("detection_by_r");
        Published eurachem = Published.read("eurachem_a5");
        for (int i = 0; i < rows.size(); i++) {
            boolean a5 = rows.text(i, "set").equals("eurachem");
            Calibration line = Calibrator.fit(
                    a5 ? eurachem.column("conc_mg_per_L") : LEVELS,
                    a5 ? eurachem.column("absorbance") : RESPONSES,
                    Model.LINE,
                    Weighting.of(rows.text(i, "weights")).orElseThrow());
            DetectionLimits limits = DetectionLimits.fromPrediction(line, (int) rows.number(i, "n"));
            rows.check("decision", limits.decision().orElseThrow(), rows.number(i, "decision"), 9);
            assertThat(limits.detection()).isEqualTo(2 * limits.decision().orElseThrow());
            rows.check(
                    "3.3 residual SD",
                    DetectionLimits.fromLine(DetectionRule.LINE_RESIDUAL, line).detection(),
                    rows.number(i, "residual"),
                    9);
            rows.check(
                    "3.3 SE of the intercept",
                    DetectionLimits.fromLine(DetectionRule.LINE_INTERCEPT, line).detection(),
                    rows.number(i, "intercept"),
                    9);
        }
    }

    @Test
    void underWeightsTheScatterIsThatOfTheLowEndAndNotThatOfOneGramPerLitre() throws StandardsException {
        Calibration line = Calibrator.fit(LEVELS, RESPONSES, Model.LINE, Weighting.ONE_OVER_X2);
        // Two wells at 1 mg/L differ by 0.000046: SD 0.0000325, over the slope 2.83 0.0115 mg/L, times 3.3 0.038 mg/L.
        assertThat(DetectionLimits.fromLine(DetectionRule.LINE_RESIDUAL, line).detection())
                .isBetween(0.019e-3, 0.076e-3);
        assertThat(line.sdAtLowEnd()).isCloseTo(line.fit().residualSd() * 0.001, within(1e-15));
    }

    @Test
    void fittedVarianceHasAWeightForTheBlankItself() throws StandardsException {
        VarianceFunction variance = VarianceFunction.fit(
                new double[] {0, 0.005, 0.01, 0.02}, new double[] {1e-10, 1.3e-9, 4e-9, 2e-8}, new double[] {7, 4, 4, 4
                });
        Calibration line = Calibrator.fit(LEVELS, RESPONSES, Model.LINE, new FittedVariance(variance, 1));
        assertThat(line.sdAtLowEnd())
                .isCloseTo(line.fit().residualSd() * Math.sqrt(variance.constant()), within(1e-15));
    }

    @Test
    void limitsOfADifferenceComeFromItsUncertaintyAtZero() {
        // u of 2 results of 0.03 and 0.04 is 0.05 (3, 4, 5); t 0.95 for many degrees of freedom is 1.645 (printed
        // tables).
        DetectionLimits limits = DetectionLimits.fromUncertainty(
                DetectionRule.UNCERTAINTY, Math.hypot(0.03, 0.04), Double.POSITIVE_INFINITY);
        assertThat(limits.decision().orElseThrow()).isCloseTo(0.08224, within(5e-6));
        assertThat(limits.detection()).isCloseTo(0.16449, within(1e-5));
        assertThat(limits.quantification()).isCloseTo(0.5, within(1e-12));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DetectionLimits.fromUncertainty(DetectionRule.UNCERTAINTY, Double.NaN, 5))
                .withMessage("u must be positive and finite but was NaN");
    }
}
