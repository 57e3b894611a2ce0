package tallywell.method;

/** How a steady rise after the reaction is taken off. */
public enum Creep implements Worded {
    /** Not at all: the reading nearest the planned time counts. */
    NONE("none"),
    /** The line through the finished part, at the trigger. */
    EXTRAPOLATE("extrapolate"),
    /** The end of the fitted rate law, at the trigger. */
    PROGRESS_CURVE("progress-curve");

    private final String word;

    Creep(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
