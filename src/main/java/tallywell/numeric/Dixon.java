package tallywell.numeric;

import java.util.Arrays;
import java.util.List;

/**
 * Dixon's test for one outlier: the gap beside the suspect over a range.
 *
 * <pre>{@code
 * highest suspected, x sorted upwards:
 * n  4 to  7   r10 = (x[n] - x[n-1]) / (x[n] - x[1])
 * n  8 to 10   r11 = (x[n] - x[n-1]) / (x[n] - x[2])
 * n 11 to 13   r21 = (x[n] - x[n-2]) / (x[n] - x[2])
 * n 14 to 30   r22 = (x[n] - x[n-2]) / (x[n] - x[3])
 * }</pre>
 *
 * <p>The critical values are those of a suspect at a named end; for either end the probability is halved. Values that
 * are all equal give a ratio of 0.
 *
 * <p>Source of the ratios and their ranges of n: Dixon (1953), Processing data for outliers, Biometrics 9, 74 (from
 * memory). The critical values were computed by numerical integration for normal samples; for r10 they agree with
 * Rorabacher (1991), Anal. Chem. 63, 139, table values from memory.
 */
public final class Dixon {
    /** The fewest values that are tested; with three the test has almost no power. */
    public static final int LEAST = 4;

    /** The most values that there are critical values for. */
    public static final int MOST = 30;

    /** n, then the critical values for a tail probability of 0.05, 0.025, 0.01 and 0.005 at one end. */
    private static final List<double[]> CRITICAL = """
            4 0.7655 0.8298 0.8894 0.9207
            5 0.6424 0.7102 0.7810 0.8232
            6 0.5624 0.6275 0.6983 0.7427
            7 0.5073 0.5690 0.6372 0.6811
            8 0.5540 0.6150 0.6809 0.7223
            9 0.5112 0.5700 0.6342 0.6752
            10 0.4779 0.5346 0.5971 0.6372
            11 0.5749 0.6223 0.6744 0.7077
            12 0.5457 0.5921 0.6434 0.6764
            13 0.5212 0.5667 0.6171 0.6497
            14 0.5455 0.5908 0.6405 0.6724
            15 0.5240 0.5686 0.6177 0.6493
            16 0.5054 0.5493 0.5977 0.6290
            17 0.4891 0.5323 0.5801 0.6111
            18 0.4746 0.5172 0.5644 0.5951
            19 0.4617 0.5037 0.5504 0.5808
            20 0.4501 0.4916 0.5378 0.5678
            21 0.4396 0.4806 0.5263 0.5561
            22 0.4301 0.4705 0.5158 0.5453
            23 0.4213 0.4614 0.5062 0.5355
            24 0.4133 0.4529 0.4973 0.5264
            25 0.4059 0.4451 0.4891 0.5180
            26 0.3990 0.4379 0.4815 0.5101
            27 0.3926 0.4311 0.4745 0.5029
            28 0.3866 0.4248 0.4678 0.4961
            29 0.3810 0.4189 0.4616 0.4897
            30 0.3758 0.4134 0.4558 0.4837
            """.lines().map(
            line -> Arrays.stream(line.strip().split(" "))
                    .mapToDouble(Double::parseDouble)
                    .toArray()).toList();

    private Dixon() {}

    /**
     * Tests for one outlier.
     *
     * @param values {@value #LEAST} to {@value #MOST} finite values in any order
     * @param suspect which end is suspected
     * @param significance how often a clean sample may be called in question
     */
    public static OutlierTest test(double[] values, Suspect suspect, Significance significance) {
        if (!(values.length >= LEAST && values.length <= MOST)) {
            throw new IllegalArgumentException(
                    "values must have length " + LEAST + " to " + MOST + " but was " + values.length);
        }
        Series.finite("values", values);
        double[] upwards = values.clone();
        Arrays.sort(upwards);
        double[] downwards = new double[upwards.length];
        for (int i = 0; i < upwards.length; i++) {
            downwards[i] = -upwards[upwards.length - 1 - i];
        }
        double high = ratio(upwards);
        double low = ratio(downwards);
        boolean highest = suspect == Suspect.HIGHEST || suspect == Suspect.EITHER && high >= low;
        double extreme = highest ? upwards[upwards.length - 1] : upwards[0];
        return new OutlierTest(
                "Dixon",
                highest ? high : low,
                critical(values.length, suspect, significance),
                OutlierTest.indexOf(extreme, values));
    }

    private static double ratio(double[] upwards) {
        int n = upwards.length;
        int inner = n <= 10 ? 1 : 2;
        int corner = n <= 7 ? 0 : n <= 13 ? 1 : 2;
        double range = upwards[n - 1] - upwards[corner];
        return range > 0 ? (upwards[n - 1] - upwards[n - 1 - inner]) / range : 0;
    }

    /**
     * The ratio beyond which a suspect is called an outlier.
     *
     * @param count how many values, {@value #LEAST} to {@value #MOST}
     * @param suspect which end is suspected
     * @param significance how often a clean sample may be called in question
     */
    public static double critical(int count, Suspect suspect, Significance significance) {
        int column = (significance == Significance.FIVE_PERCENT ? 1 : 3) + (suspect == Suspect.EITHER ? 1 : 0);
        return CRITICAL.get(count - LEAST)[column];
    }
}
