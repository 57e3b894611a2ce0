package tallywell.trace;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * What is left of the burst, reading by reading, and what that does to a line drawn from there.
 *
 * <pre>{@code
 * y = a + b t + R exp(-k (t - start)),   t from start
 * }</pre>
 *
 * <p>Towards its end every reaction that saturates, or has a coupled step, dies away exponentially; before, it is slower
 * than that, so that an exponential fitted over more than the very end tends to overstate what is left. The rate k
 * is not picked but averaged over: for each k of a geometric row, R follows by least squares with its standard
 * deviation, and the residual sum of squares weighs that k. Where the burst shows, the weights gather at its rate; where
 * it was over before the first reading, what remains is bounded by how early it was over.
 *
 * <p>For a line from reading j to the end, g(j, k) is the intercept at t = 0 of the line through exp(-k (t - start)); the
 * error of ΔA from the burst left is R g, and its mean square over k is what the choice of the start weighs against
 * scatter.
 *
 * <p>The window begins where, by a first rough line, so much of the burst is left that it stands clear of scatter, a
 * quarter at most: as late as it can, for the nearer the end, the truer the exponential. The slowest rate tried is half of
 * that at which the burst would have had to run to be down there by then.
 */
final class BurstTail implements Tail {
    /** Readers print four decimals: scatter below this is not to be believed. */
    static final double LEAST_SCATTER = 3e-5;

    /** Fewest readings that show a tail. */
    static final int FEWEST = 5;

    /** Part of the burst left at the start of the window: where it stands this many times above scatter, within limits. */
    private static final double VISIBLE = 40;

    private static final double LEAST_AT_START = 0.01;
    private static final double MOST_AT_START = 0.25;
    private static final double JUMP_GAIN = 14;
    private static final int FEWEST_FOR_JUMP = 10;

    /** Gain, in variances, of an exponential that is there beyond doubt. */
    private static final double SURE_GAIN = 16;
    /**
     * Part of the burst to which its end comes when traced back to the trigger: 1 in first order, more with saturation or a
     * lag, down to a half where the product inhibits as strongly as the substrate binds.
     */
    private static final double LEAST_TRACED_BACK = 0.4;

    private final TailLines lines;
    private final double[] errorSquare;
    private final double[] leftMean;
    private final double[] leftSquare;
    private final double scatter;
    private final double carry;
    private final boolean jumps;
    private final double dyingSquare;
    private final boolean bends;

    private BurstTail(Search search) {
        lines = search.lines;
        errorSquare = search.errorSquare;
        leftMean = search.leftMean;
        leftSquare = search.leftSquare;
        scatter = Math.sqrt(search.variance);
        carry = search.carry;
        search.lookForMore();
        jumps = search.jumps;
        dyingSquare = search.dyingSquare;
        bends = search.bends;
    }

    /** First reading of the window. */
    @Override
    public int from() {
        return lines.from();
    }

    /** How much of the noise carries over from reading to reading. */
    @Override
    public double carry() {
        return carry;
    }

    /** Whether the trace jumps from one level to another within the window. */
    @Override
    public boolean jumps() {
        return jumps;
    }

    /**
     * Square of the size of creep that dies away ({@link BentCreep}), beside burst and line in the
     * window; 0 where there is no more than noise.
     */
    @Override
    public double dyingSquare() {
        return dyingSquare;
    }

    /** Whether there is more than one burst and a line. */
    @Override
    public boolean bends() {
        return bends;
    }

    /** Variance at t = 0 of the line from reading j on, from scatter; infinite under two readings. */
    @Override
    public double lineVariance(int j) {
        return scatter * scatter * (1 + carry) / (1 - carry) * lines.varianceAtTrigger(j);
    }

    /** How many readings the line from reading j on uses. */
    @Override
    public int readings(int j) {
        return lines.count(j);
    }

    /** Root mean square, over what is believed of the burst, of the error at t = 0 of a line from reading j on. */
    @Override
    public double errorRms(int j) {
        return Math.sqrt(errorSquare[j - from()]);
    }

    /** Mean of the burst left at reading j (reading minus line, so negative where the signal rises). */
    @Override
    public double left(int j) {
        return leftMean[j - from()];
    }

    /** What the burst left at reading j does not exceed in size, by about 95 % of belief. */
    @Override
    public double leftBound(int j) {
        double mean = left(j);
        return Math.abs(mean) + 1.64 * Math.sqrt(Math.max(0, leftSquare[j - from()] - mean * mean));
    }

