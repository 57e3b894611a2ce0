package tallywell.trace;

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
 * <p>The window begins where about a quarter of the burst is left by a first rough line. The slowest rate tried is half
 * of that at which the burst would have had to run to be down there by then.
 */
final class BurstTail {
    /** Readers print four decimals: scatter below this is not to be believed. */
    static final double LEAST_SCATTER = 3e-5;

    private static final int RATES = 12;
    private static final double BURST_AT_START = 0.25;

    private final int from;
    private final double[] errorMean;
    private final double[] errorSquare;
    private final double[] leftMean;
    private final double[] leftSquare;
    private final double scatter;
    private final double carry;

    private BurstTail(
            int from,
            double[] errorMean,
            double[] errorSquare,
            double[] leftMean,
            double[] leftSquare,
            double scatter,
            double carry) {
        this.from = from;
        this.errorMean = errorMean;
        this.errorSquare = errorSquare;
        this.leftMean = leftMean;
        this.leftSquare = leftSquare;
        this.scatter = scatter;
        this.carry = carry;
    }

    /** First reading of the window. */
    int from() {
        return from;
    }

    /** Scatter of one reading in absorbance. */
    double scatter() {
        return scatter;
    }

    /** Factor by which carrying over enlarges a variance in the long run. */
    double inflation() {
        return (1 + carry) / (1 - carry);
    }

    /** Mean error at t = 0 of a line from reading j on, in absorbance. */
    double errorMean(int j) {
        return errorMean[j - from];
    }

    /** Root mean square of that error over what is believed of the burst. */
    double errorRms(int j) {
        return Math.sqrt(errorSquare[j - from]);
    }

    /** Mean of the burst left at reading j (reading minus line, so negative where the signal rises). */
    double left(int j) {
        return leftMean[j - from];
    }

    /** Standard deviation of the burst left at reading j. */
    double leftSd(int j) {
        double mean = leftMean[j - from];
        return Math.sqrt(Math.max(0, leftSquare[j - from] - mean * mean));
    }

    /**
     * Looks at the readings after the trigger, before t in s and y in absorbance.
     *
     * @param before absorbance before the trigger
     * @return the tail, or null if the window holds fewer than five readings used
     */
    static @Nullable BurstTail of(double[] t, double[] y, boolean @Nullable [] leftOut, double before) {
        int n = t.length;
        LineFit rough = LineFit.of(t, y, Math.min(n - 3, n - n / 3), n, leftOut);
        double burst = rough.at(0) - before;
        int from = 0;
        while (from < n - 5 && (rough.at(t[from]) - y[from]) / burst > BURST_AT_START) {
            from++;
        }
        LineFit line = LineFit.of(t, y, from, n, leftOut);
        if (line.n() < 5 || !(line.timeSquares() > 0)) {
            return null;
        }
        double span = t[n - 1] - t[from];
        double least = Math.sqrt(line.squares() / line.n());
        double gone = Math.max(Math.abs(rough.at(t[from]) - y[from]), 2 * least);
        double reached = Math.max(t[from], span / (n - from));
        double slow = Math.max(0.3 / span, 0.5 * Math.log(Math.max(2, Math.abs(burst) / gone)) / reached);
        double fast = Math.max(2 * slow, 3 * (n - from) / span);
        return new Search(t, y, leftOut, from, line).over(slow, fast);
    }

    /** One pass over a row of rates, and a second over those that the first leaves standing. */
    private static final class Search {
        private final double[] t;
        private final boolean @Nullable [] leftOut;
        private final int from;
        private final int n;
        private final LineFit line;
        private final double[] residual;
        private final double[] decay;
        private final double[] rss = new double[RATES];
        private final double[] size = new double[RATES];
        private final double[] norm = new double[RATES];

        Search(double[] t, double[] y, boolean @Nullable [] leftOut, int from, LineFit line) {
            this.t = t;
            this.leftOut = leftOut;
            this.from = from;
            this.n = t.length;
            this.line = line;
            residual = new double[n];
            decay = new double[n];
            for (int i = from; i < n; i++) {
                residual[i] = used(i) ? y[i] - line.at(t[i]) : 0;
            }
        }

        private boolean used(int i) {
            return leftOut == null || !leftOut[i];
        }

