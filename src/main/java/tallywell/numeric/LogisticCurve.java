package tallywell.numeric;

import java.util.Arrays;
import java.util.Optional;

/**
 * Fits a logistic curve with four or five parameters by weighted least squares.
 *
 * <pre>{@code
 * f(x) = d + (a - d) / (1 + (x/c)^b)^g        parameters: 0 = a, 1 = b, 2 = c, 3 = d, 4 = g (1 where there are four)
 * }</pre>
 *
 * <p>a is the value at x = 0, d the one that is approached for large x, c (&gt; 0) sets the middle, b (&gt; 0) the
 * steepness in ln x and g (&gt; 0) the lack of symmetry. a and d are in the unit of y, c in that of x.
 *
 * <p>Start: b, c and g are taken from a coarse grid; a and d follow from linear least squares for each node, and the
 * best node is kept. Then Levenberg and Marquardt's steps in (a, b, ln c, d, ln g), each solved by orthogonal
 * triangularisation of the damped problem; at the end undamped steps until they lie in the rounding. The fits to DNase
 * Run 1 come back to at least 9 digits.
 *
 * <p>Edges: where the points do not determine the curve (a straight course, no sign of the upper plateau), the steps do
 * not come to rest or the columns depend on each other; then there is no fit.
 *
 * <p>Source: Marquardt (1963), J. SIAM 11, 431; relative offset as in Bates and Watts (1981), Technometrics 23, 179
 * (both from memory). Check values: DNase Run 1, Pinheiro and Bates (2000), recomputed at 50 digits.
 */
public final class LogisticCurve {
    private static final int MOST_STEPS = 300;

    private static final double[] STEEPNESSES = {0.5, 0.8, 1.2, 2, 4};
    private static final double[] ASYMMETRIES = {0.4, 1, 2.5};

    private final double[] x;
    private final double[] y;
    private final double[] w;
    private final int size;

    private LogisticCurve(double[] x, double[] y, double[] w, int size) {
        this.x = x;
        this.y = y;
        this.w = w;
        this.size = size;
    }

    /**
     * Fits a logistic curve.
     *
     * @param x n abscissas, at least 0, as many of them different as there are parameters
     * @param y n finite ordinates
     * @param w n positive weights
     * @param parameters 4 or 5
     * @return the fit, or nothing if the points do not determine the curve
     */
    public static Optional<Regression> fit(double[] x, double[] y, double[] w, int parameters) {
        if (parameters != 4 && parameters != 5) {
            throw new IllegalArgumentException("parameters must be 4 or 5 but was " + parameters);
        }
        Series.sameLength("y", y, x.length);
        Series.sameLength("w", w, x.length);
        Series.finite("x", x);
        Series.finite("y", y);
        Series.positive("w", w);
        if (!(Arrays.stream(x).min().orElse(0) >= 0)) {
            throw new IllegalArgumentException("x must be at least 0 throughout but was not");
        }
        long different = Arrays.stream(x).distinct().count();
        if (different < parameters) {
            throw new IllegalArgumentException(
                    "x must hold at least " + parameters + " different values but was " + different);
        }
        return new LogisticCurve(x, y, w, parameters).solve();
    }

    /**
     * The value of the curve.
     *
     * @param p four or five parameters, in the order of the formula
     * @param x at least 0
     */
    public static double at(double[] p, double x) {
        // From the lower end, so that x = 0 gives a itself.
        return p[0] + (p[3] - p[0]) * above(p, x);
    }

    /** The derivatives of the curve with respect to its parameters, in their order. */
    public static double[] gradient(double[] p, double x) {
        double[] gradient = new double[p.length];
        double part = below(p, x);
        gradient[0] = part;
        gradient[3] = above(p, x);
        if (x > 0) {
            double u = p[1] * Math.log(x / p[2]);
            double byExponent = -(p[0] - p[3]) * asymmetry(p) * part * rise(u);
            gradient[1] = byExponent * Math.log(x / p[2]);
            gradient[2] = -byExponent * p[1] / p[2];
            if (p.length == 5) {
                gradient[4] = -(p[0] - p[3]) * part * softPlus(u);
            }
        }
        return gradient;
    }

