package tallywell.quantity;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Final volume over sample volume.
 *
 * @param factor at least 1
 */
public record Dilution(double factor) {
    /** Undiluted. */
    public static final Dilution NONE = new Dilution(1);

    private static final Pattern NUMBER = Pattern.compile("-?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?");
    private static final Pattern LEADING_ZERO = Pattern.compile("0\\d.*");

    /** Far beyond what anyone pipettes; more is a slip of the pen. */
    private static final double MOST = 1e7;

    private static final Pattern PARTS = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*\\+\\s*(\\d+(?:\\.\\d+)?)");

    /** Refuses what dilutes nothing. */
    public Dilution {
        if (!(factor >= 1 && factor <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("factor must be at least 1 but was " + factor);
        }
    }

    /**
     * Reads {@code 10}, or parts of sample and diluent such as {@code 1+9}, which is the same.
     *
     * @param text the dilution as typed
     * @throws IllegalArgumentException with a message for the user (found, then expected) if the text is anything else
     */
    public static Dilution parse(String text) {
        String trimmed = text.strip();
        Matcher parts = PARTS.matcher(trimmed);
        if (parts.matches()) {
            BigDecimal sample = new BigDecimal(parts.group(1));
            if (sample.signum() == 0) {
                throw new IllegalArgumentException("found the dilution '" + text + "' without any sample in it; "
                        + "expected parts of sample + parts of diluent, such as 1+9");
            }
            BigDecimal diluent = new BigDecimal(parts.group(2));
            return typed(text, sample.add(diluent).doubleValue() / sample.doubleValue());
        }
        if (trimmed.contains(":") || trimmed.contains("/")) {
            throw new IllegalArgumentException(
                    "found the dilution '" + text + "', which laboratories read in two ways; "
                            + "write final volume over sample volume as one number (10), or parts of sample + diluent (1+9)");
        }
        if (!NUMBER.matcher(trimmed).matches() || LEADING_ZERO.matcher(trimmed).matches()) {
            throw new IllegalArgumentException("found the dilution '" + text
                    + "'; expected a number of at least 1 (final volume over sample volume), or 1+9");
        }
        return typed(text, Double.parseDouble(trimmed));
    }

    private static Dilution typed(String text, double factor) {
        if (!(factor >= 1 && factor <= MOST)) {
            throw new IllegalArgumentException("found the dilution '" + text
                    + "'; expected final volume over sample volume, at least 1 and at most " + Numbers.plain(MOST));
        }
        return new Dilution(factor);
    }

    /** The factor as {@link #parse} reads it back. */
    @Override
    public String toString() {
        return Numbers.plain(factor);
    }
}
