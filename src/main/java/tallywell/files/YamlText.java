package tallywell.files;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import tallywell.quantity.Numbers;

/** Pieces of our own YAML, written so that {@link YamlDocument} reads the same back. */
final class YamlText {
    private static final Pattern BARE = Pattern.compile("[A-Za-z][A-Za-z0-9-]*");

    private YamlText() {}

    /** A text in double quotes, without characters that nobody sees, which would not be read back. */
    static String quoted(String typed) {
        String text = HiddenCharacters.without(typed);
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

        @Override
        public String toString() {
            return "{" + String.join(", ", pairs) + "}";
        }
    }
}