    /**
     * Looks at the readings after the trigger.
     *
     * @param before absorbance before the trigger
     * @return the tail, or null if the window holds fewer than five readings used
     */
    static @Nullable BurstTail of(double[] t, double[] y, boolean @Nullable [] leftOut, double before) {
        int n = t.length;
        LineFit rough = LineFit.of(t, y, Math.min(n - 3, n - n / 3), n, leftOut);
        double burst = rough.at(0) - before;
        double visible = VISIBLE * Math.sqrt(rough.squares() / Math.max(1, rough.degreesOfFreedom()));
        double start = Math.min(MOST_AT_START, Math.max(LEAST_AT_START, visible / Math.abs(burst)));
        int from = 0;
        while (from < n - FEWEST && (rough.at(t[from]) - y[from]) / burst > start) {
            from++;
        }
        LineFit line = LineFit.of(t, y, from, n, leftOut);
        if (line.n() < FEWEST || !(line.timeSquares() > 0)) {
            return null;
        }
        double span = t[n - 1] - t[from];
        double scatter = Math.sqrt(line.squares() / line.n());
        double gone = Math.max(Math.abs(rough.at(t[from]) - y[from]), 2 * scatter);
        double reached = Math.max(t[from], span / (n - from));
        double slow = Math.max(0.3 / span, 0.5 * Math.log(Math.max(2, Math.abs(burst) / gone)) / reached);
        double fast = Math.max(2 * slow, 3 * (n - from) / span);
        Search search = new Search(t, y, leftOut, from, line, burst);
        search.over(slow, fast);
        return new BurstTail(search);
    }

    /** A pass over a row of rates, and closer ones round those that it leaves standing. */
    private static final class Search {
        private static final int COARSE = 10;
        private static final int CLOSE = 7;
        private static final int PASSES = 3;
        /** Rates whose sum of squares is worse by this many variances have no weight. */
        private static final double STANDING = 9;

        private final double[] t;
        private final boolean @Nullable [] leftOut;
        private final int from;
        private final int n;
        private final LineFit line;
        private final double burst;
        private final TailLines lines;
        private final double[] residual;
        private final double[] decay;
        private final double[] rate = new double[COARSE];
        private final double[] rss = new double[COARSE];
        private final double[] size = new double[COARSE];
        private final double[] norm = new double[COARSE];
        private final double[] errorSquare;
        private final double[] leftMean;
        private final double[] leftSquare;
        private int rates;
        private int best;
        private double variance;
        private double carry;
        private boolean jumps;
        private double dyingSquare;
        private boolean bends;

        Search(double[] t, double[] y, boolean @Nullable [] leftOut, int from, LineFit line, double burst) {
            this.t = t;
            this.leftOut = leftOut;
            this.from = from;
            this.n = t.length;
            this.line = line;
            this.burst = burst;
            lines = new TailLines(t, leftOut, from);
            residual = new double[n];
            decay = new double[n];
            for (int i = from; i < n; i++) {
                residual[i] = used(i) ? y[i] - line.at(t[i]) : 0;
            }
            errorSquare = new double[n - from];
            leftMean = new double[n - from];
            leftSquare = new double[n - from];
        }

        private boolean used(int i) {
            return leftOut == null || !leftOut[i];
        }

        double inflated() {
            return variance * (1 + carry) / (1 - carry);
        }

        void over(double slow, double fast) {
            scan(slow, fast, COARSE);
            for (int pass = 0; pass < PASSES && standing() < 4; pass++) {
                double step = Math.log(rate[1] / rate[0]);
                double half = Math.min(1.2 * step, Math.max(3.5 * width(step), 0.1 * step));
                double middle = rate[best] * Math.exp(offset(step));
                scan(middle * Math.exp(-half), middle * Math.exp(half), CLOSE);
            }
            average();
        }

        private void scan(double slow, double fast, int count) {
            rates = count;
            double ratio = Math.pow(fast / slow, 1.0 / (count - 1));
            best = 0;
            for (int i = 0; i < count; i++) {
                rate[i] = i == 0 ? slow : rate[i - 1] * ratio;
                fillDecay(rate[i]);
                project(i);
                best = rss[i] < rss[best] ? i : best;
            }
            variance = Math.max(LEAST_SCATTER * LEAST_SCATTER, rss[best] / Math.max(1, line.n() - 4));
            carry = carryOfBest();
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
            double slope = (rss[i + 1] - rss[i - 1]) / (2 * step);
            double vertex = (i - best) * step - slope / bend(step);
            return Math.max(-step, Math.min(step, vertex));
        }

        private void fillDecay(double k) {
            decay[from] = 1;
            double lastStep = Double.NaN;
            double factor = 1;
            for (int i = from + 1; i < n; i++) {
                double step = t[i] - t[i - 1];
                if (step != lastStep) {
                    factor = Math.exp(-k * step);
                    lastStep = step;
                }
                decay[i] = decay[i - 1] * factor;
            }
        }

        private void project(int index) {
            double sum = 0;
            double byTime = 0;
            double squares = 0;
            double byResidual = 0;
            for (int i = from; i < n; i++) {
                if (used(i)) {
                    double e = decay[i];
                    sum += e;
                    byTime += e * (t[i] - line.timeMean());
                    squares += e * e;
                    byResidual += e * residual[i];
                }
            }
            double left = squares - sum * sum / line.n() - byTime * byTime / line.timeSquares();
            norm[index] = Math.max(left, 1e-9 * squares);
            size[index] = byResidual / norm[index];
            rss[index] = Math.max(0, line.squares() - byResidual * byResidual / norm[index]);
        }

