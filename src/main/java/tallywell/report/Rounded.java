package tallywell.report;

import java.util.OptionalDouble;
import tallywell.quantity.Numbers;
import tallywell.statement.Rounding;

/**
 * Numbers as people read them: an expanded uncertainty to two significant digits, its value to the same place.
 *
 * <p>Source: JCGM 100:2008 (GUM), 7.2.6.
 */
final class Rounded {
    private static final int DIGITS_OF_UNCERTAINTY = 2;
    private static final int DIGITS = 4;

    private Rounded() {}

    /** The place of the last digit to show: digits behind the point. */
    static int place(double value, OptionalDouble expanded) {
        return expanded.isPresent() && expanded.getAsDouble() > 0
                ? Rounding.place(expanded.getAsDouble(), DIGITS_OF_UNCERTAINTY)
                : Rounding.place(value, DIGITS);
    }

    /** A value beside its expanded uncertainty; empty if there is none. */
    static String value(OptionalDouble value, OptionalDouble expanded) {
        return value.isPresent() ? at(value.getAsDouble(), place(value.getAsDouble(), expanded)) : "";
    }

    /** An expanded uncertainty; empty if there is none. */
    static String uncertainty(OptionalDouble expanded) {
        return expanded.isPresent() ? at(expanded.getAsDouble(), place(0, expanded)) : "";
    }

    /** A number to two decimals; empty if there is none. */
    static String score(OptionalDouble score) {
        return score.isPresent() ? Numbers.fixed(score.getAsDouble(), 2) : "";
    }

    private static String at(double value, int place) {
        return Numbers.fixed(Rounding.round(value, place), Math.max(0, place));
    }
}
