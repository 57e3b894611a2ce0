package tallywell.method;

/** Which half of a result by difference a row of the sample list is. */
public enum Treatment implements Worded {
    /** Neither. */
    NONE(""),
    /** As it is: what is there free. */
    FREE("free"),
    /** After the treatment: all there is. */
    TOTAL("total");

    private final String word;

    Treatment(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
