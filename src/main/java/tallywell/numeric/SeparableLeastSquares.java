package tallywell.numeric;

import java.util.Arrays;
import java.util.Optional;

/**
 * Least squares for models linear in some parameters, by variable projection.
 *
 * <pre>{@code
 * minimise over theta   min over c of  || y - basis(theta) c ||²
 * }</pre>
 *
 * <p>The linear parameters are solved for exactly at every theta, so a start is needed for the nonlinear ones only and
 * the landscape is far kinder. Steps in theta follow Kaufman's form of the derivative (the part of the slopes at right
 * angles to the basis), damped after Levenberg and Marquardt in the scale of the slopes; all factors are orthogonal.
 * Cofactors are those of the full problem.
 *
 * <p>Rows p more than the model has carry what is believed of the nonlinear parameters, if anything; the sum of squares
 * includes them.
 *
 * <p>Accuracy: the NIST StRD sets MGH17, Lanczos1 and Hahn1 come back to the digits stated in the tests.
 *
 * <p>Source: G. H. Golub and V. Pereyra, SIAM J. Numer. Anal. 10 (1973) 413; L. Kaufman, A variable projection method, BIT 15
 * (1975) 49; damping after K. Madsen, H. B. Nielsen and O. Tingleff, Methods for non-linear least squares problems, 2004 (all
 * from memory).
 */
public final class SeparableLeastSquares {
    private static final double SINGULAR = 1e-14;
    private static final double FIRST_DAMPING = 1e-3;
    private static final double MOST_DAMPING = 1e12;

    private static final double TRUSTED = 1e-10;
    private static final double ROUNDING = 1e-13;

    private final int mostIterations;
    private final double tolerance;

    /**
     * Settings of the iteration.
     *
     * @param mostIterations steps tried at most
     * @param tolerance relative gain in the sum of squares below which it has converged
     */
    public SeparableLeastSquares(int mostIterations, double tolerance) {
        if (mostIterations < 1) {
            throw new IllegalArgumentException("mostIterations must be at least 1 but was " + mostIterations);
        }
        this.mostIterations = mostIterations;
        this.tolerance = Series.positive("tolerance", tolerance);
    }

    /**
     * Fits the model.
     *
     * @param model the model
     * @param y {@code model.rows()} observations, scaled as the model is
     * @param start where the nonlinear parameters start
     * @return the fit, or empty if the start is not allowed or the basis or the slopes depend on each other
     * @throws IllegalArgumentException unless the lengths agree, there are at least as many observations as parameters
     *     and every number is finite
     */
    public Optional<SeparableFit> fit(SeparableModel model, double[] y, double[] start) {
        Series.sameLength("y", y, model.rows());
        Series.sameLength("start", start, model.nonlinear());
        Series.atLeast("y", y, model.linear() + model.nonlinear());
        Series.finite("y", y);
        Series.finite("start", start);
        Iteration iteration = new Iteration(model, y);
        return iteration.begin(start) ? iteration.run() : Optional.empty();
    }

    /** All arrays of one fit; two states change places as steps are accepted. */
    private final class Iteration {
        private final SeparableModel model;
        private final double[] y;
        private final int n;
        private final int m;
        private final int p;
        private State now;
        private State next;
        private final double[] believed;
        private final double[] precision;
        private double damping = FIRST_DAMPING;
        private double growth = 2;

        Iteration(SeparableModel model, double[] y) {
            this.model = model;
            this.y = y;
            n = model.rows();
            m = model.linear();
            p = model.nonlinear();
            believed = new double[p];
            precision = new double[p];
            model.beliefs(believed, precision);
            for (int k = 0; k < p; k++) {
                precision[k] = 1 / precision[k];
            }
            now = new State(n, m, p);
            next = new State(n, m, p);
        }

        boolean begin(double[] start) {
            System.arraycopy(start, 0, now.theta, 0, p);
            return project(now);
        }

        /** Solves for the linear parameters; false if theta is not allowed there. */
        private boolean project(State state) {
            if (!model.basis(state.theta, state.basis)) {
                return false;
            }
            Householder factors = Householder.of(state.basis, m, n, 0);
            if (!factors.isRegular(SINGULAR)) {
                return false;
            }
            System.arraycopy(y, 0, state.rotated, 0, n);
            factors.apply(state.rotated);
            state.c = factors.solve(state.rotated);
            state.factors = factors;
            for (int k = 0; k < p; k++) {
                state.rotated[n + k] = precision[k] > 0 ? (believed[k] - state.theta[k]) * precision[k] : 0;
            }
            state.squares = dot(state.rotated, state.rotated);
            return state.squares <= Double.MAX_VALUE;
        }

        Optional<SeparableFit> run() {
            SeparableFit.Ending ending = SeparableFit.Ending.LIMIT_REACHED;
            int accepted = 0;
            slopes(now);
            for (int tried = 0; tried < mostIterations; tried++) {
                double[] step = step(now);
                double expected = expectedGain(now, step);
                if (expected <= tolerance * now.squares) {
                    ending = SeparableFit.Ending.CONVERGED;
                    break;
                }
                for (int k = 0; k < p; k++) {
                    next.theta[k] = now.theta[k] + step[k];
                }
                if (Arrays.equals(next.theta, now.theta)) {
                    ending = SeparableFit.Ending.NO_PROGRESS;
                    break;
                }
                boolean better = project(next) && next.squares < allowed(expected);
                if (better) {
                    accepted++;
                    relax((now.squares - next.squares) / expected);
                    State old = now;
                    now = next;
                    next = old;
                    slopes(now);
                } else {
                    damping *= growth;
                    growth *= 2;
                    if (damping > MOST_DAMPING) {
                        ending = SeparableFit.Ending.NO_PROGRESS;
                        break;
                    }
                }
            }
            Optional<Regression> regression = regression();
            return regression.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new SeparableFit(regression.get(), accepted, ending));
        }

