package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import tallywell.Published;

/** Grubbs, Dixon and Cochran. */
class OutlierTestsTest {
    @Test
    void uraniumRatiosHaveTheOutlierOfTheHandbook() {
        Published data = Published.read("grubbs_uranium");
        OutlierTest high = Grubbs.test(data.column("x"), Suspect.HIGHEST, Significance.FIVE_PERCENT);
        data.check("G", high.statistic(), 2.46876461121245, 12);
        assertThat(high.critical()).as("printed 2.032").isCloseTo(2.032, within(0.0005));
        assertThat(high.index()).isEqualTo(7);
        assertThat(high.beyond()).isTrue();
        OutlierTest low = Grubbs.test(data.column("x"), Suspect.LOWEST, Significance.FIVE_PERCENT);
        assertThat(low.index()).isZero();
        assertThat(low.beyond()).isFalse();
        OutlierTest either = Grubbs.test(data.column("x"), Suspect.EITHER, Significance.FIVE_PERCENT);
        assertThat(either.statistic()).isEqualTo(high.statistic());
        assertThat(either.critical()).as("two-sided 2.1266").isCloseTo(2.126645, within(0.0000005));
    }

    @Test
    void grubbsCriticalValuesAgree() {
        Published table = Published.read("grubbs_critical");
        for (int i = 0; i < table.size(); i++) {
            int n = (int) table.number(i, "n");
            assertGrubbs(table, i, "G_2s_5pct", Grubbs.critical(n, Suspect.EITHER, Significance.FIVE_PERCENT));
            assertGrubbs(table, i, "G_2s_1pct", Grubbs.critical(n, Suspect.EITHER, Significance.ONE_PERCENT));
            assertGrubbs(table, i, "G_1s_5pct", Grubbs.critical(n, Suspect.LOWEST, Significance.FIVE_PERCENT));
            assertGrubbs(table, i, "G_1s_1pct", Grubbs.critical(n, Suspect.HIGHEST, Significance.ONE_PERCENT));
        }
    }

    private static void assertGrubbs(Published table, int row, String column, double value) {
        assertThat(value)
                .as("n %s, %s. %s", table.text(row, "n"), column, table.source())
                .isCloseTo(table.number(row, column), within(0.00000051));
    }

    @Test
    void cochranCriticalValuesAgree() {
        Published table = Published.read("cochran_critical");
        for (int i = 0; i < table.size(); i++) {
            Significance significance =
                    table.number(i, "alpha") == 0.05 ? Significance.FIVE_PERCENT : Significance.ONE_PERCENT;
            double critical = Cochran.critical((int) table.number(i, "p"), (int) table.number(i, "n"), significance);
            assertThat(critical)
                    .as("row %s. %s", i, table.source())
                    .isCloseTo(table.number(i, "C_formula"), within(0.00000051));
            if (!table.text(i, "iso5725").isEmpty()) {
                // One unit in the last printed place: the printed table is not from this formula throughout.
                assertThat(critical).as(table.source()).isCloseTo(table.number(i, "iso5725"), within(0.0011));
            }
        }
    }

    @Test
    void cochranFindsTheLargestVariance() {
        OutlierTest test = Cochran.test(new double[] {1, 1.2, 0.8, 30, 1.1}, 3, Significance.ONE_PERCENT);
        assertThat(test.statistic()).isCloseTo(30 / 34.1, within(1e-12));
        assertThat(test.index()).isEqualTo(3);
        assertThat(test.beyond()).isTrue();
        assertThat(Cochran.test(new double[3], 2, Significance.FIVE_PERCENT).statistic())
                .isZero();
    }

    @Test
    void dixonCriticalValuesAgreeWithTheIntegration() {
        Published table = Published.read("dixon_critical");
        for (int i = 1; i < table.size(); i++) {
            int n = (int) table.number(i, "n");
            assertThat(Dixon.critical(n, Suspect.HIGHEST, Significance.FIVE_PERCENT))
                    .isEqualTo(table.number(i, "p0.05"));
            assertThat(Dixon.critical(n, Suspect.EITHER, Significance.FIVE_PERCENT))
                    .isEqualTo(table.number(i, "p0.025"));
            assertThat(Dixon.critical(n, Suspect.LOWEST, Significance.ONE_PERCENT))
                    .isEqualTo(table.number(i, "p0.01"));
            assertThat(Dixon.critical(n, Suspect.EITHER, Significance.ONE_PERCENT))
                    .isEqualTo(table.number(i, "p0.005"));
        }
    }

