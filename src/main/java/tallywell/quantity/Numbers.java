package tallywell.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as text, the same on every machine: decimal point, no grouping. */
public final class Numbers {
    private Numbers() {}

    /**
     * The shortest decimal text that reads back as the same double, without a needless {@code .0}.
     *
     * @param value a finite number
     */
    public static String plain(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            return Long.toString((long) value);
        }
        String text = Double.toString(value);
        double size = Math.abs(value);
        return size >= 1e-6 && size < 1e15
                ? new BigDecimal(text).stripTrailingZeros().toPlainString()
                : text;
    }

    /**
     * A number rounded half up to some significant digits, for messages.
     *
     * @param value a finite number
     * @param digits how many digits, at least 1
     */
    public static String rounded(double value, int digits) {
        if (value == 0) {
            return "0";
        }
        BigDecimal exact = new BigDecimal(Double.toString(value));
        BigDecimal shown = exact.round(new MathContext(digits, RoundingMode.HALF_UP));
        return shown.stripTrailingZeros().scale() < 0
                ? shown.setScale(0, RoundingMode.HALF_UP).toPlainString()
                : shown.toPlainString();
    }

    /**
     * A number rounded half up to some significant digits, without zeros at its end, for people who pipette it.
     *
     * @param value a finite number
     * @param digits how many digits, at least 1
     */
    public static String brief(double value, int digits) {
        return plain(Double.parseDouble(rounded(value, digits)));
    }

    /**
     * A number rounded half up to some decimals.
     *
     * @param value a finite number
     * @param decimals how many digits behind the point, at least 0
     */
    public static String fixed(double value, int decimals) {
        return new BigDecimal(Double.toString(value))
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
