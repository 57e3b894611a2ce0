package tallywell.method;

/** Where the column-by-column additions start. */
public enum StaggerFrom implements Worded {
    /** In column 1. */
    LEFT("left"),
    /** In the last column. */
    RIGHT("right");

    private final String word;

    StaggerFrom(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }
}
