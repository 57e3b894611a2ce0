package tallywell.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.Published;

/** Straight lines, lines through zero and single standards. */
class LineCalibrationTest {
    private static final double[] LEVELS = {0.1, 0.1, 0.2, 0.2, 0.4, 0.4};
    private static final double[] RESPONSES = {0.151, 0.149, 0.301, 0.299, 0.600, 0.602};

    @ParameterizedTest
    @CsvSource({
        "eurachem_a5, line",
        "eurachem_a5, line-through-zero",
        "miller_7, line",
        "miller_7, line-through-zero",
        "miller_11, line",
        "miller_11, line-through-zero"
    })
    void linesAgreeWithR(String set, String model) throws StandardsException {
        Published r = Published.read("lines_by_r").where("set", set).where("model", model);
        Published data = Published.read(set.startsWith("miller") ? "miller_fluorescein" : set);
        Published used = set.equals("miller_7") ? data.first(7) : data;
        String[] names = set.startsWith("miller")
                ? new String[] {"conc_pg_mL", "intensity"}
                : new String[] {"conc_mg_per_L", "absorbance"};
        for (Weighting weighting : Weighting.values()) {
            Published rows = r.where("weights", weighting.word());
            if (rows.size() == 0) {
                continue; // level 0 cannot be weighted by 1/x
            }
            Calibration made = Calibrator.fit(
                    used.column(names[0]),
                    used.column(names[1]),
                    Model.of(model).orElseThrow(),
                    weighting);
            assertThat(made.fit().size()).isEqualTo(rows.size());
            for (int i = 0; i < rows.size(); i++) {
                rows.check("parameter", made.fit().parameter(i), rows.number(i, "estimate"), 12);
                rows.check("curve", made.curve().coefficient(i), rows.number(i, "estimate"), 12);
                rows.check("standard error", made.fit().standardError(i), rows.number(i, "se"), 11);
                rows.check("residual SD", made.fit().residualSd(), rows.number(i, "sigma"), 11);
                rows.check("R squared", made.fit().rSquared(), rows.number(i, "r_squared"), 12);
                assertThat(made.fit().degreesOfFreedom()).isEqualTo((int) rows.number(i, "df"));
            }
        }
    }

    /**
     * The first seven points of Miller and Miller's fluorescein standards; R 4.2.2, {@code predict(lm(...), se.fit = TRUE)}
     * of {@code y ~ x}, {@code y ~ 0 + x} and {@code y ~ x + I(x^2)}.
     */
    @ParameterizedTest
    @CsvSource({
        "line, 0.294936001360, 0.168636110472, 0.294936001360",
        "line-through-zero, 0, 0.259856323649, 0.623655176757",
        "quadratic, 0.358252245215, 0.231882294245, 0.358252245215"
    })
    void uncertaintyOfTheCurveAgreesWithR(String model, double atZero, double atFive, double atTwelve)
            throws StandardsException {
        Published data = Published.read("miller_fluorescein").first(7);
        Calibration made = Calibrator.fit(
                data.column("conc_pg_mL"),
                data.column("intensity"),
                Model.of(model).orElseThrow(),
                Weighting.NONE);
        assertThat(made.uAt(0).orElseThrow()).isCloseTo(atZero, within(1e-11));
        assertThat(made.uAt(5).orElseThrow()).isCloseTo(atFive, within(1e-11));
        assertThat(made.uAt(12).orElseThrow()).isCloseTo(atTwelve, within(1e-11));
    }