    /** The derivative of the curve with respect to x, which may be infinite at x = 0 where b is below 1. */
    public static double slope(double[] p, double x) {
        if (x > 0) {
            double u = p[1] * Math.log(x / p[2]);
            return -(p[0] - p[3]) * asymmetry(p) * below(p, x) * rise(u) * p[1] / x;
        }
        double atZero = (p[3] - p[0]) * asymmetry(p) / p[2];
        return p[1] > 1 ? 0 : p[1] < 1 ? Math.copySign(Double.POSITIVE_INFINITY, atZero) : atZero;
    }

    /** (1 + (x/c)^b)^-g. */
    private static double below(double[] p, double x) {
        return x == 0 ? 1 : Math.exp(-asymmetry(p) * softPlus(p[1] * Math.log(x / p[2])));
    }

    /** 1 - (1 + (x/c)^b)^-g without loss of digits near 0. */
    private static double above(double[] p, double x) {
        return x == 0 ? 0 : -Math.expm1(-asymmetry(p) * softPlus(p[1] * Math.log(x / p[2])));
    }

    /** ln(1 + e^u) without overflow. */
    private static double softPlus(double u) {
        return u > 0 ? u + Math.log1p(Math.exp(-u)) : Math.log1p(Math.exp(u));
    }

    /** e^u / (1 + e^u) without overflow. */
    private static double rise(double u) {
        return u > 0 ? 1 / (1 + Math.exp(-u)) : Math.exp(u) / (1 + Math.exp(u));
    }

    private static double asymmetry(double[] p) {
        return p.length == 5 ? p[4] : 1;
    }

    private Optional<Regression> solve() {
        try {
            double[] best = polished(steps(start()));
            if (!atRest(best)) {
                return Optional.empty();
            }
            LinearLeastSquares last = new LinearLeastSquares(jacobian(best, false), y, w);
            return Optional.of(
                    new Regression(best, last.cofactors(), x.length, sumOfSquares(best), Polynomial.about(y, w)));
        } catch (IllegalArgumentException dependent) {
            // The columns depend on each other: another set of parameters gives the same curve over these points.
            return Optional.empty();
        }
    }

    private double[] start() {
        double least = Arrays.stream(x).filter(each -> each > 0).min().orElseThrow();
        double most = Arrays.stream(x).max().orElseThrow();
        double[] best = {};
        double smallest = Double.POSITIVE_INFINITY;
        for (double steepness : STEEPNESSES) {
            for (double asymmetry : size == 5 ? ASYMMETRIES : new double[] {1}) {
                for (int k = 0; k <= 10; k++) {
                    double middle = Math.exp(Math.log(least) + Math.log(8 * most / least) * k / 10);
                    double[] node = node(steepness, middle, asymmetry);
                    double sum = sumOfSquares(node);
                    if (sum < smallest) {
                        smallest = sum;
                        best = node;
                    }
                }
            }
        }
        return best;
    }

    /** The best a and d for given b, c and g: straight-line least squares against (1 + (x/c)^b)^-g. */
    private double[] node(double steepness, double middle, double asymmetry) {
        double[] p = {0, steepness, middle, 0, asymmetry};
        double[] part = Arrays.stream(x).map(each -> below(p, each)).toArray();
        Regression line = StraightLine.fit(part, y, w);
        p[3] = line.parameter(0);
        p[0] = line.parameter(0) + line.parameter(1);
        return Arrays.copyOf(p, size);
    }

    private double[] steps(double[] from) {
        double[] p = from;
        double sum = sumOfSquares(p);
        double damping = 1e-3;
        for (int i = 0; i < MOST_STEPS && damping < 1e15; i++) {
            double[] step = step(p, damping);
            double[] next = moved(p, step);
            double nextSum = sumOfSquares(next);
            if (nextSum <= sum) {
                boolean still = still(p, step);
                p = next;
                sum = nextSum;
                damping = Math.max(damping / 10, 1e-18);
                if (still) {
                    return p;
                }
            } else if (still(p, step)) {
                return p;
            } else {
                damping *= 10;
            }
        }
        return p;
    }

