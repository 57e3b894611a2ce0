package tallywell.method;

/** To whom the creep of a step belongs when another step follows. */
public enum CreepOwner implements Worded {
    /** A side activity: taken off as anywhere. */
    NOTHING("nothing"),
    /** The next analyte, already reacting. */
    NEXT_STEP("next-step");

    private final String word;

    CreepOwner(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
