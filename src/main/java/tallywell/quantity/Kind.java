package tallywell.quantity;

/** What a unit measures. Quantities of different kinds never mix. */
public enum Kind {
    /** Volume of liquid; base unit µL. */
    VOLUME("volume"),
    /** Duration; base unit s. */
    TIME("time"),
    /** Light path, wavelength, diameter; base unit cm. */
    LENGTH("length"),
    /** Area of a well; base unit mm2. */
    AREA("area"),
    /** Mass; base unit g. */
    MASS("mass"),
    /** Mass of analyte in a volume; base unit g/L. */
    CONCENTRATION("concentration"),
    /** Amount of analyte in a volume; base unit mmol/L. */
    AMOUNT_CONCENTRATION("amount concentration"),
    /** Mass of analyte in a mass; base unit g/100g. */
    CONTENT("content"),
    /** Molar absorptivity; base unit L/mol/cm. */
    ABSORPTIVITY("molar absorptivity"),
    /** Molar mass; base unit g/mol. */
    MOLAR_MASS("molar mass"),
    /** Density; base unit g/mL. */
    DENSITY("density"),
    /** Part of a whole; base unit 1. */
    RATIO("percentage");

    private final String label;

    Kind(String label) {
        this.label = label;
    }

    /** The kind in the words of a message. */
    public String label() {
        return label;
    }
}
