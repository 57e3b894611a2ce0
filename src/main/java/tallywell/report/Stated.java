package tallywell.report;

import java.util.OptionalDouble;
import tallywell.quantity.Numbers;

/**
 * A result as the first page states it: rounded to the place of the second significant digit of its expanded uncertainty,
 * which is shown with two (JCGM 100:2008, 7.2.6), or to three significant digits where there is none.
 *
 * @param value what it came to, or what can be said instead
 * @param expanded its expanded uncertainty, or empty
 */
public record Stated(String value, String expanded) {
    private static final int DIGITS = 3;
    private static final int DIGITS_OF_UNCERTAINTY = 2;

    /**
     * Rounds.
     *
     * @param otherwise what can be said where there is no value
     */
    public static Stated of(OptionalDouble value, OptionalDouble expanded, String otherwise) {
        if (value.isEmpty()) {
            return new Stated(otherwise, "");
        }
        boolean isKnown = expanded.isPresent() && expanded.getAsDouble() > 0;
        int place = isKnown
                ? Looks.place(expanded.getAsDouble(), DIGITS_OF_UNCERTAINTY)
                : Looks.place(value.getAsDouble(), DIGITS);
        return new Stated(
                at(place, value.getAsDouble()), expanded.isPresent() ? at(place, expanded.getAsDouble()) : "");
    }

    /** A number to three significant digits. */
    static String brief(double value) {
        return at(Looks.place(value, DIGITS), value);
    }

    private static String at(int place, double value) {
        return Numbers.fixed(Looks.round(value, place), Math.max(0, place)).replaceFirst("^-(0[.]?0*)$", "$1");
    }
}