    @Test
    void dixonCriticalValuesAgreeWithSimulationAndThePublishedTable() {
        Published table = Published.read("dixon_r10");
        for (int i = 1; i < table.size(); i++) {
            int n = (int) table.number(i, "n");
            if (n > 7) {
                break; // r11 from here on
            }
            double one = Dixon.critical(n, Suspect.HIGHEST, Significance.FIVE_PERCENT);
            double two = Dixon.critical(n, Suspect.EITHER, Significance.FIVE_PERCENT);
            assertThat(one).as(table.source()).isCloseTo(table.number(i, "one5"), within(0.0015));
            assertThat(two).as(table.source()).isCloseTo(table.number(i, "both5"), within(0.0015));
            // Rorabacher's two-sided 95 % values; they differ from the exact ones by up to 0.0025 at n = 6.
            assertThat(two).as(table.source()).isCloseTo(table.number(i, "published_two_sided_95"), within(0.003));
        }
    }

    @Test
    void dixonCallsCleanSamplesInQuestionAsOftenAsItSays() {
        // Simulation: 20 000 normal samples of each size, so that 5 % has a standard error of 0.15 %.
        Random random = new Random(20250117);
        for (int n : new int[] {4, 9, 12, 18}) {
            int beyond = 0;
            for (int k = 0; k < 20_000; k++) {
                double[] values =
                        random.doubles(n).map(ignored -> random.nextGaussian()).toArray();
                if (Dixon.test(values, Suspect.HIGHEST, Significance.FIVE_PERCENT)
                        .beyond()) {
                    beyond++;
                }
            }
            assertThat(beyond / 20_000.0).as("n = " + n).isCloseTo(0.05, within(0.006));
        }
    }

    @Test
    void dixonFindsTheFarthestValueAtEitherEnd() {
        double[] values = {5.01, 5.02, 4.30, 5.00, 5.03};
        OutlierTest test = Dixon.test(values, Suspect.EITHER, Significance.FIVE_PERCENT);
        assertThat(test.statistic()).isCloseTo(0.70 / 0.73, within(1e-12));
        assertThat(test.index()).isEqualTo(2);
        assertThat(test.beyond()).isTrue();
        assertThat(Dixon.test(values, Suspect.HIGHEST, Significance.FIVE_PERCENT)
                        .beyond())
                .isFalse();
    }

    @Test
    void equalValuesHoldNoOutlier() {
        double[] same = {2, 2, 2, 2};
        assertThat(Grubbs.test(same, Suspect.EITHER, Significance.FIVE_PERCENT).beyond())
                .isFalse();
        assertThat(Dixon.test(same, Suspect.LOWEST, Significance.FIVE_PERCENT).beyond())
                .isFalse();
    }

    @Test
    void tooFewValuesAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Grubbs.test(new double[3], Suspect.EITHER, Significance.FIVE_PERCENT))
                .withMessage("values must have length of at least 4 but was 3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Dixon.test(new double[31], Suspect.EITHER, Significance.FIVE_PERCENT))
                .withMessage("values must have length 4 to 30 but was 31");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Dixon.test(new double[3], Suspect.EITHER, Significance.FIVE_PERCENT))
                .withMessage("values must have length 4 to 30 but was 3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Cochran.test(new double[] {1, -1}, 2, Significance.FIVE_PERCENT))
                .withMessage("variances[1] must be at least 0 but was -1.0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Cochran.critical(2, 1, Significance.FIVE_PERCENT))
                .withMessage("replicates must be at least 2 but was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Cochran.critical(1, 2, Significance.FIVE_PERCENT))
                .withMessage("groups must be at least 2 but was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Grubbs.critical(2, Suspect.LOWEST, Significance.FIVE_PERCENT))
                .withMessage("count must be at least 3 but was 2");
    }
}
