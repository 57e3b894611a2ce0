package tallywell.trace;

/**
 * Scales readings by their standard deviations and takes off what each carries over from the one before.
 *
 * <pre>{@code
 * row[i] = (x[i] / sd[i] - f x[i-1] / sd[i-1]) / √(1 - f²),   f = carry ^ (gap / usual interval)
 * }</pre>
 */
final class Whitening {
    private final double[] own;
    private final double[] past;

    private Whitening(double[] own, double[] past) {
        this.own = own;
        this.past = past;
    }

    /**
     * For readings with these standard deviations.
     *
     * @param sd standard deviations
     * @param carry correlation of neighbours at the usual interval, below 1
     * @param t times, to see where readings are missing
     */
    static Whitening of(double[] sd, double carry, double[] t) {
        int n = sd.length;
        double interval = (t[n - 1] - t[0]) / (n - 1);
        double[] own = new double[n];
        double[] past = new double[n];
        own[0] = 1 / sd[0];
        for (int i = 1; i < n; i++) {
            double gap = (t[i] - t[i - 1]) / interval;
            double f = carry == 0 ? 0 : gap < 1.5 ? carry : Math.pow(carry, gap);
            double scale = 1 / Math.sqrt(1 - f * f);
            own[i] = scale / sd[i];
            past[i] = f * scale / sd[i - 1];
        }
        return new Whitening(own, past);
    }

    /** Factor of reading i in its row. */
    double own(int i) {
        return own[i];
    }

    /** Factor of the reading before in row i, to be taken off; 0 for the first. */
    double past(int i) {
        return past[i];
    }

    /** The rows: the absorbance before the trigger, then the readings. */
    double[] apply(double before, double uBefore, double[] y) {
        double[] rows = new double[y.length + 1];
        rows[0] = before / uBefore;
        for (int i = 0; i < y.length; i++) {
            rows[i + 1] = own[i] * y[i] - (i == 0 ? 0 : past[i] * y[i - 1]);
        }
        return rows;
    }

    /** A column that is 0 before the trigger. */
    double[] column(double[] values) {
        return apply(0, 1, values);
    }
}
