package tallywell.trace;

import org.jspecify.annotations.Nullable;

/**
 * What a few end points (three to nine) leave open of a burst that was not over at the first of them.
 *
 * <pre>{@code
 * y = a + b t + R exp(-k (t - first)),   R = -f exp(-k first) D,   D = change by the line + what R does to the line at t = 0
 * }</pre>
 *
 * <p>All pairs of k and R are tried that the bend of the readings does not exclude (likelihood ratio at 95 %, one
 * parameter), and of these only such as the law of a reaction allows: f is 1 in first order, more with saturation or a
 * lag, and with a product that inhibits, from not at all to as strongly as the law has it, falls from 1 towards 0.37 as
 * exp(-0.8 k first) at most (integrated law of {@link ReactionLaw}). Nor may the creep beside it run against the reaction by
 * more than 1 mA/min. The largest error of the line at t = 0 among them is what is left
 * open. Nothing is weighed, so that the bound holds at every rate and not only on the average of rates.
 */
final class EndPointBurst {
    private static final int RATES = 48;
    private static final double LEAST_OF_FIRST_ORDER = 0.37;
    private static final double INHIBITED = 0.8;
    /** Slowest and fastest rate looked at: part of the last time, of the shortest interval. */
    private static final double SLOWEST = 0.05;

    private static final double FASTEST = 6;
    /** Standard deviations at which a bend is sure, as Student's t enlarges them. */
    private static final double SURE = 3;

    /**
     * Creep against the direction of the reaction is not believed to be more than this, in absorbance per s: 1 mA/min, the
     * lowest of the study in docs/creep.md. A faster one could hide any reaction that runs as fast.
     */
    private static final double MOST_AGAINST = 0.001 / 60;

    private static final double NORMAL = 1.959964;
    /** With its own scatter alone a well is sure where the burst gains more than noise does in one of twenty. */
    private static final double RARE = 0.05;
    /** What a line at rest moves in all, in absorbance: see {@link SeenBurst}. */
    private static final double QUIET = 0.006;

    private final double[] t;
    private final double[] residual;
    private final int n;
    private final LineFit line;
    private final double variance;
    private final double limit;
    private final double sureGain;
    private double change;
    private double most;
    private boolean sure;
    private boolean against;

    private EndPointBurst(double[] t, double[] y, int from, @Nullable ReadingScatter plate) {
        n = t.length - from;
        this.t = new double[n];
        residual = new double[n];
        line = LineFit.of(t, y, from, t.length, null);
        for (int i = 0; i < n; i++) {
            this.t[i] = t[from + i];
            residual[i] = y[from + i] - line.at(this.t[i]);
        }
        double floor = BurstTail.LEAST_SCATTER * BurstTail.LEAST_SCATTER;
        double known;
        if (plate != null) {
            variance = plate.sd() * plate.sd();
            known = plate.degreesOfFreedom();
            double t95 = SURE * Coverage.factor(known);
            sureGain = t95 * t95 * variance;
        } else {
            double best = leastSquares();
            int free = Math.max(1, n - 4);
            boolean gains = n > 4 && best < line.squares() * Math.pow(RARE, 2.0 / free);
            variance = gains ? Math.max(floor, best / free) : line.squares() / Math.max(1, n - 2);
            known = gains ? free : n - 2;
            sureGain = gains ? 0 : Double.POSITIVE_INFINITY;
        }
        double t95 = NORMAL * Coverage.factor(known);
        limit = t95 * t95 * variance;
    }

    /**
     * Looks at the readings from one on.
     *
     * @param baseline what was there before the trigger
     * @param plate scatter of readings by the whole plate, or null where only the well itself shows it
     */
    static EndPointBurst of(double[] t, double[] y, int from, BaselineRule baseline, @Nullable ReadingScatter plate) {
        EndPointBurst found = new EndPointBurst(t, y, from, plate);
        double sd = Math.sqrt(found.variance);
        double u = Math.hypot(
                sd * Math.sqrt(found.line.varianceAt(0)),
                baseline.uncertainty(sd, 0).orElse(0));
        double change = found.line.at(0) - baseline.value();
        found.change = Math.abs(change);
        double moved = found.line.at(t[t.length - 1]) - baseline.value();
        if (Math.abs(change) <= SURE * u && Math.abs(moved) <= Math.max(QUIET, 2 * SURE * u)) {
            found.look(0, change, u);
            found.most = found.sure ? Math.max(found.most, Math.abs(moved)) : Math.min(found.most, Math.abs(moved));
            return found;
        }
        if (Math.abs(change) > 2 * u) {
            found.look(Math.signum(change), change, u);
        } else {
            found.look(0, change, u);
        }
        if (Math.abs(change) <= SURE * u) {
            // A line from the baseline may be the reaction as well as creep.
            found.most = Math.max(found.most, Math.abs(moved));
        }
        return found;
    }

