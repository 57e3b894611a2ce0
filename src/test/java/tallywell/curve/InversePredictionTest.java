package tallywell.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.Published;
import tallywell.numeric.StudentT;

/** Levels with their uncertainty and interval. */
class InversePredictionTest {
    @Test
    void linesAndQuadraticsAgreeWithR() throws StandardsException {
        Published rows = Published.read("inverse_by_r");
        for (int i = 0; i < rows.size(); i++) {
            Calibration made = calibration(
                    rows.text(i, "set"),
                    Model.of(rows.text(i, "model")).orElseThrow(),
                    Weighting.of(rows.text(i, "weights")).orElseThrow());
            double response = rows.number(i, "response");
            InversePrediction found = predict(made, response, (int) rows.number(i, "m"));
            LevelInterval interval =
                    found.interval(StudentT.twoSided(0.95, made.fit().degreesOfFreedom()));
            rows.check("level " + i, found.level(), rows.number(i, "level"), 10);
            // The slope of the comparison is a finite difference.
            rows.check("u " + i, found.standardUncertainty(), rows.number(i, "u"), 9);
            rows.check("low " + i, interval.low().orElseThrow(), rows.number(i, "low"), 9);
            rows.check("high " + i, interval.high().orElseThrow(), rows.number(i, "high"), 9);
        }
    }

    @Test
    void cadmiumSampleHasThePrintedUncertainty() throws StandardsException {
        // EURACHEM/CITAC Guide CG 4 (2012), example A5, table A5.1: c0 0.26 mg/L, u(c0) 0.018 mg/L.
        Calibration made = calibration("eurachem_a5", Model.LINE, Weighting.NONE);
        InversePrediction found = predict(made, 0.0712, 2);
        assertThat(found.level()).isCloseTo(0.26, within(0.005));
        assertThat(found.standardUncertainty()).isCloseTo(0.018, within(0.0005));
        assertThat(found.standardUncertainty()).isCloseTo(0.0178494, within(0.00000005));
    }

    @ParameterizedTest
    @CsvSource({"2.9, 0.264570", "13.5, 0.239754", "23.0, 0.263193"})
    void fluoresceinSamplesHaveTheirStandardDeviations(double intensity, double s) throws StandardsException {
        // Miller and Miller, fluorescein, 7 points; s_x0 recomputed outside the project to 6 decimals.
        Calibration made = calibration("miller_7", Model.LINE, Weighting.NONE);
        assertThat(predict(made, intensity, 1).standardUncertainty()).isCloseTo(s, within(0.0000005));
    }

    @Test
    void logisticPredictionsOfDnaseComeBack() throws StandardsException {
        Calibration made = dnase();
        Published rows = Published.read("dnase_inverse");
        for (int i = 0; i < rows.size(); i++) {
            double response = rows.number(i, "y0");
            if (rows.number(i, "conc") > 12.5) {
                assertThat(made.invert(response)).isEqualTo(new Inverse.Above(12.5));
                continue;
            }
            InversePrediction found = predict(made, response, (int) rows.number(i, "m"));
            rows.check("level", found.level(), rows.number(i, "conc"), 9);
            rows.check("curve", found.curveUncertainty(), rows.number(i, "se_param_only"), 8);
            rows.check("u", found.standardUncertainty(), rows.number(i, "se_total"), 8);
        }
    }

    @Test
    void profilesOfDnaseAgreeWithR() throws StandardsException {
        Calibration made = dnase();
        Published rows = Published.read("dnase_profile_by_r");
        double factor = StudentT.twoSided(0.95, 12);
        for (int i = 0; i < rows.size(); i++) {
            InversePrediction found = predict(made, rows.number(i, "response"), (int) rows.number(i, "m"));
            LevelInterval profile = ProfileInterval.of(found, factor);
            rows.check("low", profile.low().orElseThrow(), rows.number(i, "low"), 8);
            rows.check("high", profile.high().orElseThrow(), rows.number(i, "high"), 8);
            // To first order the band gives the same; here within 3 % of the half width.
            LevelInterval band = found.interval(factor);
            double half = factor * found.standardUncertainty();
            assertThat(band.low().orElseThrow()).isCloseTo(profile.low().orElseThrow(), within(0.03 * half));
            assertThat(band.high().orElseThrow()).isCloseTo(profile.high().orElseThrow(), within(0.03 * half));
        }
    }

