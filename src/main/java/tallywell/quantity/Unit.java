package tallywell.quantity;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The closed list of units that the files may use. */
public enum Unit {
    NANOLITRE("nL", Kind.VOLUME, 1e-3),
    MICROLITRE("µL", Kind.VOLUME, 1),
    MILLILITRE("mL", Kind.VOLUME, 1e3),
    LITRE("L", Kind.VOLUME, 1e6),
    MILLISECOND("ms", Kind.TIME, 1e-3),
    SECOND("s", Kind.TIME, 1),
    MINUTE("min", Kind.TIME, 60),
    HOUR("h", Kind.TIME, 3600),
    NANOMETRE("nm", Kind.LENGTH, 1e-7),
    MICROMETRE("µm", Kind.LENGTH, 1e-4),
    MILLIMETRE("mm", Kind.LENGTH, 0.1),
    CENTIMETRE("cm", Kind.LENGTH, 1),
    SQUARE_MILLIMETRE("mm2", Kind.AREA, 1),
    SQUARE_CENTIMETRE("cm2", Kind.AREA, 100),
    MICROGRAM("µg", Kind.MASS, 1e-6),
    MILLIGRAM("mg", Kind.MASS, 1e-3),
    GRAM("g", Kind.MASS, 1),
    KILOGRAM("kg", Kind.MASS, 1e3),
    GRAM_PER_LITRE("g/L", Kind.CONCENTRATION, 1),
    MILLIGRAM_PER_LITRE("mg/L", Kind.CONCENTRATION, 1e-3),
    MICROGRAM_PER_LITRE("µg/L", Kind.CONCENTRATION, 1e-6),
    GRAM_PER_100_ML("g/100mL", Kind.CONCENTRATION, 10),
    MILLIMOLE_PER_LITRE("mmol/L", Kind.AMOUNT_CONCENTRATION, 1),
    MICROMOLE_PER_LITRE("µmol/L", Kind.AMOUNT_CONCENTRATION, 1e-3),
    GRAM_PER_100_G("g/100g", Kind.CONTENT, 1),
    MILLIGRAM_PER_KILOGRAM("mg/kg", Kind.CONTENT, 1e-4),
    LITRE_PER_MOLE_CM("L/mol/cm", Kind.ABSORPTIVITY, 1),
    LITRE_PER_MILLIMOLE_CM("L/mmol/cm", Kind.ABSORPTIVITY, 1e3),
    GRAM_PER_MOLE("g/mol", Kind.MOLAR_MASS, 1),
    GRAM_PER_MILLILITRE("g/mL", Kind.DENSITY, 1),
    PERCENT("%", Kind.RATIO, 0.01);

    private final String symbol;
    private final Kind kind;
    private final double factor;

    Unit(String symbol, Kind kind, double factor) {
        this.symbol = symbol;
        this.kind = kind;
        this.factor = factor;
    }

    /** The unit as it is printed. */
    public String symbol() {
        return symbol;
    }

    /** What the unit measures. */
    public Kind kind() {
        return kind;
    }

    /** How many base units of its kind one of this unit is. */
    public double factor() {
        return factor;
    }

    /**
     * Finds a unit by its symbol. Blanks inside are ignored; u, µ (micro sign) and μ (Greek letter) are one; ² is 2.
     *
     * @param text the symbol as typed
     */
    public static Optional<Unit> of(String text) {
        String plain = text.replaceAll("\\s+", "")
                .replace('μ', 'µ')
                .replaceFirst("^u(?=[LmgM])", "µ")
                .replace("²", "2");
        return Arrays.stream(values()).filter(unit -> unit.symbol.equals(plain)).findFirst();
    }

    /** The units of a kind, in the order of the list. */
    public static List<Unit> of(Kind kind) {
        return Arrays.stream(values()).filter(unit -> unit.kind == kind).toList();
    }

    @Override
    public String toString() {
        return symbol;
    }
}
