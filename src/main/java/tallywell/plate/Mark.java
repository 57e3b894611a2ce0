package tallywell.plate;

/** What the reader said of a reading. */
public enum Mark {
    /** A number was read. */
    NONE(""),
    /** The reader said out of range. */
    OVER("over"),
    /** Nothing was read. */
    MISSING("missing");

    private final String word;

    Mark(String word) {
        this.word = word;
    }

    /** The mark as files spell it; empty for a number. */
    public String word() {
        return word;
    }
}
