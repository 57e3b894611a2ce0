package tallywell.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.FailsafeSchema;

/**
 * The text of a sound method file, to change single values in. What is not changed stays, keys that this class has never
 * heard of included; comments go.
 *
 * <p>A value of a step is looked for in the step, then above it, as the format layers them.
 */
public final class MethodText {
    private static final Pattern PLAIN = Pattern.compile("[\\p{L}\\p{N}.+-][\\p{L}\\p{N} .,/%+_²-]*");
    private static final String STEPS = "steps";

    private final Map<String, Object> top;

    /**
     * Takes a text apart.
     *
     * @param text of a method that {@link MethodReader} takes
     */
    public MethodText(String text) {
        LoadSettings settings =
                LoadSettings.builder().setSchema(new FailsafeSchema()).build();
        top = mapping(new Load(settings).loadFromString(text));
    }

    /**
     * Changes a value for the whole method.
     *
     * @param path key, or keys one inside the other
     * @param value the new text; empty takes the key out
     */
    public void set(List<String> path, String value) {
        put(top, path, value);
    }

    /**
     * Changes a value of a step: in the step if it has its own, or if there are several steps; else above it.
     *
     * @param index of the step, from 0
     */
    public void setOfStep(int index, List<String> path, String value) {
        List<Object> steps = steps();
        Map<String, Object> step = mapping(steps.get(index));
        boolean own = steps.size() > 1
                || get(step, path).isPresent()
                || get(top, path).isEmpty() && isOfStep(path);
        put(own ? step : top, path, value);
        steps.set(index, step);
        top.put(STEPS, steps);
    }

    private static boolean isOfStep(List<String> path) {
        return List.of("analyte", "volumes", "timing").contains(path.get(0));
    }

    private List<Object> steps() {
        return top.get(STEPS) instanceof List<?> list ? new ArrayList<>(list) : new ArrayList<>();
    }

    private static Map<String, Object> mapping(Object node) {
        Map<String, Object> copy = new LinkedHashMap<>();
        if (!(node instanceof Map<?, ?> map)) {
            throw new IllegalArgumentException("text must be a mapping but was " + node);
        }
        map.forEach((key, value) -> copy.put(String.valueOf(key), value));
        return copy;
    }

    private static Optional<Object> get(Map<String, Object> in, List<String> path) {
        Object node = in.get(path.get(0));
        if (node == null) {
            return Optional.empty();
        }
        return path.size() == 1
                ? Optional.of(node)
                : node instanceof Map<?, ?> ? get(mapping(node), path.subList(1, path.size())) : Optional.empty();
    }

    private static void put(Map<String, Object> into, List<String> path, String value) {
        String key = path.get(0);
        if (path.size() > 1) {
            Map<String, Object> inner = into.get(key) instanceof Map<?, ?> map ? mapping(map) : new LinkedHashMap<>();
            put(inner, path.subList(1, path.size()), value);
            if (inner.isEmpty()) {
                into.remove(key);
            } else {
                into.put(key, inner);
            }
        } else if (value.isEmpty()) {
            into.remove(key);
        } else {
            into.put(key, value);
        }
    }

    /** The text with its changes. */
    public String text() {
        StringBuilder text = new StringBuilder();
        block(text, top, "");
        return text.toString();
    }

    private static void block(StringBuilder text, Map<String, Object> mapping, String indent) {
        mapping.forEach((key, value) -> {
            text.append(indent).append(YamlText.key(key)).append(':');
            value(text, value, indent + "  ");
        });
    }

    private static void value(StringBuilder text, Object value, String indent) {
        if (value instanceof Map<?, ?> map) {
            text.append('\n');
            block(text, mapping(map), indent);
        } else if (value instanceof List<?> list) {
            text.append('\n');
            for (Object each : list) {
                item(text, each, indent);
            }
        } else {
            text.append(' ').append(scalar(String.valueOf(value))).append('\n');
        }
    }

    private static void item(StringBuilder text, Object each, String indent) {
        text.append(indent).append('-');
        if (each instanceof Map<?, ?> map) {
            StringBuilder inner = new StringBuilder();
            block(inner, mapping(map), indent + "  ");
            text.append(' ').append(inner, indent.length() + 2, inner.length());
        } else {
            value(text, each, indent + "  ");
        }
    }

    private static String scalar(String value) {
        return PLAIN.matcher(value).matches() && !value.endsWith(" ") ? value : YamlText.quoted(value);
    }
}