    @ParameterizedTest
    @CsvSource({"LINE, 0.15", "QUADRATIC, 0.15", "QUADRATIC, 0.05"})
    void profileOfALinearModelIsTheExactInterval(Model model, double response) throws StandardsException {
        InversePrediction found = predict(calibration("eurachem_a5", model, Weighting.NONE), response, 2);
        LevelInterval exact = found.interval(2.2);
        LevelInterval profile = ProfileInterval.of(found, 2.2);
        assertThat(profile.low().orElseThrow()).isCloseTo(exact.low().orElseThrow(), within(1e-9));
        assertThat(profile.high().orElseThrow()).isCloseTo(exact.high().orElseThrow(), within(1e-9));
    }

    @Test
    void commonBlankCancelsWithAFreeInterceptAndNotThroughZero() throws StandardsException {
        Calibration line = calibration("eurachem_a5", Model.LINE, Weighting.NONE);
        ResponseVariance plain = ResponseVariance.residual(line, 0.3, 2);
        ResponseVariance blank = new ResponseVariance(plain.unit(), plain.own(), 0.01, 0);
        assertThat(new InversePrediction(line, 0.08, blank).standardUncertainty())
                .isEqualTo(new InversePrediction(line, 0.08, plain).standardUncertainty());

        // A shift of the blank moves the response by -1 and the slope by -Σx/Σx²: worked by hand for the derivative.
        Calibration zero = calibration("eurachem_a5", Model.LINE_THROUGH_ZERO, Weighting.NONE);
        InversePrediction only = new InversePrediction(zero, 0.08, new ResponseVariance(0, 0, 1e-6, 0));
        double[] x = Published.read("eurachem_a5").column("conc_mg_per_L");
        double shift = Arrays.stream(x).sum()
                / Arrays.stream(x).map(each -> each * each).sum();
        double b = zero.fit().parameter(0);
        assertThat(only.standardUncertainty()).isCloseTo(1e-3 * Math.abs(1 - only.level() * shift) / b, within(1e-12));
    }

    @Test
    void blanksOfTwoGroupsBothCount() throws StandardsException {
        Calibration line = calibration("eurachem_a5", Model.LINE, Weighting.NONE);
        InversePrediction both = new InversePrediction(line, 0.08, new ResponseVariance(0, 4e-6, 0, 9e-6));
        assertThat(both.standardUncertainty())
                .isCloseTo(Math.sqrt(13e-6) / line.curve().slopeAt(0), within(1e-12));
    }

    @Test
    void uncertaintyThroughZeroIsThatOfRedrawnBlanks() throws StandardsException {
        // The same by brute force: shift the responses of all standards and of the sample by one blank error.
        double[] level = {0.1, 0.2, 0.4};
        double[] response = {0.11, 0.205, 0.397};
        Calibration made = Calibrator.fit(level, response, Model.LINE_THROUGH_ZERO, Weighting.ONE_OVER_X);
        double h = 1e-6;
        double[] shifted = Arrays.stream(response).map(each -> each + h).toArray();
        Calibration moved = Calibrator.fit(level, shifted, Model.LINE_THROUGH_ZERO, Weighting.ONE_OVER_X);
        double difference = (level(moved, 0.3 + h) - level(made, 0.3)) / h;
        InversePrediction only = new InversePrediction(made, 0.3, new ResponseVariance(0, 0, 1, 0));
        assertThat(only.standardUncertainty()).isCloseTo(Math.abs(difference), within(1e-5));
    }

    @Test
    void flatLineBoundsNothing() throws StandardsException {
        // The slope is smaller than t times its standard error.
        double[] level = {1, 1, 2, 2, 3, 3};
        double[] response = {0.10, 0.30, 0.15, 0.35, 0.12, 0.40};
        Calibration made = Calibrator.fit(level, response, Model.LINE, Weighting.NONE);
        LevelInterval interval = predict(made, 0.23, 1).interval(StudentT.twoSided(0.95, 4));
        assertThat(interval.low()).isEmpty();
        assertThat(interval.high()).isEmpty();
        assertThat(interval.contains(1e9)).isTrue();
    }

