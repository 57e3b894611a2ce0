package tallywell.trace;

import org.jspecify.annotations.Nullable;
import tallywell.numeric.Products;

/**
 * Which rates k the end of a burst allows: a pass over a row of rates, and closer ones round those that it leaves standing.
 *
 * <pre>{@code
 * residual = R (exp(-k (t - start)), freed of its line) + noise
 * }</pre>
 *
 * <p>For each k of a geometric row, R follows by least squares with its standard deviation, and the residual sum of squares
 * weighs that k. All arrays hold the readings of the window only.
 */
final class RateSearch {
    private static final int COARSE = 10;
    private static final int CLOSE = 7;
    private static final int PASSES = 3;
    private static final int FEWEST_TO_FIT = 8;
    private static final double RARE = 0.05;
    /** Rates whose sum of squares is worse by this many variances have no weight. */
    private static final double STANDING = 9;

    private static final double LEAST_WEIGHT = 1e-6;
    private static final double LEAST_SHARE = 1e-3;
    /**
     * What is left of a burst that no reading shows, in units of what first order leaves: saturation and a lag leave more, and
     * an inhibiting product less.
     */
    private static final double MOST_LEFT = 3;

    /** Of a step: times that differ by less follow each other evenly. */
    private static final double EVEN = 1e-9;

    private final LineFit line;
    private final double[] x;
    private final double[] residual;
    private final boolean even;
    private final double[][] decay;
    private final double[] rate = new double[COARSE];
    private final double[] rss = new double[COARSE];
    private final double[] size = new double[COARSE];
    private final double[] norm = new double[COARSE];
    private final double[] level = new double[COARSE];
    private final double[] slope = new double[COARSE];
    private int rates;
    private double @Nullable [] believed;
    private int best;
    private double variance;
    private double carry;

    /**
     * Sets the readings.
     *
     * @param t times in s
     * @param y absorbances
     * @param from first reading of the window
     * @param line the line through the window
     */
    RateSearch(double[] t, double[] y, int from, LineFit line) {
        this.line = line;
        int m = t.length - from;
        x = new double[m];
        residual = new double[m];
        double step = m < 2 ? 0 : t[from + 1] - t[from];
        boolean same = true;
        for (int i = 0; i < m; i++) {
            x[i] = t[from + i] - line.timeMean();
            residual[i] = y[from + i] - line.mean() - line.slope() * x[i];
            same &= i == 0 || Math.abs(x[i] - x[i - 1] - step) <= EVEN * step;
        }
        even = same;
        decay = new double[COARSE][m];
    }

    /** Searches between two rates per s. */
    void between(double slow, double fast) {
        scan(slow, fast, COARSE);
        for (int pass = 0; pass < PASSES && standing() < 4; pass++) {
            double step = Math.log(rate[1] / rate[0]);
            double half = Math.min(1.2 * step, Math.max(3.5 * width(step), 0.1 * step));
            double middle = rate[best] * Math.exp(offset(step));
            scan(middle * Math.exp(-half), middle * Math.exp(half), CLOSE);
        }
    }

    private void scan(double slow, double fast, int count) {
        rates = count;
        double ratio = Math.pow(fast / slow, 1.0 / (count - 1));
        best = 0;
        for (int i = 0; i < count; i++) {
            rate[i] = i == 0 ? slow : rate[i - 1] * ratio;
            if (even) {
                fillEvenly(decay[i], rate[i]);
            } else {
                fill(decay[i], rate[i]);
            }
            project(i);
            best = rss[i] < rss[best] ? i : best;
        }
        variance = Math.max(BurstTail.LEAST_SCATTER * BurstTail.LEAST_SCATTER, scatterSquare());
        carry = carryOfBest();
    }

    /**
     * Variance about line and exponential; of a few readings, to which an exponential can always be fitted, that about the
     * line, unless the exponential gains more than noise does in one of twenty (F distribution of two parameters more).
     */
    private double scatterSquare() {
        int n = x.length;
        int free = Math.max(1, n - 4);
        boolean sure = rss[best] < line.squares() * Math.pow(RARE, 2.0 / free);
        return n >= FEWEST_TO_FIT || sure ? rss[best] / free : line.squares() / (n - 2);
    }

    private void fill(double[] row, double k) {
        row[0] = 1;
        double lastStep = Double.NaN;
        double factor = 1;
        for (int i = 1; i < row.length; i++) {
            double step = x[i] - x[i - 1];
            if (step != lastStep) {
                factor = Math.exp(-k * step);
                lastStep = step;
            }
            row[i] = row[i - 1] * factor;
        }
    }

    /** Four readings at a time, none of which waits for the one before it. */
    private void fillEvenly(double[] row, double k) {
        double first = 1;
        double step = Math.exp(-k * (x[1] - x[0]));
        double second = step;
        double third = step * step;
        double fourth = third * step;
        double factor = third * third;
        int i = 0;
        for (; i < row.length - 3; i += 4) {
            row[i] = first;
            row[i + 1] = second;
            row[i + 2] = third;
            row[i + 3] = fourth;
            first *= factor;
            second *= factor;
            third *= factor;
            fourth *= factor;
        }
        for (; i < row.length; i++) {
            row[i] = first;
            first *= step;
        }
    }

