package tallywell.files;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.quantity.Quantity;

/** A value in one of our YAML files, with its place. The caller decides its type; scalars are text as typed. */
final class YamlNode {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?");

    /** No number without a unit, such as an absorbance or a count of molecules, is smaller or larger. */
    private static final double LEAST = 1e-9;

    private static final double MOST = 1e9;

    private final Path path;
    private final List<String> lines;
    private final Node node;

    YamlNode(Path path, List<String> lines, Node node) {
        this.path = path;
        this.lines = lines;
        this.node = node;
    }

    /** Line of the file, from 1. */
    int line() {
        return node.getStartMark().map(Mark::getLine).orElse(0) + 1;
    }

    Path path() {
        return path;
    }

    /** An exception to throw that points here. */
    InputException wrong(String message) {
        return new InputException(Place.line(path, line()), message);
    }

    /** The same, keeping the fault behind it. */
    InputException wrong(IllegalArgumentException cause) {
        return new InputException(Place.line(path, line()), String.valueOf(cause.getMessage()), cause);
    }

    boolean isMapping() {
        return node instanceof MappingNode;
    }

    boolean isScalar() {
        return node instanceof ScalarNode;
    }

    boolean isList() {
        return node instanceof SequenceNode;
    }

    /** Keys and values. */
    YamlMapping mapping(String expected) throws InputException {
        if (node instanceof MappingNode mapping) {
            return YamlMapping.of(this, mapping, child -> new YamlNode(path, lines, child));
        }
        throw wrong("found " + shape() + "; expected " + expected + ", as keys with values");
    }

    /** The items of a list. */
    List<YamlNode> list(String expected) throws InputException {
        if (node instanceof SequenceNode sequence) {
            return sequence.getValue().stream()
                    .map(item -> new YamlNode(path, lines, item))
                    .toList();
        }
        throw wrong("found " + shape() + "; expected " + expected + ", as a list with one '- ' an item");
    }

    /** A scalar as typed, not empty. */
    String text() throws InputException {
        if (!(node instanceof ScalarNode scalar)) {
            throw wrong("found " + shape() + "; expected one text or number");
        }
        if (scalar.getValue().isBlank()) {
            throw wrong("found nothing behind the key; expected a text or number");
        }
        Optional<String> hidden = HiddenCharacters.first(scalar.getValue());
        if (hidden.isPresent()) {
            throw wrong("found the invisible character " + hidden.get() + "; type the text anew without it");
        }
        return scalar.getValue();
    }

    /**
     * A text that a person wrote freely. Without quotes a {@code #} would silently cut it, so that is an error.
     */
    String freeText() throws InputException {
        String value = text();
        ScalarNode scalar = (ScalarNode) node;
        Optional<Mark> end = node.getEndMark();
        if (scalar.getScalarStyle() == ScalarStyle.PLAIN && end.isPresent()) {
            String line = lines.get(Math.min(end.get().getLine(), lines.size() - 1));
            int[] points = line.codePoints().toArray();
            int at = Math.min(end.get().getColumn(), points.length);
            String rest = new String(points, at, points.length - at).strip();
            if (rest.startsWith("#")) {
                throw wrong(
                        "found '" + value + "' and then '" + rest
                                + "', which would be cut off as a comment; put the text in quotes, and a comment in a line of its own");
            }
        }
        return value;
    }

    /** A quantity of one of the kinds. */
    Quantity quantity(Kind... kinds) throws InputException {
        try {
            return Quantity.parse(text(), kinds);
        } catch (IllegalArgumentException e) {
            throw wrong(e);
        }
    }

    /** A quantity in base units, at least 0. */
    double notNegative(Kind kind) throws InputException {
        Quantity quantity = quantity(kind);
        if (!(quantity.value() >= 0)) {
            throw wrong("found '" + text() + "'; expected a " + kind.label() + " of 0 or more");
        }
        return quantity.base();
    }

    /** A quantity in base units, above 0. */
    double positive(Kind kind) throws InputException {
        Quantity quantity = quantity(kind);
        if (!(quantity.value() > 0)) {
            throw wrong("found '" + text() + "'; expected a " + kind.label() + " above 0");
        }
        return quantity.base();
    }

    /** A plain number. */
    double number() throws InputException {
        String text = text().strip();
        if (!NUMBER.matcher(text).matches()) {
            throw wrong("found '" + text + "'; expected a number with a decimal point and no unit");
        }
        double value = Double.parseDouble(text);
        double size = Math.abs(value);
        boolean lost = value == 0 && text.replaceFirst("[eE].*", "").matches(".*[1-9].*");
        if (lost || !(size == 0 || size >= LEAST && size <= MOST)) {
            throw wrong("found '" + text + "', which no number here can be; expected a size from "
                    + Numbers.plain(LEAST) + " to " + Numbers.plain(MOST));
        }
        return value;
    }

    /** A whole number from 1. */
    int count(int most) throws InputException {
        String text = text().strip();
        if (text.matches("\\d{1,9}")) {
            int value = Integer.parseInt(text);
            if (value >= 1 && value <= most) {
                return value;
            }
        }
        throw wrong("found '" + text + "'; expected a whole number from 1 to " + most);
    }

    /** One of the words of an option. */
    <E extends Enum<E> & Worded> E word(Class<E> options) throws InputException {
        String text = text().strip();
        return Worded.of(options, text)
                .orElseThrow(() -> wrong("found '" + text + "'; expected one of " + Worded.words(options)));
    }

    /** Nothing: a key of a mapping in brackets without a value. */
    boolean isEmptyScalar() {
        return node instanceof ScalarNode scalar
                && scalar.getScalarStyle() == ScalarStyle.PLAIN
                && scalar.getValue().isEmpty();
    }

    /** A number or nothing, for the hint about decimal commas. */
    OptionalDouble numberIfAny() {
        return node instanceof ScalarNode scalar
                        && NUMBER.matcher(scalar.getValue()).matches()
                ? OptionalDouble.of(Double.parseDouble(scalar.getValue()))
                : OptionalDouble.empty();
    }

    String raw() {
        return node instanceof ScalarNode scalar ? scalar.getValue() : "";
    }

    private String shape() {
        if (node instanceof MappingNode) {
            return "keys with values";
        }
        if (node instanceof SequenceNode) {
            return "a list";
        }
        return raw().isEmpty() ? "nothing" : "'" + raw() + "'";
    }
}
