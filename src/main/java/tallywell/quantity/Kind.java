package tallywell.quantity;

/**
 * What a unit measures. Quantities of different kinds never mix.
 *
 * <p>Each kind has bounds that no laboratory reaches, so that what lies beyond them is a slip of the pen: a time of over a
 * week, a solution of more grams a litre than any metal has, a content of more than everything, a density above that of
 * osmium (22.6 g/mL), an absorptivity ten times that of the strongest dyes. Common practice, no source.
 */
public enum Kind {
    /** Volume of liquid; base unit µL. */
    VOLUME("volume", 1e-6, 1e9),
    /** Duration; base unit s. */
    TIME("time", 1e-6, 604_800),
    /** Light path, wavelength, diameter; base unit cm. */
    LENGTH("length", 1e-9, 1e3),
    /** Area of a well; base unit mm2. */
    AREA("area", 1e-3, 1e6),
    /** Mass; base unit g. */
    MASS("mass", 1e-12, 1e6),
    /** Mass of analyte in a volume; base unit g/L. */
    CONCENTRATION("concentration", 1e-12, 1e4),
    /** Amount of analyte in a volume; base unit mmol/L. */
    AMOUNT_CONCENTRATION("amount concentration", 1e-12, 1e5),
    /** Mass of analyte in a mass; base unit g/100g. */
    CONTENT("content", 1e-12, 100),
    /** Molar absorptivity; base unit L/mol/cm. */
    ABSORPTIVITY("molar absorptivity", 1e-3, 1e7),
    /** Molar mass; base unit g/mol. */
    MOLAR_MASS("molar mass", 1, 1e7),
    /** Density; base unit g/mL. */
    DENSITY("density", 0.01, 25),
    /** Part of a whole; base unit 1. */
    RATIO("percentage", 1e-12, 1e4);

    private final String label;
    private final double least;
    private final double most;

    Kind(String label, double least, double most) {
        this.label = label;
        this.least = least;
        this.most = most;
    }

    /** Whether a value in the base unit can be meant: none, or of a size within the bounds, with either sign. */
    public boolean isPossible(double base) {
        double size = Math.abs(base);
        return size == 0 || size >= least && size <= most;
    }

    /** The smallest size above nothing, in the base unit. */
    public double least() {
        return least;
    }

    /** The largest size, in the base unit. */
    public double most() {
        return most;
    }

    /** The kind in the words of a message. */
    public String label() {
        return label;
    }
}
