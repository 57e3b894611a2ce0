package tallywell.numeric;

/** How often a test may call a clean sample in question: the two levels that ISO 5725-2 works with. */
public enum Significance {
    /** Beyond this a value is a straggler. */
    FIVE_PERCENT(0.05),
    /** Beyond this a value is an outlier. */
    ONE_PERCENT(0.01);

    private final double probability;

    Significance(double probability) {
        this.probability = probability;
    }

    /** The probability. */
    public double probability() {
        return probability;
    }
}
