package tallywell.numeric;

import java.util.Arrays;

/**
 * Fits a polynomial with a free constant by weighted least squares.
 *
 * <pre>{@code
 * minimise  sum of w[i] (y[i] - p[0] - p[1] x[i] - … - p[d] x[i]^d)²       parameters: p[0] to p[d]
 * }</pre>
 *
 * <p>The three series have equal length n and go together by index. n = d + 1 is fitted without a residual variance.
 *
 * <p>Orthogonal triangularisation with corrected residuals; the NIST sets Wampler1 and Wampler2, of degree 5, come back
 * to at least 12 digits.
 *
 * <p>Source: certified values by NIST, Statistical Reference Datasets, linear regression.
 */
public final class Polynomial {
    private Polynomial() {}

    /**
     * Fits a polynomial.
     *
     * @param x n finite abscissas, at least d + 1 of them different
     * @param y n finite ordinates
     * @param w n positive weights
     * @param degree d, at least 1
     * @throws IllegalArgumentException unless every w[i] > 0 and at least d + 1 values of x differ
     */
    public static Regression fit(double[] x, double[] y, double[] w, int degree) {
        if (!(degree >= 1)) {
            throw new IllegalArgumentException("degree must be at least 1 but was " + degree);
        }
        Series.sameLength("y", y, x.length);
        Series.sameLength("w", w, x.length);
        Series.finite("x", x);
        Series.finite("y", y);
        Series.positive("w", w);
        long different = Arrays.stream(x).distinct().count();
        if (different <= degree) {
            throw new IllegalArgumentException(
                    "x must hold at least " + (degree + 1) + " different values but was " + different);
        }
        double[][] design = new double[x.length][degree + 1];
        for (int i = 0; i < x.length; i++) {
            design[i][0] = 1;
            for (int j = 1; j <= degree; j++) {
                design[i][j] = design[i][j - 1] * x[i];
            }
        }
        LinearLeastSquares solved = new LinearLeastSquares(design, y, w);
        return new Regression(solved.solution(), solved.cofactors(), x.length, solved.sumOfSquares(), about(y, w));
    }

    /** The weighted sum of squares about the weighted mean. */
    static double about(double[] y, double[] w) {
        double weight = 0;
        double mean = 0;
        for (int i = 0; i < y.length; i++) {
            weight += w[i];
            mean += w[i] * y[i];
        }
        mean /= weight;
        double sum = 0;
        for (int i = 0; i < y.length; i++) {
            sum += w[i] * (y[i] - mean) * (y[i] - mean);
        }
        return sum;
    }
}
