package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import tallywell.Published;

/** Variances that grow with the value, and the ratio of two variances. */
class VarianceFunctionTest {
    @Test
    void fitAgreesWithTheGammaModelOfR() {
        Published data = Published.read("variances_constructed");
        Published r = Published.read("fits_by_r");
        VarianceFunction fit = VarianceFunction.fit(data.column("mean"), data.column("variance"), data.column("df"));
        r.check("s0²", fit.constant(), r.where("what", "variance_constant").number(0, "value"), 8);
        r.check(
                "s1²",
                fit.proportional(),
                r.where("what", "variance_proportional").number(0, "value"),
                8);
        r.check(
                "ν at 0.5",
                fit.degreesOfFreedom(0.5),
                r.where("what", "variance_df_at_0.5").number(0, "value"),
                8);
        assertThat(fit.at(0.5)).isEqualTo(fit.constant() + 0.25 * fit.proportional());
    }

    @Test
    void pooledVarianceKeepsAllDegreesOfFreedom() {
        VarianceFunction pooled = VarianceFunction.pooled(new double[] {1, 4, 7}, new double[] {1, 2, 1});
        assertThat(pooled.at(123)).isCloseTo(4, within(1e-15));
        assertThat(pooled.degreesOfFreedom(123)).isCloseTo(4, within(1e-12));
        assertThat(pooled.proportional()).isZero();
    }

    @Test
    void scatterThatFallsWithTheValueIsTakenAsConstant() {
        VarianceFunction fit = VarianceFunction.fit(
                new double[] {0.1, 0.5, 1}, new double[] {4e-6, 2e-6, 1e-6}, new double[] {5, 5, 5});
        assertThat(fit.proportional()).isZero();
        assertThat(fit.constant()).isCloseTo(7e-6 / 3, within(1e-18));
        assertThat(fit.degreesOfFreedom(0.5)).isCloseTo(15, within(1e-10));
    }

    @Test
    void scatterThatGrowsFasterThanTheValueIsTakenAsProportional() {
        double[] means = {0.1, 0.5, 1};
        VarianceFunction fit = VarianceFunction.fit(means, new double[] {1e-9, 1e-5, 9e-5}, new double[] {6, 6, 6});
        assertThat(fit.constant()).isZero();
        assertThat(fit.proportional()).isCloseTo((1e-7 + 4e-5 + 9e-5) / 3, within(1e-15));
        assertThat(fit.degreesOfFreedom(0.3)).isCloseTo(18, within(1e-10));
    }

    @Test
    void variancesThatAreNoneAreRefused() {
        double[] one = {1};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> VarianceFunction.fit(one, new double[] {-1}, one))
                .withMessage("variances[0] must be at least 0 but was -1.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> VarianceFunction.fit(one, new double[] {0}, one))
                .withMessage("variances must hold a value above 0 but was 0 throughout");
    }

    @Test
    void ratioIsComparedWithF() {
        // F 0.99 with 1 and 8 degrees of freedom is 11.2586 (Miller and Miller's curvature example).
        VarianceRatio ratio = new VarianceRatio(16.09857, 1, 8);
        assertThat(ratio.critical(Significance.ONE_PERCENT)).isCloseTo(11.25862, within(0.000005));
        assertThat(ratio.beyond(Significance.ONE_PERCENT)).isTrue();
        assertThat(new VarianceRatio(11.2, 1, 8).beyond(Significance.ONE_PERCENT))
                .isFalse();
        assertThat(new VarianceRatio(ratio.critical(Significance.FIVE_PERCENT), 1, 8).tail())
                .isCloseTo(0.05, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> new VarianceRatio(Double.NaN, 1, 8));
        assertThatIllegalArgumentException().isThrownBy(() -> new VarianceRatio(1, 0, 8));
    }

    @Test
    void scalingTheValuesScalesTheParts() {
        Published data = Published.read("variances_constructed");
        VarianceFunction plain = VarianceFunction.fit(data.column("mean"), data.column("variance"), data.column("df"));
        VarianceFunction scaled = VarianceFunction.fit(
                Arrays.stream(data.column("mean")).map(each -> each * 1000).toArray(),
                Arrays.stream(data.column("variance")).map(each -> each * 1e6).toArray(),
                data.column("df"));
        assertThat(scaled.constant()).isCloseTo(1e6 * plain.constant(), within(1e-8));
        assertThat(scaled.proportional()).isCloseTo(plain.proportional(), within(1e-14));
    }
}
