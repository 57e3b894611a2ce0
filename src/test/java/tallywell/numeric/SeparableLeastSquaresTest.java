package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.Published;

/** Nonlinear fits against the certified values of NIST and against fits recomputed at 50 digits. */
class SeparableLeastSquaresTest {
    private static final SeparableLeastSquares SOLVER = new SeparableLeastSquares(500, 1e-26);

    /**
     * NIST StRD, nonlinear regression; the files travel with the tests of Commons Math 3.6.1. Only the starts of the
     * nonlinear parameters are used. From the first start of MGH17 both exponentials are 0 in double precision from the
     * second reading on (exp(-10), exp(-20) and less), yet the fit is possible. Lanczos1 has residuals of 1e-13, at the
     * last digit of its data, so that its standard deviations are those of rounding: they are compared to 1 digit.
     */
    @ParameterizedTest
    @CsvSource({
        "MGH17, 1, 9, 9",
        "MGH17, 2, 9, 9",
        "Lanczos1, 1, 9, 1",
        "Lanczos1, 2, 9, 1",
        "Hahn1, 1, 8, 8",
        "Hahn1, 2, 8, 8"
    })
    void certifiedValuesComeBack(String set, int start, int digits, int digitsOfSd) {
        Nist nist = Nist.read(set);
        double[] from = Arrays.stream(nist.nonlinear)
                .mapToDouble(index -> nist.parameters.get(index)[start - 1])
                .toArray();

        SeparableFit fit = SOLVER.fit(nist.model(), nist.y, from).orElseThrow();

        int[] order = nist.order();
        for (int i = 0; i < order.length; i++) {
            double[] certified = nist.parameters.get(order[i]);
            String name = set + " b" + (order[i] + 1);
            check(name, fit.regression().parameter(i), certified[2], digits);
            check(name + " its SD", fit.regression().standardError(i), certified[3], digitsOfSd);
        }
    }

    private static void check(String what, double value, double certified, int digits) {
        assertThat(Published.agreement(value, certified))
                .as(String.format(Locale.ROOT, "digits of %s: %s against %s (NIST StRD)", what, value, certified))
                .isGreaterThanOrEqualTo(digits);
    }

    @ParameterizedTest
    @CsvSource({"BOD, 0.3, 1", "Puromycin treated, 0.2, 1", "Puromycin untreated, 0.2, 1"})
    void fitsOfRComeBack(String set, double start, int digitsShort) {
        Published data = Published.read("nonlinear_data").where("set", set);
        Published expected = Published.read("nonlinear_fits").where("dataset", set);
        double[] x = data.column("x");
        SeparableModel model = set.equals("BOD")
                ? new OneColumn(x, (k, t) -> 1 - Math.exp(-k * t), (k, t) -> t * Math.exp(-k * t))
                : new OneColumn(x, (k, c) -> c / (k + c), (k, c) -> -c / ((k + c) * (k + c)));

        Regression fit = SOLVER.fit(model, data.column("y"), new double[] {start})
                .orElseThrow()
                .regression();

        // The table has the linear parameter first.
        for (int i = 0; i < 2; i++) {
            expected.check(set, fit.parameter(1 - i), expected.number(i, "estimate"), 10 - digitsShort);
            expected.check(set + " se", fit.standardError(1 - i), expected.number(i, "se"), 9 - digitsShort);
        }
        expected.check(set + " rss", fit.sumOfSquares(), expected.number(0, "rss"), 12);
    }

    @Test
    void scalingTheObservationsScalesOnlyTheLinearParameters() {
        Published data = Published.read("nonlinear_data").where("set", "BOD");
        SeparableModel model =
                new OneColumn(data.column("x"), (k, t) -> 1 - Math.exp(-k * t), (k, t) -> t * Math.exp(-k * t));
        double[] y = data.column("y");
        double[] thousandfold = Arrays.stream(y).map(each -> 1000 * each).toArray();

        Regression one = SOLVER.fit(model, y, new double[] {1}).orElseThrow().regression();
        Regression other =
                SOLVER.fit(model, thousandfold, new double[] {1}).orElseThrow().regression();

        assertThat(Published.agreement(other.parameter(0), one.parameter(0))).isGreaterThan(7);
        assertThat(Published.agreement(other.parameter(1), 1000 * one.parameter(1)))
                .isGreaterThan(7);
    }

    @Test
    void columnsThatDependOnEachOtherGiveNoFit() {
        SeparableModel twice = new AtFixedX(new double[4], 2, 1) {
            @Override
            public boolean basis(double[] theta, double[][] basis) {
                Arrays.fill(basis[0], theta[0]);
                Arrays.fill(basis[1], 2 * theta[0]);
                return true;
            }

            @Override
            public void slopes(double[] theta, double[] c, double[][] slopes) {
                Arrays.fill(slopes[0], 1);
            }
        };

        assertThat(SOLVER.fit(twice, new double[] {1, 2, 3, 4}, new double[] {1}))
                .isEmpty();
    }

