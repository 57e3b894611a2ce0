package tallywell.numeric;

/**
 * Solves small symmetric positive definite systems.
 *
 * <p>Rows are scaled to a diagonal of 1 first, so that parameters in different units do not matter; a pivot lost to
 * rounding is held at the smallest that still divides.
 */
public final class Cholesky {
    private static final double LEAST_PIVOT = 1e-14;

    private Cholesky() {}

    /** The x of a·x = b; neither argument is kept or changed. */
    public static double[] solve(double[][] a, double[] b) {
        int n = b.length;
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            scale[i] = a[i][i] > 0 ? 1 / Math.sqrt(a[i][i]) : 1;
        }
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i][j] * scale[i] * scale[j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                l[i][j] = i == j ? Math.sqrt(Math.max(sum, LEAST_PIVOT)) : sum / l[j][j];
            }
        }
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = b[i] * scale[i];
            for (int k = 0; k < i; k++) {
                sum -= l[i][k] * x[k];
            }
            x[i] = sum / l[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = x[i];
            for (int k = i + 1; k < n; k++) {
                sum -= l[k][i] * x[k];
            }
            x[i] = sum / l[i][i];
        }
        for (int i = 0; i < n; i++) {
            x[i] *= scale[i];
        }
        return x;
    }
}
