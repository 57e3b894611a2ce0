package tallywell.method;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A reaction by the names of its species, such as {@code L-lactic acid + NAD+ -> pyruvic acid + NADH + H+}. A plus sign
 * separates species where it stands between blanks; a whole number and a blank before a name count it.
 *
 * @param text as typed
 * @param net how many of each species come out; negative for what goes in
 */
public record Reaction(String text, Map<String, Integer> net) {
    private static final Pattern COUNTED = Pattern.compile("(?:(\\d{1,3})\\s+)?(\\S.*)");

    /** Keeps a copy that cannot change. */
    public Reaction {
        net = Collections.unmodifiableMap(new TreeMap<>(net));
    }

    /**
     * Reads a reaction.
     *
     * @throws IllegalArgumentException with a message for the user if the text is none
     */
    public static Reaction parse(String text) {
        String[] sides = text.split("->", -1);
        if (sides.length != 2 || sides[0].isBlank() || sides[1].isBlank()) {
            throw new IllegalArgumentException(
                    "found the reaction '" + text
                            + "'; expected two sides with '->' between them, such as 'L-lactic acid + NAD+ -> pyruvic acid + NADH + H+'");
        }
        Map<String, Integer> net = new TreeMap<>();
        add(net, sides[0], -1);
        add(net, sides[1], 1);
        return new Reaction(text, net);
    }

    private static void add(Map<String, Integer> net, String side, int sign) {
        for (String part : side.strip().split("\\s\\+\\s", -1)) {
            Matcher counted = COUNTED.matcher(part.strip());
            if (!counted.matches()) {
                throw new IllegalArgumentException(
                        "found '" + side.strip() + "' in a reaction, where a species is missing beside a plus sign");
            }
            int count = counted.group(1) == null ? 1 : Integer.parseInt(counted.group(1));
            net.merge(counted.group(2), sign * count, Integer::sum);
        }
    }
}
