package tallywell.numeric;

/**
 * Fits a straight line through the origin by weighted least squares.
 *
 * <pre>{@code
 * minimise  sum of w[i] (y[i] - b x[i])²       parameter: 0 = b
 * }</pre>
 *
 * <p>The three series have equal length n and go together by index; b is in the unit of y per unit of x. One point is
 * fitted; then there is no residual variance. R² is the uncentred one.
 *
 * <p>The slope is corrected once by the slope of its own residuals, which brings the NIST sets NoInt1 and NoInt2 back
 * to at least 13 digits.
 *
 * <p>Source: certified values by NIST, Statistical Reference Datasets, linear regression.
 */
public final class LineThroughZero {
    private LineThroughZero() {}

    /**
     * Fits a line through zero.
     *
     * @param x n finite abscissas, n at least 1, not all 0
     * @param y n finite ordinates
     * @param w n positive weights
     * @throws IllegalArgumentException unless n >= 1, every w[i] > 0 and at least one x is not 0
     */
    public static Regression fit(double[] x, double[] y, double[] w) {
        Series.atLeast("x", x, 1);
        Series.sameLength("y", y, x.length);
        Series.sameLength("w", w, x.length);
        Series.finite("x", x);
        Series.finite("y", y);
        Series.positive("w", w);
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (int i = 0; i < x.length; i++) {
            sxx += w[i] * x[i] * x[i];
            sxy += w[i] * x[i] * y[i];
            syy += w[i] * y[i] * y[i];
        }
        if (!(sxx > 0)) {
            throw new IllegalArgumentException("x must hold a value other than 0 but was 0 throughout");
        }
        double slope = sxy / sxx;
        double rest = 0;
        for (int i = 0; i < x.length; i++) {
            rest += w[i] * x[i] * (y[i] - slope * x[i]);
        }
        slope += rest / sxx;
        double residual = 0;
        for (int i = 0; i < x.length; i++) {
            double r = y[i] - slope * x[i];
            residual += w[i] * r * r;
        }
        return new Regression(new double[] {slope}, new double[][] {{1 / sxx}}, x.length, residual, syy);
    }
}