    private double[] decay(double k) {
        double[] e = new double[n];
        for (int i = 0; i < n; i++) {
            e[i] = Math.exp(-k * (t[i] - t[0]));
        }
        return e;
    }

    private double rate(int i) {
        double step = Double.MAX_VALUE;
        for (int j = 1; j < n; j++) {
            double each = t[j] - t[j - 1];
            step = each > 0 ? Math.min(step, each) : step;
        }
        double slow = SLOWEST / t[n - 1];
        double fast = Math.max(FASTEST / step, 2 * slow);
        return slow * Math.pow(fast / slow, (double) i / (RATES - 1));
    }

    private double leastSquares() {
        double least = line.squares();
        for (int i = 0; i < RATES; i++) {
            double[] e = decay(rate(i));
            LineFit of = LineFit.of(t, e, 0, n, null);
            double norm = of.squares();
            double product = Span.dot(e, residual);
            least = norm > 0 ? Math.min(least, line.squares() - product * product / norm) : least;
        }
        return Math.max(0, least);
    }

    /** Goes through the rates for a burst of one sign, of either if it is 0. */
    private void look(double sign, double change, double u) {
        if (sign == 0) {
            look(1, Math.max(0, change), u);
            look(-1, Math.min(0, change), u);
            return;
        }
        double size = Math.abs(change);
        double uSlope = Math.sqrt(variance / line.timeSquares());
        double steepest = Math.max(0, sign * line.slope() + 2 * uSlope + MOST_AGAINST);
        double[] low = new double[RATES];
        double[] high = new double[RATES];
        double[] fitted = new double[RATES];
        double[] norm = new double[RATES];
        double[] lever = new double[RATES];
        // Squares at R = 0, less what the best allowed pair takes off.
        double bestGain = 0;
        double worstGain = 0;
        for (int i = 0; i < RATES; i++) {
            double k = rate(i);
            double[] e = decay(k);
            LineFit of = LineFit.of(t, e, 0, n, null);
            norm[i] = Math.max(of.squares(), 1e-12 * Span.dot(e, e));
            fitted[i] = -sign * Span.dot(e, residual) / norm[i];
            lever[i] = of.at(0);
            double part = Math.exp(-k * t[0]);
            double least = part * Math.max(LEAST_OF_FIRST_ORDER, Math.exp(-INHIBITED * k * t[0]));
            low[i] = lever[i] > 0 && least * lever[i] < 1
                    ? least * Math.max(0, size - 2 * u) / (1 - least * lever[i])
                    : 0;
            high[i] = of.slope() < 0 ? steepest / -of.slope() : Double.POSITIVE_INFINITY;
            if (!(low[i] <= high[i])) {
                continue;
            }
            double at = Math.min(high[i], Math.max(low[i], fitted[i]));
            bestGain = Math.max(bestGain, gain(fitted[i], norm[i], at));
            worstGain = Math.max(worstGain, fitted[i] < 0 ? fitted[i] * fitted[i] * norm[i] : 0);
        }
        for (int i = 0; i < RATES; i++) {
            // (R - fitted)² norm <= fitted² norm - bestGain + limit
            double slack = limit - bestGain + fitted[i] * fitted[i] * norm[i];
            if (slack >= 0) {
                double reach = fitted[i] + Math.sqrt(slack / norm[i]);
                double r = Math.min(high[i], reach);
                if (r >= low[i]) {
                    most = Math.max(most, Math.abs(lever[i]) * r);
                }
            }
        }
        sure |= bestGain > sureGain;
        against |= sureGain > 0 && worstGain > sureGain && bestGain < worstGain;
    }

    private static double gain(double fitted, double norm, double r) {
        return norm * (fitted * fitted - (r - fitted) * (r - fitted));
    }

    /** What may be left moves ΔA by no more than this, in absorbance. */
    double most() {
        return most;
    }

    /** The part of the standard uncertainty of ΔA that stands for it: its double covers what may be left. */
    double u() {
        return most / NORMAL;
    }

    /** Whether the readings bend as the end of a burst does, beyond doubt. */
    boolean isSure() {
        return sure;
    }

    /** Whether they bend the other way, beyond doubt. */
    boolean isAgainst() {
        return against;
    }

    /** Standard deviation of the line at the trigger from scatter. */
    double ofScatter() {
        return Math.sqrt(variance * line.varianceAt(0));
    }

    /** Size of the change by the line. */
    double change() {
        return change;
    }
}
