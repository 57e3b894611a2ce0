package tallywell.numeric;

/**
 * The result of a test for one outlier.
 *
 * @param name the test
 * @param statistic what was found
 * @param critical the limit for it
 * @param index where the suspect stands in the values as given, from 0
 */
public record OutlierTest(String name, double statistic, double critical, int index) {
    /** Whether the statistic is beyond the limit. */
    public boolean beyond() {
        return statistic > critical;
    }

    static int indexOf(double value, double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (values[i] == value) {
                return i;
            }
        }
        throw new IllegalArgumentException("value must be one of the values but was " + value);
    }
}
