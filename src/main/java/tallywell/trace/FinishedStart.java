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

    private static final double CAUTION = 9;
    private static final double MOST_LEFT = 0.0003;
    /** An earlier start is kept unless a later one gains more than this (in absorbance, squared: 0.3 mA). */
    private static final double WORTH_IT = 9e-8;

    private FinishedStart() {}

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
