package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.Published;

/** Lines against the certified values of NIST. */
class StraightLineTest {
    @ParameterizedTest
    @CsvSource({"Norris, 12", "NoInt1, 13", "NoInt2, 13"})
    void linesOfNistComeBack(String set, int digits) {
        Published data = Published.read("nist_" + set.toLowerCase(java.util.Locale.ROOT));
        Published certified = Published.read("nist_linear_certified").where("dataset", set);
        double[] x = data.column("x");
        Regression fit = certified.size() == 1
                ? LineThroughZero.fit(x, data.column("y"), ones(x.length))
                : StraightLine.fit(x, data.column("y"), ones(x.length));
        for (int i = 0; i < certified.size(); i++) {
            certified.check(set + " parameter", fit.parameter(i), certified.number(i, "certified"), digits);
            certified.check(set + " its SD", fit.standardError(i), certified.number(i, "certified_sd"), digits);
        }
        certified.check(set + " residual SD", fit.residualSd(), certified.number(0, "certified_rsd"), digits);
        certified.check(set + " R squared", fit.rSquared(), certified.number(0, "certified_R2"), digits);
        assertThat(fit.degreesOfFreedom()).isEqualTo(x.length - certified.size());
    }

    @Test
    void thermometerLineOfTheGumComesBackWithItsCorrelation() {
        // JCGM 100:2008 H.3: temperatures less 20 °C; printed y1 -0.1712 (0.0029), y2 0.00218 (0.00067), r -0.930.
        Published data = Published.read("gum_h3");
        double[] t = Arrays.stream(data.column("t_k")).map(each -> each - 20).toArray();
        Regression fit = StraightLine.fit(t, data.column("b_k"), ones(t.length));
        assertThat(fit.parameter(0)).isCloseTo(-0.1712, within(0.00005));
        assertThat(fit.standardError(0)).isCloseTo(0.0029, within(0.00005));
        assertThat(fit.parameter(1)).isCloseTo(0.00218, within(0.000005));
        assertThat(fit.standardError(1)).isCloseTo(0.00067, within(0.000005));
        double r = fit.covariance(0, 1) / (fit.standardError(0) * fit.standardError(1));
        assertThat(r).isCloseTo(-0.930, within(0.0005));
        // b(30 °C) = -0.1494 with standard uncertainty 0.0041
        double[] at30 = {1, 10};
        assertThat(fit.parameter(0) + 10 * fit.parameter(1)).isCloseTo(-0.1494, within(0.00005));
        assertThat(Math.sqrt(fit.cofactorOf(at30) * fit.residualVariance())).isCloseTo(0.0041, within(0.00005));
    }

    @Test
    void doublingAWeightIsAddingThePointAgain() {
        double[] x = {1, 2, 3, 4};
        double[] y = {1.1, 1.9, 3.2, 3.9};
        Regression weighted = StraightLine.fit(x, y, new double[] {1, 2, 1, 1});
        Regression repeated =
                StraightLine.fit(new double[] {1, 2, 2, 3, 4}, new double[] {1.1, 1.9, 1.9, 3.2, 3.9}, ones(5));
        for (int i = 0; i < 2; i++) {
            assertThat(weighted.parameter(i)).isCloseTo(repeated.parameter(i), within(1e-14));
            assertThat(weighted.cofactor(i, i)).isCloseTo(repeated.cofactor(i, i), within(1e-14));
        }
        assertThat(weighted.sumOfSquares()).isCloseTo(repeated.sumOfSquares(), within(1e-14));
    }

    @Test
    void shiftingXFarAwayLeavesTheSlope() {
        double[] x = {1, 2, 3, 4, 5};
        double[] y = {1.1, 1.9, 3.2, 3.9, 5.05};
        double[] far = Arrays.stream(x).map(each -> each + 1e6).toArray();
        double near = StraightLine.fit(x, y, ones(5)).parameter(1);
        assertThat(StraightLine.fit(far, y, ones(5)).parameter(1)).isCloseTo(near, within(1e-14));
    }

    @Test
    void seriesThatDetermineNoLineAreRefused() {
        double[] two = {1, 2};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StraightLine.fit(new double[] {1}, new double[] {1}, ones(1)))
                .withMessage("x must have length of at least 2 but was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StraightLine.fit(new double[] {3, 3}, two, ones(2)))
                .withMessage("x must hold at least two different values but was 3.0 throughout");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StraightLine.fit(two, new double[] {1, Double.NaN}, ones(2)))
                .withMessage("y[1] must be finite but was NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StraightLine.fit(two, two, new double[] {1, 0}))
                .withMessage("w[1] must be positive and finite but was 0.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StraightLine.fit(two, two, ones(3)))
                .withMessage("w must have length 2 but was 3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LineThroughZero.fit(new double[2], two, ones(2)))
                .withMessage("x must hold a value other than 0 but was 0 throughout");
    }

    @Test
    void withoutADegreeOfFreedomThereIsNoVariance() {
        Regression fit = StraightLine.fit(new double[] {1, 2}, new double[] {1, 2}, ones(2));
        assertThat(fit.degreesOfFreedom()).isZero();
        assertThatIllegalStateException().isThrownBy(fit::residualVariance).withMessageContaining("2 points");
    }

    private static double[] ones(int length) {
        double[] ones = new double[length];
        Arrays.fill(ones, 1);
        return ones;
    }
}
