package tallywell.numeric;

/** Which end of a sample an outlier test looks at. */
public enum Suspect {
    /** The highest value only: a one-sided test. */
    HIGHEST("one-sided, highest"),
    /** The lowest value only: a one-sided test. */
    LOWEST("one-sided, lowest"),
    /** Whichever end lies farther out: a two-sided test. */
    EITHER("two-sided");

    private final String word;

    Suspect(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
