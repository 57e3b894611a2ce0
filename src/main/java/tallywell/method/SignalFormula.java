package tallywell.method;

/** How the readings of a step become its ΔA. */
public enum SignalFormula implements Worded {
    /** A after less A before. */
    DIFFERENCE("difference"),
    /**
     * For an indicator that is in equilibrium before the analyte reacts, with three readings and two triggers: A0, then
     * A1 with the equilibrium settled, then A2 with the analyte used up; {@code E = (A2 - A0) - (A1 - A0)²/(A2 - A0)}.
     */
    EQUILIBRIUM_COUPLED("equilibrium-coupled");

    private final String word;

    SignalFormula(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }

    /** How many triggers a step has. */
    public int triggers() {
        return this == DIFFERENCE ? 1 : 2;
    }
}