        /** The better the linear picture foretold the gain, the less damping (Nielsen's rule). */
        private void relax(double gainRatio) {
            double shift = 2 * gainRatio - 1;
            damping *= Math.max(1.0 / 3, 1 - shift * shift * shift);
            growth = 2;
        }

        private void slopes(State state) {
            model.slopes(state.theta, state.c, state.slopes);
            for (int k = 0; k < p; k++) {
                double[] column = state.slopes[k];
                state.factors.apply(column);
                Arrays.fill(column, n, n + p, 0);
                column[n + k] = precision[k];
            }
            for (int j = 0; j < p; j++) {
                for (int k = 0; k <= j; k++) {
                    state.normal[j][k] = dot(state.slopes[j], state.slopes[k]);
                    state.normal[k][j] = state.normal[j][k];
                }
                state.gradient[j] = dot(state.slopes[j], state.rotated);
            }
        }

        private double dot(double[] a, double[] b) {
            return Products.dot(a, b, m, n + p);
        }

        private double[] step(State state) {
            double[][] damped = new double[p][p];
            for (int j = 0; j < p; j++) {
                System.arraycopy(state.normal[j], 0, damped[j], 0, p);
                damped[j][j] += damping * Math.max(state.normal[j][j], Double.MIN_NORMAL);
            }
            return Cholesky.solve(damped, state.gradient);
        }

        /** Fall of the sum of squares that the linear picture foretells for a step. */
        private double expectedGain(State state, double[] step) {
            double gain = 0;
            for (int j = 0; j < p; j++) {
                double product = 0;
                for (int k = 0; k < p; k++) {
                    product += state.normal[j][k] * step[k];
                }
                gain += step[j] * (2 * state.gradient[j] - product);
            }
            return gain;
        }

        /**
         * A sum of squares below this is a gain. The last steps gain less than rounding shows; they are taken on trust,
         * else half of the digits would be lost.
         */
        private double allowed(double expected) {
            return expected < TRUSTED * now.squares ? now.squares * (1 + ROUNDING) : now.squares;
        }

        private Optional<Regression> regression() {
            double[][] own = new double[p][];
            for (int k = 0; k < p; k++) {
                own[k] = now.slopes[k].clone();
            }
            Householder nonlinear = Householder.of(own, p, n + p, m);
            if (!nonlinear.isRegular(SINGULAR)) {
                return Optional.empty();
            }
            double[] parameters = Arrays.copyOf(now.theta, p + m);
            System.arraycopy(now.c, 0, parameters, p, m);
            return Optional.of(new Regression(parameters, cofactors(nonlinear), n, now.squares, aboutMean()));
        }

        /** R⁻¹R⁻ᵀ of the triangle of the full problem, whose columns are the slopes and then the basis. */
        private double[][] cofactors(Householder nonlinear) {
            int size = p + m;
            double[][] inverse = new double[size][size];
            for (int k = 0; k < p; k++) {
                double[] unit = new double[p];
                unit[k] = 1;
                double[] column = nonlinear.solve(unit);
                double[] carried = new double[m];
                for (int i = 0; i < m; i++) {
                    for (int j = 0; j < p; j++) {
                        carried[i] -= now.slopes[j][i] * column[j];
                    }
                }
                System.arraycopy(column, 0, inverse[k], 0, p);
                System.arraycopy(now.factors.solve(carried), 0, inverse[k], p, m);
            }
            for (int k = 0; k < m; k++) {
                double[] unit = new double[m];
                unit[k] = 1;
                System.arraycopy(now.factors.solve(unit), 0, inverse[p + k], p, m);
            }
            double[][] cofactors = new double[size][size];
            for (int a = 0; a < size; a++) {
                for (int b = 0; b < size; b++) {
                    for (double[] column : inverse) {
                        cofactors[a][b] += column[a] * column[b];
                    }
                }
            }
            return cofactors;
        }

        private double aboutMean() {
            double mean = Arrays.stream(y).average().orElseThrow();
            return Arrays.stream(y).map(each -> (each - mean) * (each - mean)).sum();
        }
    }

    /** Where an iteration stands. */
    private static final class State {
        private final double[] theta;
        private final double[][] basis;
        private final double[][] slopes;
        private final double[] rotated;
        private final double[][] normal;
        private final double[] gradient;
        private double[] c;
        private Householder factors;
        private double squares;

        State(int n, int m, int p) {
            theta = new double[p];
            basis = new double[m][n];
            slopes = new double[p][n + p];
            rotated = new double[n + p];
            normal = new double[p][p];
            gradient = new double[p];
            c = new double[m];
            factors = Householder.of(new double[0][], 0, n, 0);
        }
    }
}
