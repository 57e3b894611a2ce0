package tallywell.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Single readings off a smooth trace.
 *
 * <pre>{@code
 * d[i] = y[i] - (y[i-1] + y[i+1]) / 2
 * }</pre>
 *
 * <p>A single reading h off the trace gives d = -h/2, h, -h/2; the bend of a burst gives neighbours of one sign. So reading
 * i is a spike where |d[i]| is over {@value #FACTOR} times the scatter of d (1.4826 times the median of their size), and
 * both neighbours have the other sign and at least a quarter of the size. At white noise one reading in some ten million
 * is that far out. In a series of end points under {@value #FEWEST} readings nothing is called a spike.
 */
final class Spikes {
    static final int FEWEST = 6;
    private static final double FACTOR = 6;
    private static final double JUMP_FACTOR = 4.5;
    private static final double LEVEL_FACTOR = 8;
    private static final double GAP = 1.5;
    private static final double MOST_SWING = 0.75;
    private static final double TO_NORMAL = 1.4826;
    /** Below this a reading is never called off the trace: the last digits of a reader make such steps. */
    private static final double LEAST_HEIGHT = 0.003;

    private Spikes() {}

    /** Marks the spikes among y; all false where there are none. */
    static boolean[] in(double[] y) {
        int n = y.length;
        boolean[] spike = new boolean[n];
        if (n < FEWEST) {
            return spike;
        }
        double[] d = new double[n];
        for (int i = 1; i < n - 1; i++) {
            d[i] = y[i] - 0.5 * (y[i - 1] + y[i + 1]);
        }
        // The median costs more than all the rest, and hardly a trace needs it.
        double limit = LEAST_HEIGHT;
        boolean raised = false;
        for (int i = 1; i < n - 1; i++) {
            if (Math.abs(d[i]) > limit && opposite(d, i, i - 1) && opposite(d, i, i + 1) && !isBend(d, i)) {
                if (!raised) {
                    limit = Math.max(limit, FACTOR * TO_NORMAL * medianSize(d));
                    raised = true;
                }
                spike[i] = Math.abs(d[i]) > limit;
            }
        }
        return spike;
    }

    /** The marked readings, ascending. */
    static List<Integer> listed(boolean[] marked) {
        List<Integer> list = new ArrayList<>();
        for (int i = 0; i < marked.length; i++) {
            if (marked[i]) {
                list.add(i);
            }
        }
        return list;
    }

    /** The values that are not marked. */
    static double[] kept(double[] values, boolean[] marked) {
        int n = values.length;
        for (boolean each : marked) {
            n -= each ? 1 : 0;
        }
        if (n == values.length) {
            return values;
        }
        double[] kept = new double[n];
        int next = 0;
        for (int i = 0; i < values.length; i++) {
            if (!marked[i]) {
                kept[next++] = values[i];
            }
        }
        return kept;
    }

    /** Where the reading stands that is the given one, counted from 0, of those that are not marked. */
    static int readingOfKept(int index, boolean[] marked) {
        int left = index;
        int i = 0;
        while (marked[i] || left > 0) {
            left -= marked[i] ? 0 : 1;
            i++;
        }
        return i;
    }

    /**
     * Marks the readings off a level: over {@value #LEVEL_FACTOR} times the scatter from the median, a baseline being too
     * short for differences to tell a spike from its neighbours. Under five readings nothing is called a spike.
     */
    static boolean[] offLevel(double[] y) {
        int n = y.length;
        boolean[] spike = new boolean[n];
        if (n < 5) {
            return spike;
        }
        double[] sorted = y.clone();
        Arrays.sort(sorted);
        double median = 0.5 * (sorted[(n - 1) / 2] + sorted[n / 2]);
        double[] size = new double[n];
        for (int i = 0; i < n; i++) {
            size[i] = Math.abs(y[i] - median);
        }
        double[] ordered = size.clone();
        Arrays.sort(ordered);
        double limit = Math.max(LEAST_HEIGHT, LEVEL_FACTOR * TO_NORMAL * ordered[n / 2]);
        for (int i = 0; i < n; i++) {
            spike[i] = size[i] > limit;
        }
        return spike;
    }

    /**
     * Whether the trace jumps from one level to another: a single first difference off its neighbours, which is a spike
     * among the first differences, where a burst that stops dead only bends them. Their scatter is that of the later
     * half, where the burst is over. Spikes must have been taken out; across a gap in time nothing is said.
     *
     * @param until readings from this one on are not looked at
     */
    static boolean jumps(double[] t, double[] y, int until) {
        int n = y.length - 1;
        if (n < FEWEST + 2) {
            return false;
        }
        double[] d = new double[n];
        double later = 0;
        for (int i = 1; i < n - 1; i++) {
            d[i] = y[i + 1] - y[i] - 0.5 * (y[i] - y[i - 1] + y[i + 2] - y[i + 1]);
            later += i >= n / 2 ? Math.abs(d[i]) : 0;
        }
        // The mean size of normal noise is √(2/π) of its standard deviation.
        double scatter = Math.sqrt(Math.PI / 2) * later / (n - 1 - n / 2);
        double limit = Math.max(LEAST_HEIGHT, JUMP_FACTOR * scatter);
        for (int i = 2; i < Math.min(until, n - 2); i++) {
            if (Math.abs(d[i]) > limit && opposite(d, i, i - 1) && opposite(d, i, i + 1) && isEven(t, i - 2, i + 3)) {
                return true;
            }
        }
        return false;
    }

    /** Whether the readings of a stretch follow each other at one interval, by and large. */
    private static boolean isEven(double[] t, int from, int to) {
        double shortest = Double.POSITIVE_INFINITY;
        double longest = 0;
        for (int i = Math.max(1, from + 1); i <= Math.min(to, t.length - 1); i++) {
            shortest = Math.min(shortest, t[i] - t[i - 1]);
            longest = Math.max(longest, t[i] - t[i - 1]);
        }
        return longest < GAP * shortest;
    }

    private static boolean opposite(double[] d, int i, int neighbour) {
        boolean edge = neighbour == 0 || neighbour == d.length - 1;
        return edge || d[i] * d[neighbour] < 0 && Math.abs(d[neighbour]) > 0.25 * Math.abs(d[i]);
    }

    /** At either end one neighbour is missing, and a rise that sets in or stops there swings back by more than half. */
    private static boolean isBend(double[] d, int i) {
        int inner = i == 1 ? 2 : i == d.length - 2 ? i - 1 : i;
        return inner != i && Math.abs(d[inner]) > MOST_SWING * Math.abs(d[i]);
    }

    private static double medianSize(double[] d) {
        double[] size = new double[d.length - 2];
        for (int i = 1; i < d.length - 1; i++) {
            size[i - 1] = Math.abs(d[i]);
        }
        Arrays.sort(size);
        return size[size.length / 2];
    }
}
