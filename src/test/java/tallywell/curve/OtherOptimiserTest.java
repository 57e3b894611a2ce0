package tallywell.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DiagonalMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.numeric.VarianceFunction;

/** Every calibration curve at the same minimum as the optimiser of Commons Math 3.6.1 (Levenberg and Marquardt). */
class OtherOptimiserTest {
    private static final double[] LEVELS = {0.02, 0.02, 0.05, 0.05, 0.1, 0.1, 0.2, 0.2, 0.3, 0.3, 0.5, 0.5, 0.8, 0.8};
    private static final int SETS = 40;

    @ParameterizedTest
    @CsvSource({
        "line, none",
        "line, 1/x",
        "line, 1/x2",
        "line, 1/y",
        "line, variance-function",
        "line-through-zero, none",
        "line-through-zero, 1/x",
        "line-through-zero, variance-function",
        "quadratic, none",
        "quadratic, 1/x2",
        "quadratic, variance-function",
        "logistic-4, none",
        "logistic-4, 1/y",
        "logistic-4, variance-function",
        "logistic-5, none",
        "logistic-5, variance-function"
    })
    void minimaAreTheSame(String word, String weights) throws StandardsException {
        Model model = Model.of(word).orElseThrow();
        Weigher weigher = weights.equals("variance-function")
                ? FittedVariance.ofBlank(
                        VarianceFunction.fit(
                                new double[] {0, 0.3, 0.8}, new double[] {2e-6, 1e-5, 7e-5}, new double[] {7, 10, 10}),
                        1)
                : Weighting.of(weights).orElseThrow();
        int compared = 0;
        for (int set = 0; set < SETS; set++) {
            double[] y = responses(model, new SplittableRandom(set));
            Calibration ours;
            try {
                ours = Calibrator.fit(LEVELS, y, model, weigher);
            } catch (StandardsException undetermined) {
                continue;
            }
            double[] p = new double[ours.curve().size()];
            Arrays.setAll(p, i -> ours.curve().coefficient(i));
            double[] w = ours.standards().stream().mapToDouble(Standard::weight).toArray();
            double best = ours.fit().sumOfSquares();
            double theirs = minimum(
                    model, y, w, Arrays.stream(p).map(each -> 1.03 * each).toArray());
            assertThat(best).as("%s, %s, set %d", word, weights, set).isLessThan(theirs * (1 + 1e-8));
            // From near our minimum theirs ends there, too: it is one, and their sum is no lower.
            assertThat(theirs).as("%s, %s, set %d", word, weights, set).isLessThan(best * (1 + 1e-8));
            compared++;
        }
        assertThat(compared).isGreaterThan(SETS * 3 / 4);
    }

    private static double[] responses(Model model, SplittableRandom random) {
        double top = 0.8 + 1.2 * random.nextDouble();
        double middle = 0.1 + 0.2 * random.nextDouble();
        double steep = 1.1 + random.nextDouble();
        return Arrays.stream(LEVELS)
                .map(x -> switch (model) {
                    case LINE, LINE_THROUGH_ZERO -> top * x;
                    case QUADRATIC -> top * (x - 0.4 * x * x);
                    default -> top - top / (1 + Math.pow(x / middle, steep));
                })
                .map(each -> each + 0.02 + (0.001 + 0.006 * each) * random.nextGaussian())
                .toArray();
    }

    private static double minimum(Model model, double[] y, double[] w, double[] start) {
        LeastSquaresOptimizer.Optimum optimum = new LevenbergMarquardtOptimizer(100, 1e-14, 1e-14, 1e-14, 1e-100)
                .optimize(new LeastSquaresBuilder()
                        .start(start)
                        .target(y)
                        .weight(new DiagonalMatrix(w))
                        .model(point -> valueAndSlopes(model, point))
                        .maxEvaluations(20_000)
                        .maxIterations(20_000)
                        .build());
        return optimum.getCost() * optimum.getCost();
    }

    private static Pair<RealVector, RealMatrix> valueAndSlopes(Model model, RealVector point) {
        double[] p = point.toArray();
        double[] values = new double[LEVELS.length];
        double[][] slopes = new double[LEVELS.length][p.length];
        for (int i = 0; i < LEVELS.length; i++) {
            values[i] = value(model, p, LEVELS[i]);
            for (int k = 0; k < p.length; k++) {
                double h = 1e-6 * Math.max(Math.abs(p[k]), 1e-3);
                double[] up = p.clone();
                double[] down = p.clone();
                up[k] += h;
                down[k] -= h;
                slopes[i][k] = (value(model, up, LEVELS[i]) - value(model, down, LEVELS[i])) / (2 * h);
            }
        }
        return new Pair<>(new ArrayRealVector(values), new Array2DRowRealMatrix(slopes));
    }

    /** The formulas of docs/formats.md, written down anew. */
    private static double value(Model model, double[] p, double x) {
        return switch (model) {
            case LINE -> p[0] + p[1] * x;
            case LINE_THROUGH_ZERO -> p[0] * x;
            case QUADRATIC -> p[0] + p[1] * x + p[2] * x * x;
            case LOGISTIC_4 -> p[3] + (p[0] - p[3]) / (1 + Math.pow(x / p[2], p[1]));
            case LOGISTIC_5 -> p[3] + (p[0] - p[3]) / Math.pow(1 + Math.pow(x / p[2], p[1]), p[4]);
        };
    }
}