    @Test
    void fewerObservationsThanParametersAreRefused() {
        SeparableModel model = new OneColumn(new double[] {1}, (k, t) -> k * t, (k, t) -> t);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> SOLVER.fit(model, new double[] {1}, new double[] {1}))
                .withMessage("y must have length of at least 2 but was 1");
    }

    /** A model at fixed x. */
    private abstract static class AtFixedX implements SeparableModel {
        final double[] x;
        private final int linear;
        private final int nonlinear;

        AtFixedX(double[] x, int linear, int nonlinear) {
            this.x = x;
            this.linear = linear;
            this.nonlinear = nonlinear;
        }

        @Override
        public int rows() {
            return x.length;
        }

        @Override
        public int linear() {
            return linear;
        }

        @Override
        public int nonlinear() {
            return nonlinear;
        }
    }

    private interface Function {
        double of(double theta, double x);
    }

    /** y = c f(theta, x). */
    private static final class OneColumn extends AtFixedX {
        private final Function f;
        private final Function slope;

        OneColumn(double[] x, Function f, Function slope) {
            super(x, 1, 1);
            this.f = f;
            this.slope = slope;
        }

        @Override
        public boolean basis(double[] theta, double[][] basis) {
            for (int i = 0; i < x.length; i++) {
                basis[0][i] = f.of(theta[0], x[i]);
            }
            return true;
        }

        @Override
        public void slopes(double[] theta, double[] c, double[][] slopes) {
            for (int i = 0; i < x.length; i++) {
                slopes[0][i] = c[0] * slope.of(theta[0], x[i]);
            }
        }
    }

    /** A set of NIST: parameters as start 1, start 2, certified, its standard deviation. */
    private static final class Nist {
        private final String set;
        private final List<double[]> parameters;
        private final double[] y;
        private final double[] x;
        private final int[] nonlinear;

        private Nist(String set, List<double[]> parameters, double[] y, double[] x) {
            this.set = set;
            this.parameters = parameters;
            this.y = y;
            this.x = x;
            this.nonlinear = switch (set) {
                case "MGH17" -> new int[] {3, 4};
                case "Lanczos1" -> new int[] {1, 3, 5};
                default -> new int[] {4, 5, 6};
            };
        }

        static Nist read(String set) {
            String name = "/org/apache/commons/math3/fitting/leastsquares/" + set + ".dat";
            try (InputStream in = SeparableLeastSquaresTest.class.getResourceAsStream(name)) {
                List<String> lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII))
                        .lines()
                        .toList();
                List<double[]> parameters = lines.stream()
                        .map(String::strip)
                        .filter(line -> line.matches("b\\d\\s*=.*"))
                        .map(line -> numbers(line.substring(line.indexOf('=') + 1)))
                        .toList();
                int data = 60;
                List<double[]> rows = lines.subList(data, lines.size()).stream()
                        .filter(line -> !line.isBlank())
                        .map(Nist::numbers)
                        .toList();
                return new Nist(
                        set,
                        parameters,
                        rows.stream().mapToDouble(row -> row[0]).toArray(),
                        rows.stream().mapToDouble(row -> row[1]).toArray());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        private static double[] numbers(String text) {
            return Arrays.stream(text.strip().split("\\s+"))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
        }

        /** Index of the parameter of NIST for each of ours: nonlinear, then linear. */
        int[] order() {
            return switch (set) {
                case "MGH17" -> new int[] {3, 4, 0, 1, 2};
                case "Lanczos1" -> new int[] {1, 3, 5, 0, 2, 4};
                default -> new int[] {4, 5, 6, 0, 1, 2, 3};
            };
        }

        SeparableModel model() {
            return set.equals("Hahn1") ? new Rational(x) : new Exponentials(x, set.equals("MGH17"));
        }
    }

    /** Sum of exponentials, with a constant first or not. */
    private static final class Exponentials extends AtFixedX {
        private final boolean constant;

        Exponentials(double[] x, boolean constant) {
            super(x, 3, constant ? 2 : 3);
            this.constant = constant;
        }

        @Override
        public boolean basis(double[] theta, double[][] basis) {
            int first = constant ? 1 : 0;
            Arrays.fill(basis[0], 1);
            for (int k = 0; k < theta.length; k++) {
                for (int i = 0; i < x.length; i++) {
                    basis[first + k][i] = Math.exp(-theta[k] * x[i]);
                }
            }
            return true;
        }

        @Override
        public void slopes(double[] theta, double[] c, double[][] slopes) {
            int first = constant ? 1 : 0;
            for (int k = 0; k < theta.length; k++) {
                for (int i = 0; i < x.length; i++) {
                    slopes[k][i] = -c[first + k] * x[i] * Math.exp(-theta[k] * x[i]);
                }
            }
        }
    }

    /** (b1 + b2 x + b3 x² + b4 x³) / (1 + b5 x + b6 x² + b7 x³). */
    private static final class Rational extends AtFixedX {
        Rational(double[] x) {
            super(x, 4, 3);
        }

        private double below(double[] theta, int i) {
            return 1 + x[i] * (theta[0] + x[i] * (theta[1] + x[i] * theta[2]));
        }

        @Override
        public boolean basis(double[] theta, double[][] basis) {
            for (int i = 0; i < x.length; i++) {
                double power = 1 / below(theta, i);
                for (int k = 0; k < 4; k++) {
                    basis[k][i] = power;
                    power *= x[i];
                }
            }
            return true;
        }

        @Override
        public void slopes(double[] theta, double[] c, double[][] slopes) {
            for (int i = 0; i < x.length; i++) {
                double below = below(theta, i);
                double above = c[0] + x[i] * (c[1] + x[i] * (c[2] + x[i] * c[3]));
                double power = -above / (below * below);
                for (int k = 0; k < 3; k++) {
                    power *= x[i];
                    slopes[k][i] = power;
                }
            }
        }
    }
}
