package tallywell.method;

/** Shape of the calibration curve. */
public enum Model implements Worded {
    /** Straight line. */
    LINE("line"),
    /** Straight line through zero. */
    LINE_THROUGH_ZERO("line-through-zero"),
    /** Parabola. */
    QUADRATIC("quadratic"),
    /** Logistic with four parameters. */
    LOGISTIC_4("logistic-4"),
    /** Logistic with five parameters. */
    LOGISTIC_5("logistic-5");

    private final String word;

    Model(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
