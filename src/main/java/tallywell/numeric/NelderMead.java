package tallywell.numeric;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.ToDoubleFunction;

/**
 * The largest value of a function of a few variables without its derivatives, by a simplex that reflects, expands, contracts
 * and shrinks (J. A. Nelder and R. Mead, Computer Journal 7 (1965) 308-313, with their coefficients 1, 2, 1/2, 1/2).
 *
 * <p>It finds a maximum near the start, not surely the highest.
 */
final class NelderMead {
    private static final int ROUNDS_FOR_EACH = 120;
    private static final double STEP = 0.3;

    private final ToDoubleFunction<double[]> function;
    private final double tolerance;

    /** A corner and its value. */
    static final class Corner {
        private final double[] at;
        private final double value;

        private Corner(double[] at, double value) {
            this.at = at;
            this.value = value;
        }

        double[] at() {
            return at;
        }

        double value() {
            return value;
        }
    }

    /**
     * A search.
     *
     * @param function to be made largest
     * @param tolerance it ends when the corners differ by less
     */
    NelderMead(ToDoubleFunction<double[]> function, double tolerance) {
        this.function = function;
        this.tolerance = tolerance;
    }

    /** Searches from a start, whose coordinates give the size of the first simplex and must not be 0, and once again from there. */
    Corner from(double[] start) {
        return search(search(start).at());
    }

    private Corner search(double[] start) {
        int n = start.length;
        Corner[] simplex = new Corner[n + 1];
        simplex[n] = corner(start);
        for (int i = 0; i < n; i++) {
            double[] at = start.clone();
            at[i] *= 1 + STEP;
            simplex[i] = corner(at);
        }
        for (int round = 0; round < ROUNDS_FOR_EACH * n; round++) {
            Arrays.sort(simplex, Comparator.comparingDouble(Corner::value).reversed());
            if (!(simplex[0].value() - simplex[n].value() > tolerance)) {
                break;
            }
            step(simplex);
        }
        Arrays.sort(simplex, Comparator.comparingDouble(Corner::value).reversed());
        return simplex[0];
    }

    private void step(Corner[] simplex) {
        int last = simplex.length - 1;
        double[] centre = centre(simplex);
        Corner reflected = along(centre, simplex[last].at(), -1);
        if (reflected.value() > simplex[0].value()) {
            Corner expanded = along(centre, simplex[last].at(), -2);
            simplex[last] = expanded.value() > reflected.value() ? expanded : reflected;
        } else if (reflected.value() > simplex[last - 1].value()) {
            simplex[last] = reflected;
        } else {
            boolean outside = reflected.value() > simplex[last].value();
            Corner contracted = along(centre, simplex[last].at(), outside ? -0.5 : 0.5);
            if (contracted.value() > Math.max(reflected.value(), simplex[last].value())) {
                simplex[last] = contracted;
            } else {
                for (int i = 1; i <= last; i++) {
                    simplex[i] = along(simplex[0].at(), simplex[i].at(), 0.5);
                }
            }
        }
    }

    private static double[] centre(Corner[] simplex) {
        int n = simplex.length - 1;
        double[] centre = new double[n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                centre[k] += simplex[i].at()[k] / n;
            }
        }
        return centre;
    }

    private Corner along(double[] from, double[] to, double part) {
        double[] at = new double[from.length];
        for (int k = 0; k < at.length; k++) {
            at[k] = from[k] + part * (to[k] - from[k]);
        }
        return corner(at);
    }

    private Corner corner(double[] at) {
        double value = function.applyAsDouble(at);
        return new Corner(at, Double.isNaN(value) ? Double.NEGATIVE_INFINITY : value);
    }
}