    @Test
    void intervalBeyondTheTurningPointOrThePlateauHasNoUpperEnd() throws StandardsException {
        double[] level = {0, 1, 2, 3, 4, 5};
        double[] response = {0.00, 0.46, 0.79, 1.04, 1.17, 1.25};
        Calibration parabola = Calibrator.fit(level, response, Model.QUADRATIC, Weighting.NONE);
        LevelInterval open = predict(parabola, 1.24, 1).interval(4);
        assertThat(open.high()).isEmpty();
        assertThat(open.low()).isPresent();
        assertThat(open.contains(0.1)).isFalse();
        Calibration logistic = dnase();
        InversePrediction wide = new InversePrediction(logistic, 1.7, new ResponseVariance(1e-4, 0.2, 0, 0));
        assertThat(wide.interval(3).high()).isEmpty();
        assertThat(wide.interval(8).low()).isEmpty();
        assertThat(ProfileInterval.of(wide, 8).low()).isEmpty();
    }

    @Test
    void exactReadingsHaveNoWidth() throws StandardsException {
        Calibration made = calibration("eurachem_a5", Model.QUADRATIC, Weighting.NONE);
        InversePrediction found = new InversePrediction(made, 0.1, new ResponseVariance(0, 0, 0, 0));
        assertThat(found.standardUncertainty()).isZero();
        assertThat(found.interval(2)).isEqualTo(LevelInterval.of(found.level(), found.level()));
    }

    @Test
    void replicatesNarrowTheResponseAndNotTheCurve() throws StandardsException {
        Calibration made = calibration("eurachem_a5", Model.LINE, Weighting.NONE);
        InversePrediction one = predict(made, 0.1, 1);
        InversePrediction many = predict(made, 0.1, 1_000_000);
        assertThat(many.curveUncertainty()).isCloseTo(one.curveUncertainty(), within(1e-15));
        assertThat(many.standardUncertainty()).isCloseTo(one.curveUncertainty(), within(1e-7));
    }

    @Test
    void programmingFaultsAreNamed() throws StandardsException {
        Calibration made = calibration("eurachem_a5", Model.LINE, Weighting.NONE);
        ResponseVariance variance = ResponseVariance.residual(made, 0.3, 1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new InversePrediction(made, 9, variance))
                .withMessage("response must lie within the standards but was 9.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new InversePrediction(made, 0.1, variance).interval(Double.NaN))
                .withMessage("factor must be positive and finite but was NaN");
        assertThatIllegalArgumentException().isThrownBy(() -> new ResponseVariance(0, Double.NaN, 0, 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ResponseVariance.residual(made, 0.3, 0))
                .withMessage("replicates must be at least 1 but was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> ProfileInterval.of(new InversePrediction(made, 0.1, new ResponseVariance(0, 1, 0, 0)), 2))
                .withMessageStartingWith("variances must be positive");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ProfileInterval.of(new InversePrediction(made, 0.1, variance), 0))
                .withMessage("factor must be positive and finite but was 0.0");
        Calibration zero = calibration("eurachem_a5", Model.LINE_THROUGH_ZERO, Weighting.NONE);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ProfileInterval.of(new InversePrediction(zero, 0.1, variance), 2))
                .withMessage("prediction must have a free constant but was through zero");
    }

    private static double level(Calibration made, double response) {
        return ((Inverse.Within) made.invert(response)).level();
    }

    private static InversePrediction predict(Calibration made, double response, int replicates) {
        ResponseVariance variance = ResponseVariance.residual(made, level(made, response), replicates);
        return new InversePrediction(made, response, variance);
    }

    private static Calibration dnase() throws StandardsException {
        Published data = Published.read("dnase_run1");
        return Calibrator.fit(data.column("conc"), data.column("density"), Model.LOGISTIC_4, Weighting.NONE);
    }

    private static Calibration calibration(String set, Model model, Weighting weighting) throws StandardsException {
        if (set.equals("miller_7")) {
            Published data = Published.read("miller_fluorescein").first(7);
            return Calibrator.fit(data.column("conc_pg_mL"), data.column("intensity"), model, weighting);
        }
        Published data = Published.read(set);
        return Calibrator.fit(data.column("conc_mg_per_L"), data.column("absorbance"), model, weighting);
    }
}
