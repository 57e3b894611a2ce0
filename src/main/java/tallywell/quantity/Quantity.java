package tallywell.quantity;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A number that always carries its unit.
 *
 * @param value the number, finite, in the unit
 * @param unit the unit it was given in
 */
public record Quantity(double value, Unit unit) {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?");
    private static final Pattern COMMA = Pattern.compile("([+-]?\\d+),(\\d+)(.*)");

    /** Refuses NaN and infinite values. */
    public Quantity {
        if (!(Math.abs(value) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("value must be finite but was " + value);
        }
    }

    /** A quantity in its unit. */
    public static Quantity of(double value, Unit unit) {
        return new Quantity(value, unit);
    }

    /** The value in the base unit of its kind (see {@link Kind}). */
    public double base() {
        return value * unit.factor();
    }

    /**
     * The value in another unit of the same kind.
     *
     * @throws IllegalArgumentException unless other is of the kind of this unit
     */
    public double in(Unit other) {
        if (other == unit) {
            return value;
        }
        if (other.kind() != unit.kind()) {
            throw new IllegalArgumentException("unit must measure " + unit.kind() + " but was " + other);
        }
        return value * unit.factor() / other.factor();
    }

    /**
     * Reads a number, an optional blank and a unit of one of the kinds.
     *
     * @param text the quantity as typed, such as {@code 20 µL}
     * @param kinds the kinds that are right here, at least one
     * @throws IllegalArgumentException with a message for the user (found, then expected) if the text is anything else
     */
    public static Quantity parse(String text, Kind... kinds) {
        String trimmed = text.strip();
        String wanted = wanted(kinds);
        Matcher number = NUMBER.matcher(trimmed);
        if (!number.lookingAt()) {
            throw new IllegalArgumentException("found '" + text + "'; expected " + wanted);
        }
        Matcher comma = COMMA.matcher(trimmed);
        if (comma.matches()) {
            throw new IllegalArgumentException("found '" + text + "' with a decimal comma; write " + comma.group(1)
                    + "." + comma.group(2) + comma.group(3));
        }
        String symbol = trimmed.substring(number.end());
        if (symbol.isBlank()) {
            throw new IllegalArgumentException("found '" + text + "' without a unit; expected " + wanted);
        }
        Optional<Unit> unit = Unit.of(symbol);
        if (unit.isEmpty()) {
            throw new IllegalArgumentException(
                    "found the unknown unit '" + symbol.strip() + "' in '" + text + "'; expected " + wanted);
        }
        if (!Arrays.asList(kinds).contains(unit.get().kind())) {
            throw new IllegalArgumentException(
                    "found '" + text + "', which is a " + unit.get().kind().label() + "; expected " + wanted);
        }
        double value = Double.parseDouble(number.group());
        Kind kind = unit.get().kind();
        boolean lost = value == 0 && number.group().replaceFirst("[eE].*", "").matches(".*[1-9].*");
        if (lost || !kind.isPossible(value * unit.get().factor())) {
            double factor = unit.get().factor();
            throw new IllegalArgumentException("found '" + text + "', which no " + kind.label()
                    + " here can be; expected a size from " + Numbers.brief(kind.least() / factor, 3) + " to "
                    + Numbers.brief(kind.most() / factor, 3) + " " + unit.get());
        }
        return new Quantity(value, unit.get());
    }

    private static String wanted(Kind... kinds) {
        String units = Arrays.stream(kinds)
                .flatMap(kind -> Unit.of(kind).stream())
                .map(Unit::symbol)
                .collect(Collectors.joining(", "));
        return "a " + kinds[0].label() + ", a number and one of " + units;
    }

    /** The quantity as {@link #parse} reads it back. */
    @Override
    public String toString() {
        return Numbers.plain(value) + " " + unit;
    }
}
