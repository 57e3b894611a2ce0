package tallywell.exchange;

import tallywell.quantity.Unit;

/**
 * Codes of the Unified Code for Units of Measure, in its case sensitive form, which other programs understand.
 *
 * <p>Source: UCUM, <a href="https://ucum.org/ucum">The Unified Code for Units of Measure</a>, version 2.1; every code was
 * held against a validator of the code, see {@code reference/ucum_codes.csv} of the tests.
 */
public final class Ucum {
    /** A number without a unit, such as an absorbance. */
    public static final String ONE = "1";

    private Ucum() {}

    /** The code of one of our units. */
    public static String of(Unit unit) {
        return switch (unit) {
            case NANOLITRE -> "nL";
            case MICROLITRE -> "uL";
            case MILLILITRE -> "mL";
            case LITRE -> "L";
            case MILLISECOND -> "ms";
            case SECOND -> "s";
            case MINUTE -> "min";
            case HOUR -> "h";
            case NANOMETRE -> "nm";
            case MICROMETRE -> "um";
            case MILLIMETRE -> "mm";
            case CENTIMETRE -> "cm";
            case SQUARE_MILLIMETRE -> "mm2";
            case SQUARE_CENTIMETRE -> "cm2";
            case MICROGRAM -> "ug";
            case MILLIGRAM -> "mg";
            case GRAM -> "g";
            case KILOGRAM -> "kg";
            case GRAM_PER_LITRE -> "g/L";
            case MILLIGRAM_PER_LITRE -> "mg/L";
            case MICROGRAM_PER_LITRE -> "ug/L";
            case GRAM_PER_100_ML -> "g/(100.mL)";
            case MILLIMOLE_PER_LITRE -> "mmol/L";
            case MICROMOLE_PER_LITRE -> "umol/L";
            case GRAM_PER_100_G -> "g/(100.g)";
            case MILLIGRAM_PER_KILOGRAM -> "mg/kg";
            case LITRE_PER_MOLE_CM -> "L.mol-1.cm-1";
            case LITRE_PER_MILLIMOLE_CM -> "L.mmol-1.cm-1";
            case GRAM_PER_MOLE -> "g/mol";
            case GRAM_PER_MILLILITRE -> "g/mL";
            case PERCENT -> "%";
        };
    }
}
