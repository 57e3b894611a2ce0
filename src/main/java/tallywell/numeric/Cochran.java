package tallywell.numeric;

import java.util.Arrays;

/**
 * Cochran's test for one variance that is too large among several.
 *
 * <pre>{@code
 * C = largest s² / sum of s²
 * critical  1 / (1 + (p - 1) / F),  F the quantile at 1 - α/p with n - 1 and (p - 1)(n - 1) degrees of freedom
 * }</pre>
 *
 * <p>The p variances come from groups of n values each. The critical values are computed from F. Variances that are
 * all 0 give C = 0.
 *
 * <p>Source: ISO 5725-2 (from memory); its table 4 comes back to the three printed decimals but for single units in
 * the last place, where the table rests on simulation.
 */
public final class Cochran {
    private Cochran() {}

    /**
     * Tests for one large variance.
     *
     * @param variances p values, at least 2, none negative
     * @param replicates n, how many values each variance comes from, at least 2
     * @param significance how often clean groups may be called in question
     */
    public static OutlierTest test(double[] variances, int replicates, Significance significance) {
        Series.atLeast("variances", variances, 2);
        Series.finite("variances", variances);
        for (int i = 0; i < variances.length; i++) {
            if (!(variances[i] >= 0)) {
                throw new IllegalArgumentException("variances[" + i + "] must be at least 0 but was " + variances[i]);
            }
        }
        double largest = Arrays.stream(variances).max().orElseThrow();
        double sum = Arrays.stream(variances).sum();
        return new OutlierTest(
                "Cochran",
                sum > 0 ? largest / sum : 0,
                critical(variances.length, replicates, significance),
                OutlierTest.indexOf(largest, variances));
    }

    /**
     * The C beyond which the largest variance is called in question.
     *
     * @param groups p, at least 2
     * @param replicates n, at least 2
     * @param significance how often clean groups may be called in question
     */
    public static double critical(int groups, int replicates, Significance significance) {
        if (!(groups >= 2)) {
            throw new IllegalArgumentException("groups must be at least 2 but was " + groups);
        }
        if (!(replicates >= 2)) {
            throw new IllegalArgumentException("replicates must be at least 2 but was " + replicates);
        }
        double others = groups - 1;
        double f = FisherF.quantile(1 - significance.probability() / groups, replicates - 1, others * (replicates - 1));
        return 1 / (1 + others / f);
    }
}
