package tallywell.numeric;

/**
 * Fits a straight line with a free intercept by weighted least squares.
 *
 * <pre>{@code
 * minimise  sum of w[i] (y[i] - a - b x[i])²       parameters: 0 = a, 1 = b
 * }</pre>
 *
 * <p>The three series have equal length n and go together by index; a is in the unit of y, b in that unit per unit of
 * x. Only the ratios of the weights matter to a and b; the residual variance is that of a point of weight 1.
 *
 * <p>Two points, or points at two values of x, are fitted; with n = 2 there is no residual variance.
 *
 * <p>Sums are taken about the weighted means, since the textbook form loses half the digits when x lies far from zero.
 * The NIST set Norris comes back to at least 12 digits.
 *
 * <p>Source: any textbook; certified values by NIST, Statistical Reference Datasets, linear regression.
 */
public final class StraightLine {
    private StraightLine() {}

    /**
     * Fits a line.
     *
     * @param x n finite abscissas, n at least 2
     * @param y n finite ordinates
     * @param w n positive weights
     * @throws IllegalArgumentException unless n >= 2, every w[i] > 0 and at least two x differ
     */
    public static Regression fit(double[] x, double[] y, double[] w) {
        check(x, y, w);
        double weight = 0;
        double meanX = 0;
        double meanY = 0;
        for (int i = 0; i < x.length; i++) {
            weight += w[i];
            meanX += w[i] * x[i];
            meanY += w[i] * y[i];
        }
        meanX /= weight;
        meanY /= weight;
        double restX = 0;
        double restY = 0;
        for (int i = 0; i < x.length; i++) {
            restX += w[i] * (x[i] - meanX);
            restY += w[i] * (y[i] - meanY);
        }
        meanX += restX / weight;
        meanY += restY / weight;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (int i = 0; i < x.length; i++) {
            double dx = x[i] - meanX;
            double dy = y[i] - meanY;
            sxx += w[i] * dx * dx;
            sxy += w[i] * dx * dy;
            syy += w[i] * dy * dy;
        }
        double slope = sxy / sxx;
        double residual = 0;
        for (int i = 0; i < x.length; i++) {
            double r = y[i] - meanY - slope * (x[i] - meanX);
            residual += w[i] * r * r;
        }
        double[][] cofactors = {{1 / weight + meanX * meanX / sxx, -meanX / sxx}, {-meanX / sxx, 1 / sxx}};
        return new Regression(new double[] {meanY - slope * meanX, slope}, cofactors, x.length, residual, syy);
    }

    private static void check(double[] x, double[] y, double[] w) {
        Series.atLeast("x", x, 2);
        Series.sameLength("y", y, x.length);
        Series.sameLength("w", w, x.length);
        Series.finite("x", x);
        Series.finite("y", y);
        Series.positive("w", w);
        double first = x[0];
        for (double value : x) {
            if (value != first) {
                return;
            }
        }
        throw new IllegalArgumentException(
                "x must hold at least two different values but was " + first + " throughout");
    }
}
