package tallywell.chart;

import java.util.Locale;
import java.util.OptionalDouble;
import tallywell.trace.Change;

/** Numbers in the words of a picture. */
final class Figures {
    private Figures() {}

    static String absorbance(double value) {
        return signed(String.format(Locale.ROOT, "%.4f", value));
    }

    /** {@code 0.4600 ± 0.0011}: k = 2. */
    static String expanded(double value, OptionalDouble u, String format) {
        String number = signed(String.format(Locale.ROOT, format, value));
        return u.isPresent() ? number + " ± " + String.format(Locale.ROOT, format, 2 * u.getAsDouble()) : number;
    }

    /** One sentence on ΔA and creep. */
    static String summary(Change change) {
        StringBuilder text = new StringBuilder("ΔA ").append(expanded(change.deltaA(), change.uDeltaA(), "%.4f"));
        if (change.creepPerMin().isPresent()) {
            OptionalDouble u = change.uCreepPerMin().isPresent()
                    ? OptionalDouble.of(1000 * change.uCreepPerMin().getAsDouble())
                    : OptionalDouble.empty();
            text.append("  ·  creep ")
                    .append(expanded(1000 * change.creepPerMin().getAsDouble(), u, "%.2f"))
                    .append(" mA/min");
        }
        return text.append(change.uDeltaA().isPresent() ? "  (k = 2)" : "").toString();
    }

    /** A true minus, and no minus before nothing. */
    private static String signed(String number) {
        if (number.startsWith("-")) {
            String digits = number.substring(1);
            return digits.chars().allMatch(c -> c == '0' || c == '.') ? digits : "−" + digits;
        }
        return number;
    }
}