        BurstTail over(double slow, double fast) {
            scan(slow, fast);
            int best = best();
            double variance = variance(best);
            double carry = carry(slow, fast, best);
            double limit = 6 * variance * (1 + carry) / (1 - carry);
            int low = best;
            int high = best;
            while (low > 0 && rss[low] - rss[best] < limit) {
                low--;
            }
            while (high < RATES - 1 && rss[high] - rss[best] < limit) {
                high++;
            }
            double from = rate(slow, fast, low);
            double to = rate(slow, fast, high);
            for (int pass = 0; pass < 2 && high - low <= 3; pass++) {
                // Sharply known: look closer, so that a few rates stand and not one.
                scan(from, to);
                best = best();
                low = Math.max(0, best - 1);
                high = Math.min(RATES - 1, best + 1);
                while (low > 0 && rss[low] - rss[best] < limit) {
                    low--;
                }
                while (high < RATES - 1 && rss[high] - rss[best] < limit) {
                    high++;
                }
                double newFrom = rate(from, to, low);
                to = rate(from, to, high);
                from = newFrom;
            }
            scan(from, to);
            best = best();
            variance = variance(best);
            carry = carry(from, to, best);
            return average(from, to, best, variance, carry);
        }

        private double variance(int best) {
            return Math.max(LEAST_SCATTER * LEAST_SCATTER, rss[best] / Math.max(1, line.n() - 4));
        }

        private static double rate(double slow, double fast, int index) {
            return slow * Math.pow(fast / slow, (double) index / (RATES - 1));
        }

        private int best() {
            int best = 0;
            for (int i = 1; i < RATES; i++) {
                if (rss[i] < rss[best]) {
                    best = i;
                }
            }
            return best;
        }

        private void scan(double slow, double fast) {
            for (int i = 0; i < RATES; i++) {
                fillDecay(rate(slow, fast, i));
                project(i);
            }
        }

        private void fillDecay(double rate) {
            decay[from] = 1;
            double lastStep = Double.NaN;
            double factor = 1;
            for (int i = from + 1; i < n; i++) {
                double step = t[i] - t[i - 1];
                if (step != lastStep) {
                    factor = Math.exp(-rate * step);
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

        private double carry(double slow, double fast, int best) {
            if (line.n() < Noise.FEWEST_FOR_CARRY) {
                return 0;
            }
            fillDecay(rate(slow, fast, best));
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

        private BurstTail average(double slow, double fast, int best, double variance, double carry) {
            double inflated = variance * (1 + carry) / (1 - carry);
            double[] errorMean = new double[n - from];
            double[] errorSquare = new double[n - from];
            double[] leftMean = new double[n - from];
            double[] leftSquare = new double[n - from];
            double total = 0;
            for (int i = 0; i < RATES; i++) {
                double weight = Math.exp(-0.5 * (rss[i] - rss[best]) / inflated);
                total += weight;
                if (weight > 1e-6) {
                    fillDecay(rate(slow, fast, i));
                    double square = size[i] * size[i] + inflated / norm[i];
                    add(weight, weight * size[i], weight * square, errorMean, errorSquare, leftMean, leftSquare);
                }
            }
            for (int j = 0; j < n - from; j++) {
                errorMean[j] /= total;
                errorSquare[j] /= total;
                leftMean[j] /= total;
                leftSquare[j] /= total;
            }
            return new BurstTail(from, errorMean, errorSquare, leftMean, leftSquare, Math.sqrt(variance), carry);
        }

        private void add(
                double weight,
                double first,
                double second,
                double[] errorMean,
                double[] errorSquare,
                double[] leftMean,
                double[] leftSquare) {
            double count = 0;
            double times = 0;
            double timesSquared = 0;
            double sum = 0;
            double byTime = 0;
            double origin = line.timeMean();
            for (int i = n - 1; i >= from; i--) {
                if (used(i)) {
                    double dt = t[i] - origin;
                    count++;
                    times += dt;
                    timesSquared += dt * dt;
                    sum += decay[i];
                    byTime += dt * decay[i];
                }
                double mean = times / count;
                double spread = timesSquared - times * mean;
                double slope = spread > 0 ? (byTime - sum * mean) / spread : 0;
                double intercept = count > 0 ? sum / count - slope * (origin + mean) : 0;
                errorMean[i - from] += first * intercept;
                errorSquare[i - from] += second * intercept * intercept;
                leftMean[i - from] += first * decay[i];
                leftSquare[i - from] += second * decay[i] * decay[i];
            }
        }
    }
}
