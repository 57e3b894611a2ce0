package tallywell.method;

/** How the absorbance before the trigger follows from the baseline readings. */
public enum Before implements Worded {
    /** Mean of the readings. */
    MEAN("mean"),
    /** Their straight line at the trigger. */
    LINE("line"),
    /** The last of them. */
    LAST("last");

    private final String word;

    Before(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
