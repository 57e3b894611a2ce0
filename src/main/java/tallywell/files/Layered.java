package tallywell.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.quantity.Kind;

/**
 * Keys of a step laid over the same keys of its method: what the step says itself comes first, key by key, and the rest
 * it has from the method.
 */
final class Layered {
    private final String name;
    private final YamlNode owner;
    private final List<YamlMapping> layers;

    private Layered(String name, YamlNode owner, List<YamlMapping> layers) {
        this.name = name;
        this.owner = owner;
        this.layers = layers;
    }

    static Layered of(YamlMapping method, YamlMapping step, String key) throws InputException {
        return over(key, step.owner(), List.of(step, method));
    }

    private static Layered over(String key, YamlNode owner, List<YamlMapping> outer) throws InputException {
        List<YamlMapping> layers = new ArrayList<>();
        for (YamlMapping each : outer) {
            Optional<YamlNode> node = each.find(key);
            if (node.isPresent()) {
                layers.add(node.get().mapping("keys under '" + key + "'"));
            }
        }
        return new Layered(key, layers.isEmpty() ? owner : layers.get(0).owner(), layers);
    }

    Layered only(String... allowed) throws InputException {
        for (YamlMapping layer : layers) {
            layer.only(allowed);
        }
        return this;
    }

    /** The keys below one key, layered the same way. */
    Layered inner(String key) throws InputException {
        return over(key, owner, layers);
    }

    Optional<YamlNode> find(String key) {
        return layers.stream().flatMap(layer -> layer.find(key).stream()).findFirst();
    }

    YamlNode need(String key, String example) throws InputException {
        return find(key)
                .orElseThrow(() -> owner.wrong(
                        "found no key '" + key + "' under '" + name + "'; expected it here, such as " + example));
    }

    OptionalDouble number(String key) throws InputException {
        Optional<YamlNode> node = find(key);
        return node.isPresent() ? OptionalDouble.of(node.get().number()) : OptionalDouble.empty();
    }

    /** A number of 0 or more. */
    OptionalDouble notNegative(String key) throws InputException {
        OptionalDouble value = number(key);
        if (value.isPresent() && !(value.getAsDouble() >= 0)) {
            YamlNode node = find(key).orElseThrow();
            throw node.wrong("found '" + key + ": " + node.text() + "' under '" + name + "'; expected 0 or more");
        }
        return value;
    }

    /** Refuses limits that nothing can keep. */
    Layered ordered(OptionalDouble least, OptionalDouble most) throws InputException {
        if (least.isPresent() && most.isPresent() && !(least.getAsDouble() <= most.getAsDouble())) {
            throw find("most")
                    .orElseThrow()
                    .wrong("found 'least: " + need("least", "").text() + "' and 'most: "
                            + need("most", "").text() + "' under '" + name + "'; expected 'least' not above 'most'");
        }
        return this;
    }

    OptionalDouble positive(String key, Kind kind) throws InputException {
        Optional<YamlNode> node = find(key);
        return node.isPresent() ? OptionalDouble.of(node.get().positive(kind)) : OptionalDouble.empty();
    }

    <E extends Enum<E> & Worded> E word(String key, Class<E> options, E otherwise) throws InputException {
        Optional<YamlNode> node = find(key);
        return node.isPresent() ? node.get().word(options) : otherwise;
    }
}
