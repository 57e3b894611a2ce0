package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import tallywell.Published;

/** Quantiles of t, F and the normal distribution. */
class QuantilesTest {
    private static final Published R = Published.read("quantiles_by_r");

    @Test
    void normalQuantilesAgreeWithR() {
        Published rows = R.where("distribution", "normal");
        for (int i = 0; i < rows.size(); i++) {
            double value = Gaussian.quantile(rows.number(i, "probability"));
            rows.check("normal " + rows.text(i, "probability"), value, rows.number(i, "quantile"), 11);
        }
    }

    @Test
    void tQuantilesAgreeWithR() {
        Published rows = R.where("distribution", "t");
        for (int i = 0; i < rows.size(); i++) {
            double value = StudentT.quantile(rows.number(i, "probability"), rows.number(i, "df1"));
            rows.check("t " + rows.text(i, "probability"), value, rows.number(i, "quantile"), 10);
        }
    }

    @Test
    void fQuantilesAgreeWithR() {
        Published rows = R.where("distribution", "F");
        for (int i = 0; i < rows.size(); i++) {
            double p = rows.number(i, "probability");
            double value = FisherF.quantile(p, rows.number(i, "df1"), rows.number(i, "df2"));
            rows.check("F " + p, value, rows.number(i, "quantile"), 9);
            assertThat(FisherF.tail(value, rows.number(i, "df1"), rows.number(i, "df2")))
                    .isCloseTo(1 - p, within(1e-12));
        }
    }

    @Test
    void twoReplicatesAloneHaveAFactorOfTwelvePointSeven() {
        // GUM, JCGM 100:2008, table G.2: 12.71 for one degree of freedom, 1.960 for infinitely many.
        assertThat(StudentT.twoSided(0.95, 1)).isCloseTo(12.71, within(0.005));
        assertThat(StudentT.twoSided(0.95, Double.POSITIVE_INFINITY)).isCloseTo(1.960, within(0.0005));
        assertThat(StudentT.twoSidedTail(StudentT.twoSided(0.95, 7.5), 7.5)).isCloseTo(0.05, within(1e-12));
        assertThat(StudentT.quantile(0.5, 4)).isZero();
        assertThat(FisherF.tail(0, 2, 3)).isEqualTo(1);
    }

    @Test
    void argumentsWithoutAQuantileAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StudentT.quantile(1, 3))
                .withMessage("probability must lie between 0 and 1 but was 1.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gaussian.quantile(0))
                .withMessage("probability must lie between 0 and 1 but was 0.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StudentT.quantile(0.5, Double.NaN))
                .withMessage("degreesOfFreedom must be positive but was NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FisherF.quantile(0.5, 1, 0))
                .withMessage("denominator must be positive but was 0.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FisherF.tail(Double.NaN, 1, 1))
                .withMessage("value must be at least 0 but was NaN");
    }
}
