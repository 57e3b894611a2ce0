package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import tallywell.Published;

/** The variance function at the highest of all maxima: simulated plates, each also searched by the optimiser of R. */
class VarianceFunctionPlatesTest {
    private static final double[] S0 = {0.002, 0.0005, 0.003, 0.0002, 0.0015};
    private static final double[] S1 = {0.008, 0.012, 0, 0.02, 0.006};

    /** The generator and the plates of docs/checks/variance-function.R. */
    private static final class Plates {
        private double seed = 20240229;
        private final double[] means = new double[27];
        private final double[] variances = new double[27];
        private final double[] freedom = new double[27];

        private double uniform() {
            seed = 16807 * seed % 2147483647;
            return seed / 2147483647;
        }

        private double normal() {
            double u = uniform();
            double v = uniform();
            return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * v);
        }

        void next(int kind) {
            for (int slot = 0; slot < 27; slot++) {
                double top = kind == 5 && slot % 5 != 0 ? 0.15 : 1.2;
                double mean = slot == 0 ? 0 : 0.01 + top * uniform();
                double[] y = new double[slot == 0 ? 4 : 3];
                for (int i = 0; i < y.length; i++) {
                    y[i] = mean + Math.sqrt(Math.pow(S0[kind - 1], 2) + Math.pow(S1[kind - 1] * mean, 2)) * normal();
                }
                double average = Arrays.stream(y).average().orElseThrow();
                means[slot] = slot == 0 ? 0 : average;
                variances[slot] = Arrays.stream(y)
                                .map(each -> (each - average) * (each - average))
                                .sum()
                        / (y.length - 1);
                freedom[slot] = y.length - 1;
            }
        }

        double logLikelihood(VarianceFunction function) {
            double sum = 0;
            for (int i = 0; i < means.length; i++) {
                double variance = function.at(means[i]);
                sum -= freedom[i] / 2 * (Math.log(variance) + variances[i] / variance);
            }
            return sum;
        }
    }

    @Test
    void neverLessLikelyThanWhatTheOptimiserOfRFinds() {
        Published r = Published.read("variance_function_plates");
        Plates plates = new Plates();
        int edges = 0;
        for (int i = 0; i < 1000; i++) {
            plates.next((int) r.number(i, "kind"));
            assertThat(plates.variances[1])
                    .as("the same plate as R's")
                    .isCloseTo(r.number(i, "first_variance"), within(1e-12 * plates.variances[1] + 1e-16));
            VarianceFunction fit = VarianceFunction.fit(plates.means, plates.variances, plates.freedom);
            assertThat(plates.logLikelihood(fit))
                    .as("plate %d of R", i + 1)
                    .isGreaterThan(r.number(i, "log_likelihood") - 1e-6);
            edges += fit.proportional() == 0 ? 1 : 0;
        }
        // Where the scatter is constant, as in every fifth plate, half of the fits end at the edge.
        assertThat(edges).isBetween(80, 130);
    }

    @Test
    void noPairOfPartsIsMoreLikely() {
        // Blanks that agree well, a few high values that scatter, and many in between that scatter as much as those.
        double[] means = {0, 0.05, 0.1, 0.9, 1.1};
        double[] variances = {1e-7, 9e-6, 1e-5, 1e-5, 2e-5};
        double[] freedom = {3, 20, 20, 4, 4};
        VarianceFunction fit = VarianceFunction.fit(means, variances, freedom);
        double found = likelihood(fit.constant(), fit.proportional(), means, variances, freedom);
        for (double c = -20; c < -8; c += 0.02) {
            for (double p = -20; p < 0; p += 0.02) {
                assertThat(likelihood(Math.exp(c), Math.exp(p), means, variances, freedom))
                        .isLessThanOrEqualTo(found);
            }
        }
    }

    private static double likelihood(double c, double p, double[] means, double[] variances, double[] freedom) {
        double sum = 0;
        for (int i = 0; i < means.length; i++) {
            double variance = c + p * means[i] * means[i];
            sum -= freedom[i] / 2 * (Math.log(variance) + variances[i] / variance);
        }
        return sum;
    }

    @Test
    void blanksThatReadTheSameDoNotMakeTheConstantPartVanish() {
        // The likelihood has no bound there; there is a maximum short of it, which the other groups set.
        double[] means = {0, 0.02, 0.05, 0.3, 0.6, 1.0};
        double[] variances = {0, 4e-6, 5e-6, 1.5e-5, 4e-5, 1.1e-4};
        double[] freedom = {1, 4, 4, 4, 4, 4};
        VarianceFunction fit = VarianceFunction.fit(means, variances, freedom);
        assertThat(fit.constant()).isBetween(2e-6, 5e-6);
        assertThat(fit.proportional()).isBetween(7e-5, 1.5e-4);
        // Where there is none the pooled variance serves.
        VarianceFunction steep =
                VarianceFunction.fit(new double[] {0, 0.5, 1}, new double[] {0, 2.5e-5, 1e-4}, new double[] {5, 5, 5});
        assertThat(steep.proportional()).isZero();
        assertThat(steep.constant()).isCloseTo(1.25e-4 / 3, within(1e-12));
    }

    @Test
    void equalScatterEverywhereIsConstant() {
        VarianceFunction fit = VarianceFunction.fit(
                new double[] {0, 0.4, 0.8}, new double[] {4e-6, 4e-6, 4e-6}, new double[] {3, 2, 2});
        assertThat(fit.proportional()).isZero();
        assertThat(fit.constant()).isCloseTo(4e-6, within(1e-18));
        assertThat(fit.degreesOfFreedom(0.4)).isCloseTo(7, within(1e-12));
    }
}
