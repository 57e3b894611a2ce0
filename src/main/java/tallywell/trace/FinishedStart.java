package tallywell.trace;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Where the finished part begins: the reading from which a line has the least expected square error at the trigger, the
 * burst left and the scatter taken together.
 *
 * <pre>{@code
 * least over j of  (scatter of the line from j, at t = 0)² + CAUTION (error from the burst left at j)²
 * }</pre>
 *
 * <p>The burst counts more than scatter: scatter averages out over replicates, the burst does not.
 */
final class FinishedStart {
    static final double CAUTION = 9;
    private static final int FEWEST = 5;
    /** An earlier start is kept unless a later one gains more than this (in absorbance, squared: 0.3 mA). */
    private static final double WORTH_IT = 9e-8;

    private FinishedStart() {}

    /** First reading of the finished part, given what is known of the burst. */
    static int of(BurstTail tail, double[] t, boolean @Nullable [] leftOut) {
        double[] cost = new double[t.length];
        Arrays.fill(cost, Double.POSITIVE_INFINITY);
        double least = Double.POSITIVE_INFINITY;
        double count = 0;
        double times = 0;
        double squares = 0;
        double variance = tail.scatter() * tail.scatter() * tail.inflation();
        double origin = t[t.length - 1];
        for (int j = t.length - 1; j >= tail.from(); j--) {
            if (leftOut == null || !leftOut[j]) {
                double dt = t[j] - origin;
                count++;
                times += dt;
                squares += dt * dt;
                double mean = times / count;
                double spread = squares - times * mean;
                if (count >= FEWEST && spread > 0) {
                    double lever = origin + mean;
                    double error = tail.errorRms(j);
                    cost[j] = variance * (1 / count + lever * lever / spread) + CAUTION * error * error;
                    least = Math.min(least, cost[j]);
                }
            }
        }
        int first = tail.from();
        while (first < t.length - 1 && !(cost[first] <= least + WORTH_IT)) {
            first++;
        }
        return cost[first] <= least + WORTH_IT ? first : tail.from();
    }
}
