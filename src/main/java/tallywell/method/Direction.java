package tallywell.method;

/** Where the signal goes while the analyte reacts. */
public enum Direction implements Worded {
    /** Absorbance rises. */
    RISES("rises", 1),
    /** Absorbance falls. */
    FALLS("falls", -1);

    private final String word;
    private final int sign;

    Direction(String word, int sign) {
        this.word = word;
        this.sign = sign;
    }

    @Override
    public String word() {
        return word;
    }

    /** +1 where the signal rises, -1 where it falls. */
    public int sign() {
        return sign;
    }
}
