package tallywell.across;

import java.util.Arrays;

/**
 * The median of a few results, and how much more it scatters than their mean.
 *
 * <p>The ratio of variances is exact for independent normal results: n times the variance of the median of n standard
 * normal variables, by numerical integration over order statistics ({@code reference/across_by_r.csv} of the tests). From
 * 11 results on π/2 serves, the limit for many, which is at most 6 % too large in u.
 */
final class Median {
    /** For 1 to 10 results. */
    private static final double[] RATIOS = {
        1,
        1,
        1.3460133137,
        1.1927984737,
        1.4341683080,
        1.2884559995,
        1.4731280307,
        1.3454468413,
        1.4949115322,
        1.3832643584
    };

    private Median() {}

    /** The middle value, or the mean of the two in the middle. */
    static double of(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
    }

    /**
     * Variance of the median over that of the mean.
     *
     * @param n results, at least 1
     */
    static double varianceRatio(int n) {
        return n <= RATIOS.length ? RATIOS[n - 1] : Math.PI / 2;
    }
}
