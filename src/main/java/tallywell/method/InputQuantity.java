package tallywell.method;

/** What besides scatter can make a result uncertain, as the method file names it. */
public enum InputQuantity implements Worded {
    /** Volume of sample that a pipette setting delivers, relative. */
    SAMPLE_VOLUME("sample-volume", "sample volume"),
    /** Total volume after the trigger, relative. */
    TOTAL_VOLUME("total-volume", "total volume"),
    /** Molar absorptivity, relative. */
    ABSORPTIVITY("absorptivity", "molar absorptivity"),
    /** Length of a fixed beam, area of the well for a vertical one, or the reading of 1 cm of water by which it is measured. */
    LIGHT_PATH("light-path", "light path"),
    /** Photometric scale of the reader, relative. */
    READER("reader", "photometric scale"),
    /** Assigned value of the standards, relative. */
    STANDARD("standard", "assigned value of the standard"),
    /** A dilution before pipetting, relative. */
    DILUTION("dilution", "dilution"),
    /** Creep that is left in net ΔA, in absorbance. */
    CREEP("creep", "creep left"),
    /** What makes one plate differ from another, relative. */
    PLATE("plate", "plate"),
    /** Mass weighed in, in g. */
    MASS("mass", "mass weighed in"),
    /** Volume that an extract was made up to, relative. */
    EXTRACT_VOLUME("extract-volume", "extract volume"),
    /** Density of a liquid, relative. */
    DENSITY("density", "density"),
    /** The moment of the trigger as it is written, in s. */
    TRIGGER_MOMENT("trigger-moment", "moment of the trigger");

    private final String word;
    private final String label;

    InputQuantity(String word, String label) {
        this.word = word;
        this.label = label;
    }

    @Override
    public String word() {
        return word;
    }

    /** The quantity in the words of a report. */
    public String label() {
        return label;
    }
}
