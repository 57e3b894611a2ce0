package tallywell.method;

/** Which samples the recovery of a spike speaks for. */
public enum SpikeScope implements Worded {
    /** The sample that was spiked: another may have another matrix. */
    SAMPLE("sample"),
    /** All samples of its group of blanks, which share its matrix. */
    GROUP("group"),
    /** All samples of the plate. */
    BATCH("batch");

    private final String word;

    SpikeScope(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
