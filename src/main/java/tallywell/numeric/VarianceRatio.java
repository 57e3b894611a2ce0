package tallywell.numeric;

/**
 * A ratio of two variances, to be compared with F.
 *
 * @param statistic upper variance over lower variance, at least 0
 * @param numerator degrees of freedom of the upper variance, positive
 * @param denominator degrees of freedom of the lower variance, positive
 */
public record VarianceRatio(double statistic, double numerator, double denominator) {
    /** Refuses what is no ratio of variances. */
    public VarianceRatio {
        if (!(statistic >= 0 && statistic <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("statistic must be at least 0 but was " + statistic);
        }
        Series.positive("numerator", numerator);
        Series.positive("denominator", denominator);
    }

    /** The limit that equal variances pass with a probability of the significance only. */
    public double critical(Significance significance) {
        return FisherF.quantile(1 - significance.probability(), numerator, denominator);
    }

    /** The probability of a ratio at least as large if the variances are equal. */
    public double tail() {
        return FisherF.tail(statistic, numerator, denominator);
    }

    /** Whether the ratio is beyond its limit. */
    public boolean beyond(Significance significance) {
        return statistic > critical(significance);
    }
}