        private double carryOfBest() {
            if (line.n() < Noise.FEWEST_FOR_CARRY) {
                return 0;
            }
            fillDecay(rate[best]);
            LineFit ofDecay = LineFit.of(t, decay, from, n, leftOut);
            double products = 0;
            double squares = 0;
            double last = 0;
            for (int i = from; i < n; i++) {
                if (used(i)) {
                    double e = residual[i] - size[best] * (decay[i] - ofDecay.at(t[i]));
                    products += e * last;
                    squares += e * e;
                    last = e;
                }
            }
            return squares > 0 ? Noise.unbiased(products / squares, line.n(), 4) : 0;
        }

        private void average() {
            double[] weight = new double[rates];
            double total = 0;
            for (int i = 0; i < rates; i++) {
                weight[i] = Math.exp(-0.5 * (rss[i] - rss[best]) / inflated());
                total += weight[i];
            }
            for (int i = 0; i < rates; i++) {
                double w = weight[i] / total;
                if (w > 1e-6) {
                    fillDecay(rate[i]);
                    add(w * size[i], w * (size[i] * size[i] + inflated() / norm[i]));
                }
            }
        }

        private void add(double first, double second) {
            double[] intercept = lines.intercepts(t, decay, leftOut);
            for (int j = 0; j < intercept.length; j++) {
                double e = decay[from + j];
                errorSquare[j] += second * intercept[j] * intercept[j];
                leftMean[j] += first * e;
                leftSquare[j] += second * e * e;
            }
        }

        /** Looks for a jump and for creep that bends, beside line and burst. */
        void lookForMore() {
            fillDecay(rate[best]);
            int m = n - from;
            double[] level = new double[m];
            double[] r = new double[m];
            for (int i = 0; i < m; i++) {
                level[i] = used(from + i) ? 1 : 0;
                r[i] = residual[from + i];
            }
            Span span = new Span(4);
            span.add(level);
            span.add(masked(t, level));
            span.add(masked(decay, level));
            span.takeOff(r);
            jumps = jumps(span, level, r);
            dyingSquare = dyingSquare(span, level, r);
            bends |= isSecondPhase();
        }

        /**
         * Whether what dies away is no end of the burst: traced back to the trigger along its own exponential it comes to far
         * less than the burst, as that of no single reaction does.
         */
        private boolean isSecondPhase() {
            double seen = line.squares() - rss[best];
            double most = Math.abs(size[best]) + 2 * Math.sqrt(inflated() / norm[best]);
            return line.n() >= BentCreep.FEWEST
                    && seen > SURE_GAIN * inflated()
                    && most * Math.exp(rate[best] * t[from]) < LEAST_TRACED_BACK * Math.abs(burst);
        }

        /**
         * Whether the trace jumps at one of the readings of the window. What a jump leaves in the residuals looks like
         * noise that carries over, and would hide it; so the noise is judged from what remains once there may be one.
         */
        private boolean jumps(Span span, double[] level, double[] r) {
            Span.Jump jump = span.jump(level, level, r, 0);
            double rest = rest(Span.dot(r, r) - jump.gain());
            if (jump.gain() <= JUMP_GAIN * rest || line.n() < FEWEST_FOR_JUMP) {
                return false;
            }
            double carried = carried(span.without(jump, level, level, r));
            double most = Noise.gain(JUMP_GAIN, line.n(), 5, carried);
            return jump.gain() > most * rest * (1 + carried) / (1 - carried);
        }

        private double dyingSquare(Span span, double[] level, double[] r) {
            if (line.n() < BentCreep.FEWEST) {
                return 0;
            }
            double[] v = masked(BentCreep.dyingAway(t, from, n), level);
            double norm = span.freed(v);
            double gain = norm > 0 ? Span.dot(v, r) * Span.dot(v, r) / norm : 0;
            double rest = rest(Span.dot(r, r) - gain);
            if (gain <= rest) {
                return 0;
            }
            double size = Span.dot(v, r) / norm;
            double[] without = r.clone();
            for (int i = 0; i < without.length; i++) {
                without[i] -= size * v[i];
            }
            double carried = carried(without);
            double inflation = (1 + carried) / (1 - carried);
            bends = gain > BentCreep.sureGain(line.n(), carried) * rest * inflation;
            return gain > rest * inflation ? gain / norm : 0;
        }

        private double rest(double squares) {
            return Math.max(LEAST_SCATTER * LEAST_SCATTER, Math.max(0, squares) / Math.max(1, line.n() - 5));
        }

        private double carried(double[] without) {
            double squares = Span.dot(without, without);
            return line.n() < Noise.FEWEST_FOR_CARRY || !(squares > 0)
                    ? 0
                    : Noise.unbiased(Span.neighbours(without) / squares, line.n(), 5);
        }

        private double[] masked(double[] values, double[] mask) {
            double[] column = Arrays.copyOfRange(values, from, n);
            for (int i = 0; i < column.length; i++) {
                column[i] *= mask[i];
            }
            return column;
        }
    }
}
