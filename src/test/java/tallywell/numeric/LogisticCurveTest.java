package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import tallywell.Published;

/** Logistic curves with four and five parameters. */
class LogisticCurveTest {
    private static final double[] LEVELS = {0, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2};

    @Test
    void fourParametersOfDnaseComeBackToNineDigits() {
        Published data = Published.read("dnase_run1");
        Published fit50 = Published.read("dnase_logistic4");
        Regression fit = LogisticCurve.fit(data.column("conc"), data.column("density"), ones(data.size()), 4)
                .orElseThrow();
        for (int i = 0; i < 4; i++) {
            fit50.check(fit50.text(i, "parameter"), fit.parameter(i), fit50.number(i, "estimate"), 9);
            fit50.check("SE of " + fit50.text(i, "parameter"), fit.standardError(i), fit50.number(i, "se"), 9);
        }
        fit50.check("residual sum of squares", fit.sumOfSquares(), fit50.number(0, "rss"), 12);
        fit50.check("residual SD", fit.residualSd(), fit50.number(0, "sigma"), 12);
        assertThat(fit.degreesOfFreedom()).isEqualTo(12);
    }

    @Test
    void fiveParametersWithWeightsAndLevelZeroAgreeWithR() {
        Published data = Published.read("logistic5_constructed");
        Published r = Published.read("fits_by_r");
        Regression fit = LogisticCurve.fit(data.column("x"), data.column("y"), data.column("w"), 5)
                .orElseThrow();
        String[] names = {"a", "b", "c", "d", "g"};
        for (int i = 0; i < 5; i++) {
            r.check(
                    names[i],
                    fit.parameter(i),
                    r.where("what", "logistic5_" + names[i]).number(0, "value"),
                    8);
        }
        r.check("residual", fit.sumOfSquares(), r.where("what", "logistic5_rss").number(0, "value"), 12);
        r.check(
                "SE of b",
                fit.standardError(1),
                r.where("what", "logistic5_se_b").number(0, "value"),
                8);
        r.check(
                "SE of c",
                fit.standardError(2),
                r.where("what", "logistic5_se_c").number(0, "value"),
                8);
        r.check(
                "SE of g",
                fit.standardError(4),
                r.where("what", "logistic5_se_g").number(0, "value"),
                8);
    }

    @Test
    void pointsOnACurveGiveItBack() {
        double[] p = {0.02, 1.7, 0.6, 1.4, 0.8};
        double[] y = Arrays.stream(LEVELS).map(x -> LogisticCurve.at(p, x)).toArray();
        Regression fit = LogisticCurve.fit(LEVELS, y, ones(y.length), 5).orElseThrow();
        for (int i = 0; i < 5; i++) {
            assertThat(fit.parameter(i)).isCloseTo(p[i], within(1e-7));
        }
    }

    @Test
    void scalingXAndYScalesTheParameters() {
        Published data = Published.read("dnase_run1");
        double[] x = data.column("conc");
        double[] y = data.column("density");
        Regression plain = LogisticCurve.fit(x, y, ones(x.length), 4).orElseThrow();
        Regression scaled = LogisticCurve.fit(times(1e-4, x), times(1e3, y), ones(x.length), 4)
                .orElseThrow();
        assertThat(scaled.parameter(0)).isCloseTo(1e3 * plain.parameter(0), within(1e-7));
        assertThat(scaled.parameter(1)).isCloseTo(plain.parameter(1), within(1e-10));
        assertThat(scaled.parameter(2)).isCloseTo(1e-4 * plain.parameter(2), within(1e-12));
        assertThat(scaled.parameter(3)).isCloseTo(1e3 * plain.parameter(3), within(1e-6));
    }

    @Test
    void derivativesAreThoseOfTheCurve() {
        double[] p = {0.02, 1.7, 0.6, 1.4, 0.8};
        for (double x : new double[] {0, 1e-3, 0.3, 0.6, 5, 1e6}) {
            double[] gradient = LogisticCurve.gradient(p, x);
            for (int j = 0; j < 5; j++) {
                double h = 1e-6 * p[j];
                double[] up = p.clone();
                double[] down = p.clone();
                up[j] += h;
                down[j] -= h;
                double difference = (LogisticCurve.at(up, x) - LogisticCurve.at(down, x)) / (2 * h);
                assertThat(gradient[j]).as("parameter %s at %s", j, x).isCloseTo(difference, within(1e-8));
            }
            if (x > 0) {
                double h = 1e-5 * x;
                double difference = (LogisticCurve.at(p, x + h) - LogisticCurve.at(p, x - h)) / (2 * h);
                assertThat(LogisticCurve.slope(p, x)).isCloseTo(difference, within(1e-8));
            }
        }
    }

    @Test
    void slopeAtZeroFollowsTheSteepness() {
        assertThat(LogisticCurve.slope(new double[] {0, 2, 0.5, 1}, 0)).isZero();
        assertThat(LogisticCurve.slope(new double[] {0, 1, 0.5, 1}, 0)).isEqualTo(2);
        assertThat(LogisticCurve.slope(new double[] {0, 0.5, 0.5, 1}, 0)).isInfinite();
    }

    @Test
    void straightCourseDeterminesNoLogistic() {
        double[] y = times(0.7, LEVELS);
        assertThat(LogisticCurve.fit(LEVELS, y, ones(y.length), 5)).isEmpty();
    }

    @Test
    void argumentsWithoutACurveAreRefused() {
        double[] four = {0, 1, 2, 3};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LogisticCurve.fit(four, four, ones(4), 3))
                .withMessage("parameters must be 4 or 5 but was 3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LogisticCurve.fit(four, four, ones(4), 5))
                .withMessage("x must hold at least 5 different values but was 4");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LogisticCurve.fit(new double[] {-1, 1, 2, 3}, four, ones(4), 4))
                .withMessage("x must be at least 0 throughout but was not");
    }

    private static double[] times(double factor, double[] values) {
        return Arrays.stream(values).map(each -> factor * each).toArray();
    }

    private static double[] ones(int length) {
        double[] ones = new double[length];
        Arrays.fill(ones, 1);
        return ones;
    }
}