    @Test
    void cadmiumLineAndSampleRoundToThePrintedFigures() throws StandardsException {
        // EURACHEM/CITAC Guide CG 4 (2012), example A5, table A5.1 and text: printed figures.
        Published data = Published.read("eurachem_a5");
        Calibration made =
                Calibrator.fit(data.column("conc_mg_per_L"), data.column("absorbance"), Model.LINE, Weighting.NONE);
        assertThat(made.fit().parameter(1)).isCloseTo(0.2410, within(0.00005));
        assertThat(made.fit().standardError(1)).isCloseTo(0.0050, within(0.00005));
        assertThat(made.fit().parameter(0)).isCloseTo(0.0087, within(0.00005));
        assertThat(made.fit().standardError(0)).isCloseTo(0.0029, within(0.00005));
        assertThat(made.fit().residualSd()).isCloseTo(0.005486, within(0.0000005));
        assertThat(made.invert(0.0712))
                .isInstanceOfSatisfying(
                        Inverse.Within.class,
                        found -> assertThat(found.level()).isCloseTo(0.259336, within(0.0000005)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.155, 0.2, 0.3217, 0.45, 0.6})
    void invertedResponseLiesOnTheCurve(double response) throws StandardsException {
        for (Model model : new Model[] {Model.LINE, Model.LINE_THROUGH_ZERO}) {
            Calibration made = Calibrator.fit(LEVELS, RESPONSES, model, Weighting.ONE_OVER_X);
            Inverse.Within found = (Inverse.Within) made.invert(response);
            assertThat(made.curve().at(found.level())).isCloseTo(response, within(1e-15));
        }
    }

    @Test
    void scalingTheLevelsScalesTheResult() throws StandardsException {
        double[] thousandfold =
                java.util.Arrays.stream(LEVELS).map(each -> 1000 * each).toArray();
        for (Weighting weighting : Weighting.values()) {
            double plain = level(
                    Calibrator.fit(LEVELS, RESPONSES, Model.LINE, weighting).invert(0.333));
            double scaled = level(Calibrator.fit(thousandfold, RESPONSES, Model.LINE, weighting)
                    .invert(0.333));
            assertThat(scaled).isCloseTo(1000 * plain, within(1e-11));
        }
    }

    @Test
    void responseOfTheOutermostStandardsIsWithin() throws StandardsException {
        for (Model model : new Model[] {Model.LINE, Model.LINE_THROUGH_ZERO}) {
            Calibration made = Calibrator.fit(LEVELS, RESPONSES, model, Weighting.NONE);
            assertThat(level(made.invert(made.curve().at(0.1)))).isCloseTo(0.1, within(1e-15));
            assertThat(level(made.invert(made.curve().at(0.4)))).isCloseTo(0.4, within(1e-15));
        }
    }

    @Test
    void outsideTheStandardsThereIsABoundAndNoLevel() throws StandardsException {
        Calibration made = Calibrator.fit(LEVELS, RESPONSES, Model.LINE, Weighting.NONE);
        assertThat(made.invert(made.curve().at(0.1) - 1e-6)).isEqualTo(new Inverse.Below(0.1));
        assertThat(made.invert(made.curve().at(0.4) + 1e-6)).isEqualTo(new Inverse.Above(0.4));
        assertThat(made.invert(-0.3)).isEqualTo(new Inverse.Below(0.1));
        assertThatIllegalArgumentException().isThrownBy(() -> made.invert(Double.NaN));
    }

    @Test
    void singleStandardIsTheLineFromZeroThroughTheMean() throws StandardsException {
        Calibration made = SingleStandard.fit(new double[] {0.5, 0.5, 0.5}, new double[] {0.61, 0.60, 0.62});
        assertThat(made.curve().coefficient(0)).isCloseTo(0.61 / 0.5, within(1e-15));
        assertThat(level(made.invert(0.305))).isCloseTo(0.25, within(1e-15));
        assertThat(made.invert(0.62)).isEqualTo(new Inverse.Above(0.5));
        assertThat(made.invert(-0.01)).isEqualTo(new Inverse.Below(0));
        assertThat(made.fit().degreesOfFreedom()).isEqualTo(2);
    }

    @Test
    void twoLevelsOnceEachMakeALineWithoutResidual() throws StandardsException {
        Calibration made = Calibrator.fit(new double[] {0, 1}, new double[] {0.01, 1.01}, Model.LINE, Weighting.NONE);
        assertThat(level(made.invert(0.51))).isCloseTo(0.5, within(1e-15));
        assertThat(made.fit().degreesOfFreedom()).isZero();
        assertThatExceptionOfType(IllegalStateException.class)
                .isThrownBy(() -> made.fit().residualSd());
    }

    @ParameterizedTest(name = "{0} / {1} by {2}, {3}")
    @CsvSource(delimiter = '|', textBlock = """
            ''      | ''         | line              | none | found no standard to calibrate with
            0.5     | 0.6        | line              | none | found standards of one level only; the model line needs at least 2 different levels
            .5 .5   | 0.6 0.7    | line              | none | found standards of one level only
            0 0     | 0.6 0.7    | line-through-zero | none | found standards of level 0 only
            .1 .2   | 0.6 0.6    | line              | none | found the same net ΔA at every level
            .1 .2   | 0.6 0.6    | line-through-zero | none | found the same net ΔA at every level
            .1 .2   | 0.6 0.3    | line              | none | found net ΔA that does not rise with the level (slope -3.000)
            .1 .2   | -.6 -.9    | line-through-zero | none | found net ΔA that does not rise with the level
            0 .1 .2 | .01 .3 .6  | line              | 1/x  | found a standard of level 0 with weights 1/x
            0 .1 .2 | .01 .3 .6  | line              | 1/x2 | found a standard of level 0 with weights 1/x2
            0 .1 .2 | -.01 .3 .6 | line              | 1/y  | found a mean net ΔA of 0 or less at a level
            """)
    void standardsWithoutACurveAreRefused(
            String levels, String responses, String model, String weights, String message) {
        assertThatExceptionOfType(StandardsException.class)
                .isThrownBy(() -> Calibrator.fit(
                        numbers(levels),
                        numbers(responses),
                        Model.of(model).orElseThrow(),
                        Weighting.of(weights).orElseThrow()))
                .withMessageStartingWith(message)
                .withMessageNotContaining("NaN");
    }

    @Test
    void standardsOfLevelZeroAreNamedByTheirPlaces() {
        assertThatExceptionOfType(StandardsException.class)
                .isThrownBy(() -> Calibrator.fit(
                        new double[] {0.1, 0, 0.2, 0}, new double[] {1, 0, 2, 0}, Model.LINE, Weighting.ONE_OVER_X))
                .satisfies(refused -> assertThat(refused.points()).containsExactly(1, 3));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            ''    | ''      | found no standard
            .1 .2 | .1 .2   | found standards of several levels
            0     | .1      | found a standard of level 0
            .1 .1 | .1 -.12 | found a mean net ΔA of -0.01000 for the standard
            """)
    void singleStandardsWithoutALineAreRefused(String levels, String responses, String message) {
        assertThatExceptionOfType(StandardsException.class)
                .isThrownBy(() -> SingleStandard.fit(numbers(levels), numbers(responses)))
                .withMessageStartingWith(message);
    }

    @Test
    void wordsOfTheMethodFilesAreKnown() {
        assertThat(Model.of("logistic-4")).contains(Model.LOGISTIC_4);
        assertThat(Model.of("Line")).isEmpty();
        assertThat(Model.LINE_THROUGH_ZERO).hasToString("line-through-zero");
        assertThat(Weighting.of("1/x2")).contains(Weighting.ONE_OVER_X2);
        assertThat(Weighting.ONE_OVER_Y).hasToString("1/y");
    }

    @Test
    void programmingFaultsAreNamed() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Calibrator.fit(new double[1], new double[2], Model.LINE, Weighting.NONE))
                .withMessage("response must have length 1 but was 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Calibrator.fit(new double[] {-1}, new double[1], Model.LINE, Weighting.NONE))
                .withMessage("level[0] must be at least 0 but was -1.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SingleStandard.fit(new double[1], new double[] {Double.NaN}))
                .withMessage("response[0] must be finite but was NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Line.of(0, 0))
                .withMessage("slope must be finite and not 0 but was 0.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Line.of(Double.NaN, 1))
                .withMessage("intercept must be finite but was NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Line(Model.LINE_THROUGH_ZERO, 1, 1))
                .withMessage("intercept must be 0 but was 1.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Line(Model.QUADRATIC, 1, 1))
                .withMessage("model must be a line but was quadratic");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Line.of(1, 2).coefficient(2))
                .withMessage("index must lie in 0 to 1 but was 2");
    }

    private static double level(Inverse inverse) {
        return ((Inverse.Within) inverse).level();
    }

    private static double[] numbers(String text) {
        return java.util.Arrays.stream(text.split(" "))
                .filter(each -> !each.isEmpty())
                .mapToDouble(Double::parseDouble)
                .toArray();
    }
}
