package tallywell.statement;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalDouble;

/**
 * To which place a result is rounded: that of the second significant digit of its expanded uncertainty (JCGM 100:2008,
 * 7.2.6), or of its own third where there is none.
 */
public final class Rounding {
    private static final int DIGITS = 3;
    private static final int DIGITS_OF_UNCERTAINTY = 2;

    private Rounding() {}

    /** The place of a result: digits behind the point, or before it where negative. */
    public static int place(double value, OptionalDouble expanded) {
        return expanded.isPresent() && expanded.getAsDouble() > 0
                ? place(expanded.getAsDouble(), DIGITS_OF_UNCERTAINTY)
                : place(value, DIGITS);
    }

    /**
     * The place of the last of some significant digits of a number: digits behind the point, or before it where
     * negative.
     */
    public static int place(double value, int digits) {
        if (value == 0) {
            return digits - 1;
        }
        int power = exponent(value);
        // Rounding may carry into a further digit, as 0.0996 does with two.
        double rounded = round(value, digits - 1 - power);
        return digits - 1 - exponent(rounded);
    }

    private static int exponent(double value) {
        return (int) Math.floor(Math.log10(Math.abs(value)) + 1e-12);
    }

    /** A number rounded half away from zero to a place. */
    public static double round(double value, int place) {
        return new BigDecimal(Double.toString(value))
                .setScale(place, RoundingMode.HALF_UP)
                .doubleValue();
    }
}
