package tallywell.numeric;

/**
 * Grubbs' test for one outlier: the largest deviation from the mean in standard deviations.
 *
 * <pre>{@code
 * G = |x - mean| / s
 * critical  (n - 1) / √n · √(t² / (n - 2 + t²)),  t the quantile with n - 2 degrees of freedom at 1 - α/n for a named
 *           end, at 1 - α/(2n) for either end
 * }</pre>
 *
 * <p>The critical values are computed from Student's t, since printed tables carry misprints. Values that are all
 * equal give G = 0.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.17.1; ISO 5725-2 (from memory).
 */
public final class Grubbs {
    /** The fewest values that are tested; with three, G can hardly pass its limit. */
    public static final int LEAST = 4;

    private Grubbs() {}

    /**
     * Tests for one outlier.
     *
     * @param values at least {@value #LEAST} finite values in any order
     * @param suspect which end is suspected
     * @param significance how often a clean sample may be called in question
     */
    public static OutlierTest test(double[] values, Suspect suspect, Significance significance) {
        Series.atLeast("values", values, LEAST);
        Series.finite("values", values);
        double mean = Series.mean(values);
        int index = 0;
        for (int i = 1; i < values.length; i++) {
            if (deviation(values[i], mean, suspect) > deviation(values[index], mean, suspect)) {
                index = i;
            }
        }
        double sd = Math.sqrt(Series.squaresAbout(mean, values) / (values.length - 1));
        double found = sd > 0 ? deviation(values[index], mean, suspect) / sd : 0;
        return new OutlierTest("Grubbs", found, critical(values.length, suspect, significance), index);
    }

    private static double deviation(double value, double mean, Suspect suspect) {
        return switch (suspect) {
            case HIGHEST -> value - mean;
            case LOWEST -> mean - value;
            case EITHER -> Math.abs(value - mean);
        };
    }

    /**
     * The G beyond which a suspect is called an outlier.
     *
     * @param count how many values, at least 3
     * @param suspect which end is suspected
     * @param significance how often a clean sample may be called in question
     */
    public static double critical(int count, Suspect suspect, Significance significance) {
        if (!(count >= 3)) {
            throw new IllegalArgumentException("count must be at least 3 but was " + count);
        }
        int ends = suspect == Suspect.EITHER ? 2 : 1;
        double t = StudentT.quantile(significance.probability() / (ends * count), count - 2);
        return (count - 1) / Math.sqrt(count) * Math.sqrt(t * t / (count - 2 + t * t));
    }
}
