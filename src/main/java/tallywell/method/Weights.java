package tallywell.method;

/** How the points of a calibration weigh. */
public enum Weights implements Worded {
    /** All the same. */
    NONE("none"),
    /** By the reciprocal of the level. */
    ONE_OVER_X("1/x"),
    /** By the reciprocal of the level squared. */
    ONE_OVER_X2("1/x2"),
    /** By the reciprocal of the signal. */
    ONE_OVER_Y("1/y"),
    /** By the reciprocal of the variance that the replicates of the plate have at the signal. */
    VARIANCE_FUNCTION("variance-function");

    private final String word;

    Weights(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
