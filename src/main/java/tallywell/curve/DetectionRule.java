package tallywell.curve;

/** Where detection limits come from. */
public enum DetectionRule {
    /** Scatter of the blanks on the net scale, after Currie (IUPAC 1995). */
    BLANKS("t · s0 · √(1/n + 1/N) of the blanks (IUPAC 1995)"),
    /** Residual standard deviation of the line, at its low end. */
    LINE_RESIDUAL("3.3 and 10 · residual SD / slope (ICH Q2)"),
    /** Standard error of the intercept. */
    LINE_INTERCEPT("3.3 and 10 · SE of the intercept / slope (ICH Q2)"),
    /** Prediction of the line at level 0, after ISO 11843-2 and DIN 32645. */
    LINE_PREDICTION("t · s of a net ΔA read from the line at 0 / slope (ISO 11843-2, DIN 32645)"),
    /** Standard uncertainty of a result that is 0, such as a difference. */
    UNCERTAINTY("t · u of a result of 0 (IUPAC 1995)"),
    /** Mean of the blank and multiples of its standard deviation. */
    BLANK_MEAN("blank mean + 3 and 10 · SD (OIV-MA-AS1-10)");

    private final String text;

    DetectionRule(String text) {
        this.text = text;
    }

    @Override
    public String toString() {
        return text;
    }
}
