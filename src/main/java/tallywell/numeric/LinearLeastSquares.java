package tallywell.numeric;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Solves a linear least-squares problem by orthogonal triangularisation.
 *
 * <p>The columns are brought to equal length first. The solution is then corrected twice by solving for its own
 * residuals, which are formed in twice the working precision: without that, high powers of x cost the low coefficients
 * half their digits.
 */
final class LinearLeastSquares {
    private static final int CORRECTIONS = 2;

    private final double[][] design;
    private final double[] y;
    private final double[] root;
    private final double[] scale;
    private final double[] solution;
    private final double[][] cofactors;

    /**
     * Solves.
     *
     * @param design n rows of p values
     * @param y n values
     * @param w n positive weights
     * @throws IllegalArgumentException if the columns of the design depend on each other
     */
    LinearLeastSquares(double[][] design, double[] y, double[] w) {
        this.design = design;
        this.y = y;
        this.root = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            root[i] = Math.sqrt(w[i]);
        }
        this.scale = scales();
        RealMatrix scaled = new Array2DRowRealMatrix(y.length, scale.length);
        for (int i = 0; i < y.length; i++) {
            for (int j = 0; j < scale.length; j++) {
                scaled.setEntry(i, j, root[i] * design[i][j] / scale[j]);
            }
        }
        DecompositionSolver solver = new QRDecomposition(scaled, 1e-13).getSolver();
        if (!solver.isNonSingular()) {
            throw new IllegalArgumentException("design must have independent columns but has not");
        }
        this.solution = new double[scale.length];
        for (int round = 0; round <= CORRECTIONS; round++) {
            double[] step = solver.solve(new ArrayRealVector(weightedResiduals(), false))
                    .toArray();
            for (int j = 0; j < scale.length; j++) {
                solution[j] += step[j] / scale[j];
            }
        }
        this.cofactors = cofactors(new QRDecomposition(scaled).getR());
    }

    /** The solution, p values. */
    double[] solution() {
        return solution;
    }

    /** (XᵀWX)⁻¹. */
    double[][] cofactors() {
        return cofactors;
    }

    /** The weighted sum of squared residuals. */
    double sumOfSquares() {
        double sum = 0;
        for (double each : weightedResiduals()) {
            sum += each * each;
        }
        return sum;
    }

    private double[] scales() {
        double[] lengths = new double[design[0].length];
        for (int j = 0; j < lengths.length; j++) {
            double sum = 0;
            for (int i = 0; i < y.length; i++) {
                sum += root[i] * design[i][j] * root[i] * design[i][j];
            }
            lengths[j] = sum > 0 ? Math.sqrt(sum) : 1;
        }
        return lengths;
    }

    private double[] weightedResiduals() {
        double[] residuals = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            // Each product and each sum is followed by its rounding error, so that the small difference of large
            // numbers keeps its digits.
            double sum = y[i];
            double lost = 0;
            for (int j = 0; j < solution.length; j++) {
                double product = -design[i][j] * solution[j];
                lost += Math.fma(-design[i][j], solution[j], -product);
                double next = sum + product;
                double part = next - sum;
                lost += (sum - (next - part)) + (product - part);
                sum = next;
            }
            residuals[i] = root[i] * (sum + lost);
        }
        return residuals;
    }

    /** From R of the scaled design: R⁻¹ R⁻ᵀ, scaled back. */
    private double[][] cofactors(RealMatrix r) {
        int p = scale.length;
        double[][] inverse = new double[p][p];
        for (int k = 0; k < p; k++) {
            for (int i = k; i >= 0; i--) {
                double sum = i == k ? 1 : 0;
                for (int j = i + 1; j <= k; j++) {
                    sum -= r.getEntry(i, j) * inverse[j][k];
                }
                inverse[i][k] = sum / r.getEntry(i, i);
            }
        }
        double[][] product = new double[p][p];
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                for (int k = Math.max(i, j); k < p; k++) {
                    product[i][j] += inverse[i][k] * inverse[j][k];
                }
                product[i][j] /= scale[i] * scale[j];
            }
        }
        return product;
    }
}
