package tallywell.quantity;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Two ends with one unit, such as {@code 0.5-2 g/L}; a single quantity is a range whose ends meet.
 *
 * @param low lower end, at least 0
 * @param high upper end, at least the lower one and above 0
 * @param unit of both
 */
public record QuantityRange(double low, double high, Unit unit) {
    private static final Pattern TWO = Pattern.compile(
            "((?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?)\\s*(?:-|–|to)\\s*((?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?)\\s*(\\S.*)");

    /** Refuses ends that are negative, zero or the wrong way round. */
    public QuantityRange {
        if (!(low >= 0 && high >= low && high > 0 && high <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("ends must be 0 <= low <= high, high > 0 but were " + low + ", " + high);
        }
    }

    /**
     * Reads {@code 0.5-2 g/L}, {@code 0.5 to 2 g/L} or {@code 2 g/L}.
     *
     * @param text the range as typed
     * @param kinds the kinds that are right here, at least one
     * @throws IllegalArgumentException with a message for the user (found, then expected) if the text is anything else
     */
    public static QuantityRange parse(String text, Kind... kinds) {
        Matcher two = TWO.matcher(text.strip());
        Quantity high = Quantity.parse(two.matches() ? two.group(2) + " " + two.group(3) : text, kinds);
        double low = two.matches()
                ? Quantity.parse(two.group(1) + " " + two.group(3), kinds).value()
                : high.value();
        if (!(high.value() > 0)) {
            throw new IllegalArgumentException(
                    "found '" + text + "'; expected an upper end above 0, such as 0.5-2 " + high.unit());
        }
        if (!(low <= high.value())) {
            throw new IllegalArgumentException(
                    "found '" + text + "', where the first number is the larger one; expected the lower end first");
        }
        return new QuantityRange(low, high.value(), high.unit());
    }

    /** The range as {@link #parse} reads it back. */
    @Override
    public String toString() {
        return (low == high ? "" : Numbers.plain(low) + "-") + Numbers.plain(high) + " " + unit;
    }
}
