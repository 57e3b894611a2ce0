package tallywell.numeric;

/**
 * Orthogonal triangular factors of a tall matrix held as columns.
 *
 * <p>Householder reflections, column by column without exchange: the condition of the matrix is not squared, as it is by
 * normal equations. A column that depends on those before it leaves a diagonal element near 0; it is for the caller to
 * look.
 *
 * <p>Source: G. H. Golub and C. F. Van Loan, Matrix Computations, section 5.2 (from memory).
 */
final class Householder {
    private final double[][] columns;
    private final double[] diagonal;
    private final int rows;
    private final int count;
    private final int firstRow;

    private Householder(double[][] columns, int count, int rows, int firstRow) {
        this.firstRow = firstRow;
        this.columns = columns;
        this.count = count;
        this.rows = rows;
        this.diagonal = new double[count];
        for (int k = 0; k < count; k++) {
            reflectOwn(k, firstRow + k);
        }
    }

    /**
     * Factors the first {@code count} columns in place, from row {@code firstRow} on: reflection k works on rows
     * {@code firstRow + k} and below.
     */
    static Householder of(double[][] columns, int count, int rows, int firstRow) {
        return new Householder(columns, count, rows, firstRow);
    }

    private void reflectOwn(int k, int top) {
        double[] v = columns[k];
        double norm = norm(v, top);
        if (norm == 0) {
            return;
        }
        // The sign that adds: the other would cancel.
        double alpha = v[top] > 0 ? -norm : norm;
        diagonal[k] = alpha;
        v[top] -= alpha;
        for (int j = k + 1; j < count; j++) {
            reflect(v, columns[j], top, alpha);
        }
    }

    /** Norm of the part from {@code top} on, by a scale, so that nothing overflows or vanishes. */
    private double norm(double[] v, int top) {
        double sum = Products.dot(v, v, top, rows);
        if (sum > 1e-280 && sum < 1e280) {
            return Math.sqrt(sum);
        }
        double largest = 0;
        for (int i = top; i < rows; i++) {
            largest = Math.max(largest, Math.abs(v[i]));
        }
        if (largest == 0) {
            return 0;
        }
        sum = 0;
        for (int i = top; i < rows; i++) {
            sum += v[i] / largest * (v[i] / largest);
        }
        return largest * Math.sqrt(sum);
    }

    private void reflect(double[] v, double[] target, int top, double alpha) {
        // v'v / 2 = -alpha v[top].
        double factor = Products.dot(v, target, top, rows) / (alpha * v[top]);
        for (int i = top; i < rows; i++) {
            target[i] += factor * v[i];
        }
    }

    /** Applies the transposed orthogonal factor to a column, in place. */
    void apply(double[] target) {
        for (int k = 0; k < count; k++) {
            if (diagonal[k] != 0) {
                reflect(columns[k], target, firstRow + k, diagonal[k]);
            }
        }
    }

    /** Element (row, column) of the triangle, row at most column. */
    double triangle(int row, int column) {
        return row == column ? diagonal[column] : columns[column][firstRow + row];
    }

    /** Whether no diagonal element is smaller than {@code tolerance} times the length of its column. */
    boolean isRegular(double tolerance) {
        for (int k = 0; k < count; k++) {
            double length = 0;
            for (int i = 0; i <= k; i++) {
                length = Math.hypot(length, triangle(i, k));
            }
            if (!(Math.abs(diagonal[k]) > tolerance * length)) {
                return false;
            }
        }
        return true;
    }

    /** Solves triangle · x = rhs, of which the first {@code count} elements are read. */
    double[] solve(double[] rhs) {
        double[] x = new double[count];
        for (int i = count - 1; i >= 0; i--) {
            double sum = rhs[i];
            for (int j = i + 1; j < count; j++) {
                sum -= triangle(i, j) * x[j];
            }
            x[i] = sum / diagonal[i];
        }
        return x;
    }
}
