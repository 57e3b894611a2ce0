package tallywell.numeric;

import java.util.Arrays;

/**
 * A straight line through points that differ by more than their own uncertainty: weighted least squares with a variance
 * between the points.
 *
 * <pre>{@code
 * y[i] = a + b x[i] + between + own        var(own) = u[i]², var(between) the same for all, w[i] = 1 / (u[i]² + between)
 * }</pre>
 *
 * <p>The variance between is the one at which the weighted sum of squared residuals is n − 2 (Mandel and Paule, Analytical
 * Chemistry 42 (1970) 1194, carried over from a mean to a line; in meta-analysis the random-effects regression), or 0 where
 * the points differ by no more than they may. Then the variance of a point of weight 1 is 1, so that the cofactors are the
 * covariances.
 *
 * @param intercept a, in the unit of y
 * @param slope b, in the unit of y for one of x
 * @param uSlope standard uncertainty of b
 * @param between variance between the points, in the squared unit of y
 * @param degreesOfFreedom of t for the slope, n − 2
 */
public record RandomEffectsLine(double intercept, double slope, double uSlope, double between, int degreesOfFreedom) {
    private static final int HALVINGS = 200;

    /** Smallest variance between, as a part of the variance of y, so that points without an uncertainty have a weight. */
    private static final double LEAST = 1e-12;

    /**
     * Fits a line.
     *
     * @param x n abscissas, n at least 3, two of which differ
     * @param y n ordinates
     * @param u their standard uncertainties, at least 0; 0 where nothing is known of one
     * @throws IllegalArgumentException if the series determine no line
     */
    public static RandomEffectsLine fit(double[] x, double[] y, double[] u) {
        Series.atLeast("x", x, 3);
        Series.sameLength("y", y, x.length);
        Series.sameLength("u", u, x.length);
        double low = LEAST * spread(y);
        double high = spread(y);
        if (!(excess(x, y, u, low) > 0)) {
            return of(fitted(x, y, u, low), low);
        }
        for (int i = 0; i < HALVINGS && high - low > 1e-15 * high; i++) {
            double middle = (low + high) / 2;
            if (excess(x, y, u, middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return of(fitted(x, y, u, high), high);
    }

    /** Sum of squares about the mean: at this variance between, the residuals of any line come to less than n − 2. */
    private static double spread(double[] y) {
        double mean = Arrays.stream(y).average().orElseThrow();
        double squares =
                Arrays.stream(y).map(each -> (each - mean) * (each - mean)).sum();
        return squares > 0 ? squares : Double.MIN_NORMAL;
    }

    private static double excess(double[] x, double[] y, double[] u, double between) {
        return fitted(x, y, u, between).sumOfSquares() - (x.length - 2);
    }

    private static Regression fitted(double[] x, double[] y, double[] u, double between) {
        return StraightLine.fit(
                x, y, Arrays.stream(u).map(each -> 1 / (each * each + between)).toArray());
    }

    private static RandomEffectsLine of(Regression fit, double between) {
        return new RandomEffectsLine(
                fit.parameter(0), fit.parameter(1), Math.sqrt(fit.cofactor(1, 1)), between, fit.degreesOfFreedom());
    }
}
