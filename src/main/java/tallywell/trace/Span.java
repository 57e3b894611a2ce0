package tallywell.trace;

import tallywell.numeric.Products;

/** The space spanned by a few columns, by Gram and Schmidt's method, done twice where once would not keep it
 * orthogonal. */
final class Span {
    private final double[][] unit;
    private int size;

    Span(int most) {
        unit = new double[most][];
    }

    /** Adds a column; one that lies in the space already adds nothing. */
    void add(double[] column) {
        double[] v = column.clone();
        double whole = dot(v, v);
        double left = freed(v, whole);
        if (left > 1e-18 * whole) {
            double scale = 1 / Math.sqrt(left);
            for (int i = 0; i < v.length; i++) {
                v[i] *= scale;
            }
            unit[size++] = v;
        }
    }

    /** Takes the part in the space off and gives the square that is left; once more where much was taken. */
    private double freed(double[] v, double whole) {
        takeOff(v);
        double left = dot(v, v);
        if (left < 0.1 * whole) {
            takeOff(v);
            left = dot(v, v);
        }
        return left;
    }

    /** Takes the part in the space off a column, in place. */
    void takeOff(double[] column) {
        for (int k = 0; k < size; k++) {
            double d = dot(unit[k], column);
            for (int i = 0; i < column.length; i++) {
                column[i] -= d * unit[k][i];
            }
        }
    }

    /** Takes the part in the space off a column, in place; the square that is left, or 0 if it lay in the space. */
    double freed(double[] column) {
        double whole = dot(column, column);
        double left = freed(column, whole);
        return left > 1e-12 * whole ? left : 0;
    }

    /** By how much the sum of squares of a residual (of which this space was taken off) would fall with one column more. */
    double gain(double[] column, double[] residual) {
        double[] v = column.clone();
        double whole = dot(v, v);
        double left = freed(v, whole);
        double product = dot(v, residual);
        return left > 1e-12 * whole ? product * product / left : 0;
    }

    /**
     * A jump of the trace at one reading.
     *
     * @param at row of the first reading after it, or -1 if none could be looked for
     * @param gain by how much it lets the sum of squares fall
     */
    record Jump(int at, double gain) {}

    /**
     * The jump that would let the sum of squares of a residual fall most.
     *
     * @param level the column of a constant, row 0 being the baseline
     * @param first row i of the column of a jump at reading i; the rows after it are those of {@code level}
     * @param residual residual of which this space was taken off
     * @param from first reading that may jump
     */
    Jump jump(double[] level, double[] first, double[] residual, int from) {
        int n = level.length;
        double[] inSpace = new double[size];
        double whole = 0;
        double product = 0;
        double most = 0;
        int at = -1;
        for (int i = n - 1; i > from; i--) {
            double own = first[i];
            double left = whole + own * own;
            for (int k = 0; k < size; k++) {
                double d = inSpace[k] + unit[k][i] * own;
                left -= d * d;
                inSpace[k] += unit[k][i] * level[i];
            }
            double p = product + residual[i] * own;
            // A jump that the space explains but for a fifth of one reading cannot be told from it.
            if (left > 0.2 * own * own && p * p > most * left) {
                most = p * p / left;
                at = i;
            }
            whole += level[i] * level[i];
            product += residual[i] * level[i];
        }
        return new Jump(at, most);
    }

    /** What a residual of which this space was taken off becomes once a jump is allowed, too. */
    double[] without(Jump jump, double[] level, double[] first, double[] residual) {
        double[] v = new double[level.length];
        System.arraycopy(level, jump.at, v, jump.at, level.length - jump.at);
        v[jump.at] = first[jump.at];
        double left = freed(v, dot(v, v));
        double size = dot(v, residual) / left;
        double[] rest = residual.clone();
        for (int i = 0; i < v.length; i++) {
            rest[i] -= size * v[i];
        }
        return rest;
    }

    /** Sum of products of neighbours. */
    static double neighbours(double[] a) {
        double sum = 0;
        for (int i = 1; i < a.length; i++) {
            sum += a[i] * a[i - 1];
        }
        return sum;
    }

    static double dot(double[] a, double[] b) {
        return Products.dot(a, b, 0, a.length);
    }
}
