package tallywell.quantity;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A chemical formula: elements with counts, brackets of any depth, and parts joined by a dot, as hydrates are written
 * ({@code C6H8O7·H2O}, {@code (NH4)2SO4}, {@code Ca(C3H5O3)2 . 5 H2O}).
 *
 * @param text the formula as typed
 * @param atoms how many atoms of each element
 */
public record ChemicalFormula(String text, Map<String, Integer> atoms) {
    private static final int LARGEST_COUNT = 10_000;

    /** Brackets within brackets, and letters in all, of any substance that has a formula worth typing. */
    private static final int DEEPEST = 20;

    private static final int LONGEST = 500;

    /** Keeps a copy that cannot change. */
    public ChemicalFormula {
        atoms = Map.copyOf(atoms);
    }

    /**
     * Reads a formula.
     *
     * @param text the formula as typed
     * @throws IllegalArgumentException with a message for the user (found, then expected) if the text is no formula
     */
    public static ChemicalFormula parse(String text) {
        if (text.length() > LONGEST) {
            throw new IllegalArgumentException("found a formula of " + text.length() + " characters; expected at most "
                    + LONGEST + ", such as C4H6O5 or C6H8O7·H2O");
        }
        return new ChemicalFormula(text, new Parser(text).parse());
    }

    /**
     * The molar mass in g/mol, from abridged standard atomic weights.
     */
    public double molarMass() {
        // Elements in alphabetic order, so that the same formula gives the same last bit however it is written.
        double sum = 0;
        for (Map.Entry<String, Integer> each : new TreeMap<>(atoms).entrySet()) {
            sum += each.getValue() * AtomicWeights.of(each.getKey()).orElseThrow();
        }
        return sum;
    }

    @Override
    public String toString() {
        return text;
    }

    /** Recursive descent: formula = part (dot part)*; part = [count] group*; group = (element | bracket) [count]. */
    private static final class Parser {
        private final String whole;
        private final String text;
        private int at;
        private int depth;

        Parser(String whole) {
            this.whole = whole;
            this.text = whole.replaceAll("\\s+", "")
                    .replace('*', '·')
                    .replace('.', '·')
                    .replace('•', '·')
                    .replace('∙', '·');
        }

        Map<String, Integer> parse() {
            try {
                return whole();
            } catch (ArithmeticException e) {
                throw wrong("more atoms than can be counted");
            }
        }

        private Map<String, Integer> whole() {
            Map<String, Integer> sum = new TreeMap<>();
            boolean more;
            do {
                int times = count();
                addAll(sum, groups('\0'), times);
                more = at < text.length() && text.charAt(at) == '·';
                if (more) {
                    at++;
                }
            } while (more);
            if (at < text.length()) {
                throw wrong("'" + text.charAt(at) + "' at position " + (at + 1) + " does not belong there");
            }
            return sum;
        }

        private Map<String, Integer> groups(char closing) {
            if (depth > DEEPEST) {
                throw wrong("brackets more than " + DEEPEST + " deep");
            }
            Map<String, Integer> sum = new TreeMap<>();
            int start = at;
            while (at < text.length() && text.charAt(at) != '·' && !isClosing(text.charAt(at))) {
                char next = text.charAt(at);
                if (next == '(' || next == '[' || next == '{') {
                    at++;
                    char wanted = next == '(' ? ')' : next == '[' ? ']' : '}';
                    depth++;
                    Map<String, Integer> inside = groups(wanted);
                    depth--;
                    if (at >= text.length() || text.charAt(at) != wanted) {
                        throw wrong("'" + next + "' is not closed");
                    }
                    at++;
                    addAll(sum, inside, count());
                } else {
                    String symbol = element();
                    sum.merge(symbol, count(), Math::addExact);
                }
            }
            if (at == start) {
                throw wrong(closing == '\0' ? "an element is missing" : "an empty bracket");
            }
            return sum;
        }

        private static boolean isClosing(char c) {
            return c == ')' || c == ']' || c == '}';
        }

        private String element() {
            for (int length = 2; length >= 1; length--) {
                if (at + length <= text.length()) {
                    String symbol = text.substring(at, at + length);
                    Optional<Double> weight = AtomicWeights.of(symbol);
                    if (weight.isPresent()) {
                        at += length;
                        return symbol;
                    }
                }
            }
            throw wrong("'" + text.substring(at, Math.min(at + 2, text.length())) + "' is no element known here");
        }

        private int count() {
            int start = at;
            while (at < text.length() && digit(text.charAt(at)) >= 0) {
                at++;
            }
            if (start == at) {
                return 1;
            }
            int value = 0;
            for (int i = start; i < at; i++) {
                value = 10 * value + digit(text.charAt(i));
                if (value > LARGEST_COUNT) {
                    throw wrong("a count over " + LARGEST_COUNT);
                }
            }
            if (value == 0) {
                throw wrong("a count of 0");
            }
            return value;
        }

        private static int digit(char c) {
            return c >= '0' && c <= '9' ? c - '0' : c >= '₀' && c <= '₉' ? c - '₀' : -1;
        }

        private static void addAll(Map<String, Integer> sum, Map<String, Integer> part, int times) {
            part.forEach((element, n) -> sum.merge(element, Math.multiplyExact(n, times), Math::addExact));
        }

        private IllegalArgumentException wrong(String why) {
            return new IllegalArgumentException("found the formula '" + whole + "' (" + why
                    + "); expected elements with counts, such as C4H6O5 or C6H8O7·H2O");
        }
    }
}
