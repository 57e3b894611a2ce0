package tallywell.across;

/**
 * By how much results of one sample may differ: so much that, were their standard deviation σ, one set in twenty would have
 * a larger range.
 *
 * <pre>{@code
 * critical range = f(n) σ
 * }</pre>
 *
 * <p>Source: ISO 5725-6:1994, 4.1.3 and table 1, to its two digits (from memory; the factors are the 95 % points of the
 * range of n standard normal variables, as {@code reference/across_by_r.csv} of the tests has them).
 */
final class CriticalRange {
    /** For 2 to 10 results. */
    private static final double[] FACTORS = {2.8, 3.3, 3.6, 3.9, 4.0, 4.2, 4.3, 4.4, 4.5};

    static final int MOST = FACTORS.length + 1;

    private CriticalRange() {}

    /**
     * The factor f(n).
     *
     * @param n results, 2 to 10
     */
    static double factor(int n) {
        if (!(n >= 2 && n <= MOST)) {
            throw new IllegalArgumentException("n must lie in 2 to " + MOST + " but was " + n);
        }
        return FACTORS[n - 2];
    }
}
