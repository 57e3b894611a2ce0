package tallywell.numeric;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.Published;

/** Sigmoid growth, a peak and variances within groups against certified values of NIST (from memory, see the files). */
class NistNonlinearTest {
    private static final SeparableLeastSquares SOLVER = new SeparableLeastSquares(500, 1e-26);

    private abstract static class OneColumnOf implements SeparableModel {
        final double[] x;
        private final int nonlinear;

        OneColumnOf(double[] x, int nonlinear) {
            this.x = x;
            this.nonlinear = nonlinear;
        }

        @Override
        public int rows() {
            return x.length;
        }

        @Override
        public int linear() {
            return 1;
        }

        @Override
        public int nonlinear() {
            return nonlinear;
        }
    }

    /** (1 + exp(b2 - b3 x))^(-1/b4). */
    private static final class Growth extends OneColumnOf {
        Growth(double[] x) {
            super(x, 3);
        }

        @Override
        public boolean basis(double[] theta, double[][] basis) {
            for (int i = 0; i < x.length; i++) {
                basis[0][i] = Math.pow(1 + Math.exp(theta[0] - theta[1] * x[i]), -1 / theta[2]);
            }
            return theta[2] > 0;
        }

        @Override
        public void slopes(double[] theta, double[] c, double[][] slopes) {
            for (int i = 0; i < x.length; i++) {
                double e = Math.exp(theta[0] - theta[1] * x[i]);
                double value = c[0] * Math.pow(1 + e, -1 / theta[2]);
                slopes[0][i] = -value / theta[2] * e / (1 + e);
                slopes[1][i] = -slopes[0][i] * x[i];
                slopes[2][i] = value * Math.log1p(e) / (theta[2] * theta[2]);
            }
        }
    }

    /** exp(-((x - b3) / b2)² / 2) / b2. */
    private static final class Peak extends OneColumnOf {
        Peak(double[] x) {
            super(x, 2);
        }

        @Override
        public boolean basis(double[] theta, double[][] basis) {
            for (int i = 0; i < x.length; i++) {
                double z = (x[i] - theta[1]) / theta[0];
                basis[0][i] = Math.exp(-z * z / 2) / theta[0];
            }
            return theta[0] > 0;
        }

        @Override
        public void slopes(double[] theta, double[] c, double[][] slopes) {
            for (int i = 0; i < x.length; i++) {
                double z = (x[i] - theta[1]) / theta[0];
                double value = c[0] * Math.exp(-z * z / 2) / theta[0];
                slopes[0][i] = value * (z * z - 1) / theta[0];
                slopes[1][i] = value * z / theta[0];
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"10, 1, 1", "5, 0.75, 1.3"})
    void sigmoidGrowthComesBack(double b2, double b3, double b4) {
        Published data = Published.read("nist_rat43");
        Regression fit = SOLVER.fit(new Growth(data.column("x")), data.column("y"), new double[] {b2, b3, b4})
                .orElseThrow()
                .regression();
        certified(data, fit, new double[] {5.2771253025, 0.75962938329, 1.2792483859, 699.64151270}, 8);
        certifiedErrors(data, fit, new double[] {2.0828735829, 0.19566123451, 0.68761936385, 16.302297817}, 7);
        data.check("residual sum of squares", fit.sumOfSquares(), 8786.4049080, 10);
    }

    /** The second start of NIST; from the first, centre 500 and width 10, the peak has no reading under it. */
    @Test
    void peakComesBack() {
        Published data = Published.read("nist_eckerle4");
        Regression fit = SOLVER.fit(new Peak(data.column("x")), data.column("y"), new double[] {5, 450})
                .orElseThrow()
                .regression();
        certified(data, fit, new double[] {4.0888321754, 451.54121844, 1.5543827178}, 9);
        certifiedErrors(data, fit, new double[] {0.046803020753, 0.046800518816, 0.015408051163}, 8);
        data.check("residual sum of squares", fit.sumOfSquares(), 1.4635887487e-3, 9);
    }

    private static void certified(Published data, Regression fit, double[] values, int digits) {
        for (int i = 0; i < values.length; i++) {
            data.check("parameter " + i, fit.parameter(i), values[i], digits);
        }
    }

    private static void certifiedErrors(Published data, Regression fit, double[] values, int digits) {
        for (int i = 0; i < values.length; i++) {
            data.check("standard deviation " + i, fit.standardError(i), values[i], digits);
        }
    }

    @Test
    void varianceWithinGroupsIsThatOfTheAnalysisOfVariance() {
        Published data = Published.read("nist_sirstv");
        double[] variances = new double[5];
        double[] freedom = new double[5];
        for (int k = 0; k < 5; k++) {
            double[] group = data.where("instrument", Integer.toString(k + 1)).column("resistivity");
            double mean = Arrays.stream(group).average().orElseThrow();
            freedom[k] = group.length - 1;
            variances[k] = Arrays.stream(group)
                            .map(each -> (each - mean) * (each - mean))
                            .sum()
                    / freedom[k];
        }
        VarianceFunction pooled = VarianceFunction.pooled(variances, freedom);
        data.check("mean square within", pooled.at(1), 1.08318280e-2, 9);
        data.check("residual SD", Math.sqrt(pooled.constant()), 1.04076068334656e-1, 10);
        data.check("degrees of freedom", pooled.degreesOfFreedom(1), 20, 12);
    }
}
