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
 * is not picked but averaged over ({@link RateSearch}). Where the burst shows, the weights gather at its rate; where it was
 * over before the first reading, what remains is bounded by how early it was over.
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

    /** Standard deviations to the bound. */
    private static final double BOUND = 1.64;

    private final TailLines lines;
    private final TailFaults faults;
    private final double[] errorSquare;
    private final double[] leftMean;
    private final double[] leftSquare;
    private final double scatterSquare;
    private final double carry;

    private BurstTail(double[] t, int from, RateSearch search, double burst) {
        lines = new TailLines(t, from);
        errorSquare = new double[t.length - from];
        leftMean = new double[t.length - from];
        leftSquare = new double[t.length - from];
        scatterSquare = search.inflated();
        carry = search.carry();
        double[] dyingAway = Arrays.copyOfRange(BentCreep.dyingAway(t, from, t.length), from, t.length);
        faults = new TailFaults(search, dyingAway, t[from], burst);
        double[] intercepts = new double[t.length - from];
        search.eachRate((decay, weight, size, variance) -> {
            double first = weight * size;
            double second = weight * (size * size + variance);
            lines.intercepts(decay, intercepts);
            for (int j = 0; j < decay.length; j++) {
                errorSquare[j] += second * intercepts[j] * intercepts[j];
                leftMean[j] += first * decay[j];
                leftSquare[j] += second * decay[j] * decay[j];
            }
        });
    }

    /**
     * Looks at the readings after the trigger, spikes taken out.
     *
     * @param baseline what was there before the trigger
     * @param seen how clearly the trace shows a burst
     * @return the tail, or null if the window holds fewer than five readings
     */
    static @Nullable BurstTail of(double[] t, double[] y, BaselineRule baseline, SeenBurst seen) {
        int n = t.length;
        if (n < FEWEST) {
            return null;
        }
        LineFit rough = LineFit.of(t, y, Math.min(n - 3, n - n / 3), n, null);
        double burst = rough.at(0) - baseline.value();
        double visible = VISIBLE * Math.sqrt(rough.squares() / Math.max(1, rough.degreesOfFreedom()));
        double start = Math.min(MOST_AT_START, Math.max(LEAST_AT_START, visible / Math.abs(burst)));
        int from = 0;
        if (seen.mayShowItsCourse() && n >= SeenBurst.FEWEST_FOR_COURSE) {
            while (from < n - FEWEST && (rough.at(t[from]) - y[from]) / burst > start) {
                from++;
            }
        }
        LineFit line = LineFit.of(t, y, from, n, null);
        if (!(line.timeSquares() > 0)) {
            return null;
        }
        double span = t[n - 1] - t[from];
        double scatter = Math.sqrt(line.squares() / line.n());
        double gone = Math.max(Math.abs(rough.at(t[from]) - y[from]), 2 * scatter);
        double reached = Math.max(t[from], span / (n - from));
        double slow = Math.max(0.3 / span, 0.5 * Math.log(Math.max(2, Math.abs(burst) / gone)) / reached);
        // A burst that is over before the first reading may have been over long before.
        double fast = Math.max((from == 0 ? 8 : 2) * slow, 3 * (n - from) / span);
        RateSearch search = new RateSearch(t, y, from, line);
        search.between(slow, fast);
        if (from == 0) {
            search.beginAfterBurst(seen == SeenBurst.NONE ? 0 : line.at(0) - baseline.value(), t[0]);
        }
        return new BurstTail(t, from, search, burst);
    }

    @Override
    public int from() {
        return lines.from();
    }

    @Override
    public double carry() {
        return carry;
    }

    @Override
    public boolean jumps() {
        return faults.jumps();
    }

    @Override
    public double dyingSquare() {
        return faults.dyingSquare();
    }

    @Override
    public boolean bends() {
        return faults.bends();
    }

    @Override
    public double lineVariance(int j) {
        return scatterSquare * lines.varianceAtTrigger(j);
    }

    @Override
    public int readings(int j) {
        return lines.count(j);
    }

    @Override
    public double errorRms(int j) {
        return Math.sqrt(errorSquare[j - from()]);
    }

    @Override
    public double left(int j) {
        return leftMean[j - from()];
    }

    @Override
    public double leftBound(int j) {
        double mean = left(j);
        return Math.abs(mean) + BOUND * Math.sqrt(Math.max(0, leftSquare[j - from()] - mean * mean));
    }
}