    private void project(int index) {
        double[] row = decay[index];
        int m = row.length;
        double sum = 0;
        double more = 0;
        int i = 0;
        for (; i < m - 1; i += 2) {
            sum += row[i];
            more += row[i + 1];
        }
        sum += more + (i < m ? row[i] : 0);
        double byTime = Products.dot(row, x, 0, m);
        double squares = Products.dot(row, row, 0, m);
        double byResidual = Products.dot(row, residual, 0, m);
        level[index] = sum / m;
        slope[index] = byTime / line.timeSquares();
        double left = squares - sum * level[index] - byTime * slope[index];
        norm[index] = Math.max(left, 1e-9 * squares);
        size[index] = byResidual / norm[index];
        rss[index] = Math.max(0, line.squares() - byResidual * byResidual / norm[index]);
    }

    private double carryOfBest() {
        int m = x.length;
        double[] row = decay[best];
        double products = 0;
        double squares = 0;
        double last = 0;
        for (int i = 0; i < m; i++) {
            double e = residual[i] - size[best] * (row[i] - level[best] - slope[best] * x[i]);
            products += e * last;
            squares += e * e;
            last = e;
        }
        return Noise.carry(products, squares, m, 4);
    }

    private int standing() {
        int standing = 0;
        for (int i = 0; i < rates; i++) {
            standing += rss[i] - rss[best] < STANDING * inflated() ? 1 : 0;
        }
        return standing;
    }

    /** Bend of the sum of squares over ln k at the best rate. */
    private double bend(double step) {
        int i = Math.min(rates - 2, Math.max(1, best));
        return Math.max((rss[i + 1] - 2 * rss[i] + rss[i - 1]) / (step * step), 1e-300);
    }

    private double width(double step) {
        return Math.sqrt(2 * inflated() / bend(step));
    }

    private double offset(double step) {
        int i = Math.min(rates - 2, Math.max(1, best));
        double slopeAt = (rss[i + 1] - rss[i - 1]) / (2 * step);
        double vertex = (i - best) * step - slopeAt / bend(step);
        return Math.max(-step, Math.min(step, vertex));
    }

    /** Takes one rate's exponential, its weight, the size that fits, and the variance of that size. */
    interface Weighed {
        void take(double[] decay, double weight, double size, double variance);
    }

    /**
     * Says that the readings begin after the burst, so that they show little of it, and what is left by a rate k follows
     * from the whole of it.
     *
     * <pre>{@code
     * R ~ normal about 0, standard deviation  3 exp(-k start) D
     * D = burst by the line and R together
     * }</pre>
     *
     * @param burst burst by the line through the window alone, in absorbance; 0 where none is seen
     * @param startS time of the first reading in s from the trigger
     */
    void beginAfterBurst(double burst, double startS) {
        believed = new double[rates];
        for (int i = 0; i < rates; i++) {
            double part = Math.exp(-rate[i] * startS);
            double atTrigger = level[i] - slope[i] * line.timeMean();
            double first = part / Math.max(LEAST_SHARE, 1 - part * atTrigger);
            double most = MOST_LEFT * first * burst;
            believed[i] = most * most;
        }
    }

    /** Shows every rate that has a weight. */
    void eachRate(Weighed taker) {
        double[] weight = new double[rates];
        double[] drawn = new double[rates];
        double total = 0;
        for (int i = 0; i < rates; i++) {
            double known = believed == null ? Double.POSITIVE_INFINITY : believed[i] * norm[i] / inflated();
            drawn[i] = believed == null ? 1 : known / (1 + known);
            double gain = drawn[i] * size[i] * size[i] * norm[i];
            weight[i] = Math.exp(0.5 * (gain - gain()) / inflated()) / (believed == null ? 1 : Math.sqrt(1 + known));
            total += weight[i];
        }
        for (int i = 0; i < rates; i++) {
            if (weight[i] > LEAST_WEIGHT * total) {
                taker.take(decay[i], weight[i] / total, drawn[i] * size[i], drawn[i] * inflated() / norm[i]);
            }
        }
    }

    LineFit line() {
        return line;
    }

    /** Readings less the line through the window. */
    double[] residual() {
        return residual;
    }

    /** Times about their mean. */
    double[] x() {
        return x;
    }

    /** The exponential of the rate that fits best. */
    double[] decay() {
        return decay[best];
    }

    /** That rate per s. */
    double rate() {
        return rate[best];
    }

    /** The burst left at the first reading of the window, by that rate. */
    double size() {
        return size[best];
    }

    /** Standard deviation of that size. */
    double deviation() {
        return Math.sqrt(inflated() / norm[best]);
    }

    /** By how much that exponential lets the sum of squares fall. */
    double gain() {
        return line.squares() - rss[best];
    }

    /** Variance of one reading. */
    double variance() {
        return variance;
    }

    /** How much of the noise carries over from reading to reading. */
    double carry() {
        return carry;
    }

    /** Variance of something slow. */
    double inflated() {
        return variance * Noise.inflation(carry);
    }
}
