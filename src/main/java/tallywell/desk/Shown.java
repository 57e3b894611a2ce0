package tallywell.desk;

import java.util.OptionalDouble;
import tallywell.quantity.Numbers;

/**
 * Numbers as a person reads and types them: with the decimal mark of the system. Files keep the point.
 *
 * @param mark the decimal mark
 */
public record Shown(char mark) {
    /** With a decimal point. */
    public static final Shown POINT = new Shown('.');

    /** Some decimals. */
    public String fixed(double value, int decimals) {
        return marked(Numbers.fixed(value, decimals));
    }

    /** Some decimals, or nothing. */
    public String fixed(OptionalDouble value, int decimals) {
        return value.isPresent() ? fixed(value.getAsDouble(), decimals) : "";
    }

    /** Some significant digits. */
    public String rounded(double value, int digits) {
        return marked(Numbers.rounded(value, digits));
    }

    /** Some significant digits, or nothing. */
    public String rounded(OptionalDouble value, int digits) {
        return value.isPresent() ? rounded(value.getAsDouble(), digits) : "";
    }

    /** As many digits as it takes. */
    public String plain(double value) {
        return marked(Numbers.plain(value));
    }

    /** What a person typed, with a decimal point; a comma is taken for one where it is the mark and there is no point. */
    public String pointed(String typed) {
        return mark == ',' && typed.indexOf('.') < 0 ? typed.replace(',', '.') : typed;
    }

    /** A text of numbers with a decimal point, with the mark of the user. */
    public String marked(String text) {
        return text.replace('.', mark);
    }
}