    /**
     * Undamped steps as long as they become smaller. Near the minimum sums of squares agree in all digits that a double
     * holds while the parameters still miss half of theirs, so the steps themselves decide.
     */
    private double[] polished(double[] from) {
        double[] p = from;
        double last = Double.POSITIVE_INFINITY;
        double limit = sumOfSquares(from) * (1 + 1e-10);
        for (int i = 0; i < MOST_STEPS; i++) {
            double[] step = step(p, 0);
            double size = 0;
            for (int j = 0; j < step.length; j++) {
                size = Math.max(size, Math.abs(step[j]) / (Math.abs(p[j]) + 1e-3 * Math.abs(p[3] - p[0])));
            }
            double[] next = moved(p, step);
            if (!(size < last) || !(sumOfSquares(next) <= limit)) {
                break;
            }
            p = next;
            last = size;
        }
        return p;
    }

    /** One step in (a, b, ln c, d, ln g), from the problem with a damping row for each parameter. */
    private double[] step(double[] p, double damping) {
        double[][] slopes = jacobian(p, true);
        int n = x.length;
        double[][] design = Arrays.copyOf(slopes, n + size);
        double[] right = new double[n + size];
        double[] weights = Arrays.copyOf(w, n + size);
        for (int i = 0; i < n; i++) {
            right[i] = y[i] - at(p, x[i]);
        }
        for (int j = 0; j < size; j++) {
            double length = 0;
            for (int i = 0; i < n; i++) {
                length += w[i] * slopes[i][j] * slopes[i][j];
            }
            design[n + j] = new double[size];
            design[n + j][j] = Math.sqrt(damping * length);
            weights[n + j] = 1;
        }
        return new LinearLeastSquares(design, right, weights).solution();
    }

    private double[] moved(double[] p, double[] step) {
        double[] next = p.clone();
        for (int j = 0; j < size; j++) {
            // No more than a factor of e at a time where the step is one in a logarithm.
            boolean logarithm = j == 2 || j == 4;
            next[j] = logarithm ? p[j] * Math.exp(Math.max(-1, Math.min(1, step[j]))) : p[j] + step[j];
        }
        return next;
    }

    private static boolean still(double[] p, double[] step) {
        double scale = Math.max(Math.abs(p[0]), Math.abs(p[3]));
        for (int j = 0; j < step.length; j++) {
            double size = j == 0 || j == 3 ? scale : j == 1 ? Math.abs(p[1]) : 1;
            if (!(Math.abs(step[j]) <= 1e-14 * size)) {
                return false;
            }
        }
        return true;
    }

    /** Whether what an undamped step would still change in the fitted values is nothing beside the residuals. */
    private boolean atRest(double[] p) {
        double[] step = step(p, 0);
        double[][] slopes = jacobian(p, true);
        double change = 0;
        double size2 = 0;
        for (int i = 0; i < x.length; i++) {
            double each = 0;
            for (int j = 0; j < size; j++) {
                each += slopes[i][j] * step[j];
            }
            change += w[i] * each * each;
            size2 += w[i] * y[i] * y[i];
        }
        return change <= 1e-12 * sumOfSquares(p) + 1e-22 * size2;
    }

    private double[][] jacobian(double[] p, boolean logarithmic) {
        double[][] rows = new double[x.length][];
        for (int i = 0; i < x.length; i++) {
            rows[i] = gradient(p, x[i]);
            if (logarithmic) {
                rows[i][2] *= p[2];
                if (size == 5) {
                    rows[i][4] *= p[4];
                }
            }
        }
        return rows;
    }

    private double sumOfSquares(double[] p) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            double r = y[i] - at(p, x[i]);
            sum += w[i] * r * r;
        }
        return sum;
    }
}
