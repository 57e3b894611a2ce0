package tallywell.method;

/** What the added volume of the trigger does to the absorbance before. */
public enum TriggerDilution implements Worded {
    /** Nothing. */
    IGNORE("ignore"),
    /** It dilutes it: volume before over volume after. */
    CORRECT("correct");

    private final String word;

    TriggerDilution(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
