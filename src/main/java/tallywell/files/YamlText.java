package tallywell.files;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import tallywell.quantity.Numbers;

/** Pieces of our own YAML, written so that {@link YamlDocument} reads the same back. */
final class YamlText {
    private static final Pattern BARE = Pattern.compile("[A-Za-z][A-Za-z0-9-]*");
    private static final double PERCENT = 0.01;

    private YamlText() {}

    /** A text in double quotes. */
    static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> quoted.append("\\\"");
                case '\\' -> quoted.append("\\\\");
                case '\n' -> quoted.append("\\n");
                case '\r' -> quoted.append("\\r");
                case '\t' -> quoted.append("\\t");
                default -> quoted.append(c);
            }
        }
        return quoted.append('"').toString();
    }

    /** A key: quoted unless it is a plain word. */
    static String key(String text) {
        return BARE.matcher(text).matches() ? text : quoted(text);
    }

    /**
     * A part of a whole as a percentage that reads back as the same double. Times and over a hundred are not always each
     * other's inverse in floating point, so the neighbours are tried.
     */
    static String percent(double fraction) {
        double percent = fraction / PERCENT;
        for (int digits = 3; digits <= 17; digits++) {
            String text = Numbers.rounded(percent, digits);
            if (Double.parseDouble(text) * PERCENT == fraction) {
                return text + " %";
            }
        }
        for (double near : new double[] {percent, Math.nextUp(percent), Math.nextDown(percent)}) {
            if (near * PERCENT == fraction) {
                return Numbers.plain(near) + " %";
            }
        }
        throw new IllegalArgumentException("fraction must have a percentage that reads back but was " + fraction);
    }

    /** Collects {@code key: value} pairs of a mapping in braces. */
    static final class Braces {
        private final List<String> pairs = new ArrayList<>();

        Braces add(String key, String value) {
            pairs.add(key + ": " + value);
            return this;
        }

        Braces add(String key, OptionalDouble value, String unit) {
            value.ifPresent(number -> add(key, Numbers.plain(number) + unit));
            return this;
        }

        Braces addPercent(String key, OptionalDouble fraction) {
            fraction.ifPresent(number -> add(key, percent(number)));
            return this;
        }

        boolean isEmpty() {
            return pairs.isEmpty();
        }

        @Override
        public String toString() {
            return "{" + String.join(", ", pairs) + "}";
        }
    }
}
