package tallywell.trace;

import java.util.Arrays;

/**
 * Where the finished part begins: of the readings at which the burst left is bounded by 0.3 mA, the one from which a line
 * has the least expected square error at the trigger, burst left and scatter taken together.
 *
 * <pre>{@code
 * least over j of  (scatter of the line from j, at t = 0)² + CAUTION (error from the burst left at j)²
 * }</pre>
 *
 * <p>The burst counts more than scatter: scatter averages out over replicates, the burst does not. Where no reading is so
 * late, the latest from which a line can be drawn is taken.
 */
final class FinishedStart {
    /** Fewest readings in a finished part chosen from the data. */
    static final int FEWEST = 5;

    /** Bound on the burst left at the start (in absorbance) above which a reaction is called incomplete. */
    static final double MOST_BURST = 0.0005;

    private static final double CAUTION = 25;
    private static final double MOST_LEFT = 0.0003;
    /** An earlier start is kept unless a later one gains more than this (in absorbance, squared: 0.3 mA). */
    static final double WORTH_IT = 9e-8;

    /**
     * A line is poor if the square of its expected error at the trigger is more than this many times that of a line from
     * where the burst ceases to show, were nothing left of it there.
     */
    private static final double POOR = 3;

    private FinishedStart() {}

    /**
     * Whether a tail does not tell well enough where the finished part begins: it does not bound what is left at the start,
     * or only at one so late, or with so much left, that the line is far less certain than it need be.
     */
    static boolean isPoor(Tail tail, int start) {
        double free = tail.lineVariance(tail.from());
        return tail.leftBound(start) > MOST_BURST || expected(tail, start) > POOR * free + WORTH_IT;
    }

    /** Whether one tail and its start are to be preferred to another: where only it bounds what is left, or the line is surer. */
    static boolean isBetter(Tail tail, int start, Tail than, int thanStart) {
        return tail.leftBound(start) <= MOST_BURST
                && (than.leftBound(thanStart) > MOST_BURST || expected(tail, start) < expected(than, thanStart));
    }

    private static double expected(Tail tail, int j) {
        double error = tail.errorRms(j);
        return tail.lineVariance(j) + error * error;
    }

    /** First reading of the finished part of a trace of n readings. */
    static int of(Tail tail, int n) {
        int first = tail.from();
        while (tail.readings(first) > FEWEST && tail.leftBound(first) > MOST_LEFT) {
            first++;
        }
        double[] cost = new double[n];
        Arrays.fill(cost, Double.POSITIVE_INFINITY);
        double least = Double.POSITIVE_INFINITY;
        for (int j = first; j < n && tail.readings(j) >= FEWEST; j++) {
            double error = tail.errorRms(j);
            cost[j] = tail.lineVariance(j) + CAUTION * error * error;
            least = Math.min(least, cost[j]);
        }
        while (tail.readings(first) > FEWEST && !(cost[first] <= least + WORTH_IT)) {
            first++;
        }
        return first;
    }
}
