package tallywell.method;

/** How a laboratory makes one result of several: stated beforehand, whatever the results are. None takes the better one. */
public enum RepeatRule implements Worded {
    /** The mean of all that may stand. */
    MEAN("mean", "mean of all results that may stand"),
    /** The mean weighted by the part of the uncertainty that is of each result alone. */
    WEIGHTED("weighted", "mean of all results that may stand, weighted by 1/u² of what is each result's own"),
    /** The median of all that may stand. */
    MEDIAN("median", "median of all results that may stand"),
    /** ISO 5725-6: the mean if the range is within the critical range, else more measurements, then the median. */
    CRITICAL_RANGE(
            "critical-range",
            "mean if the range is within the critical range of ISO 5725-6, 5.2; else two more results, and then the"
                    + " median");

    private final String word;
    private final String text;

    RepeatRule(String word, String text) {
        this.word = word;
        this.text = text;
    }

    @Override
    public String word() {
        return word;
    }

    /** The rule in words. */
    public String text() {
        return text;
    }
}
