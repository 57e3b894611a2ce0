package tallywell.files;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import tallywell.notice.InputException;

/** Keys and values of a YAML file, in the order typed. */
final class YamlMapping {
    private static final Pattern BEGINS_WITH_DIGIT = Pattern.compile("\\d.*");

    private final YamlNode owner;
    private final Map<String, YamlNode> values;
    private final Map<String, YamlNode> keys;

    private YamlMapping(YamlNode owner, Map<String, YamlNode> values, Map<String, YamlNode> keys) {
        this.owner = owner;
        this.values = values;
        this.keys = keys;
    }

    static YamlMapping of(YamlNode owner, MappingNode mapping, Function<Node, YamlNode> wrap) throws InputException {
        Map<String, YamlNode> values = new LinkedHashMap<>();
        Map<String, YamlNode> keys = new LinkedHashMap<>();
        String before = "";
        for (NodeTuple tuple : mapping.getValue()) {
            YamlNode key = wrap.apply(tuple.getKeyNode());
            YamlNode value = wrap.apply(tuple.getValueNode());
            String name = key.isScalar() ? key.raw() : "";
            if (name.isBlank()) {
                throw key.wrong("found a key that is no word; expected 'key: value'");
            }
            if (value.isEmptyScalar()) {
                throw emptyValue(key, name, before, values.get(before));
            }
            if (values.putIfAbsent(name, value) != null) {
                throw key.wrong("found the key '" + name + "' a second time; expected each key once");
            }
            keys.put(name, key);
            before = name;
        }
        return new YamlMapping(owner, values, keys);
    }

    private static InputException emptyValue(
            YamlNode key, String name, String before, @org.jspecify.annotations.Nullable YamlNode previous) {
        if (previous != null
                && previous.numberIfAny().isPresent()
                && BEGINS_WITH_DIGIT.matcher(name).matches()) {
            String typed = previous.raw() + "," + name;
            return key.wrong("found '" + before + ": " + typed + "', where the comma ends the value; write "
                    + previous.raw() + "." + name + ", or quote the text");
        }
        return key.wrong("found the key '" + name + "' without a value; expected '" + name
                + ": value', or quotes around a text that holds a comma");
    }

    /** Refuses keys that do not belong here; a typing error must never count as an absent key. */
    YamlMapping only(String... allowed) throws InputException {
        List<String> known = List.of(allowed);
        for (Map.Entry<String, YamlNode> each : keys.entrySet()) {
            if (!known.contains(each.getKey()) && !each.getKey().equals("tallywell")) {
                throw each.getValue()
                        .wrong("found the unknown key '" + each.getKey() + "'; expected one of "
                                + String.join(", ", known));
            }
        }
        return this;
    }

    YamlNode owner() {
        return owner;
    }

    Map<String, YamlNode> all() {
        return values;
    }

    YamlNode key(String name) {
        YamlNode key = keys.get(name);
        return key == null ? owner : key;
    }

    boolean has(String key) {
        return values.containsKey(key);
    }

    Optional<YamlNode> find(String key) {
        return Optional.ofNullable(values.get(key));
    }

    /** The value of a key that must be there. */
    YamlNode need(String key, String example) throws InputException {
        YamlNode value = values.get(key);
        if (value == null) {
            throw owner.wrong("found no key '" + key + "'; expected it here, such as " + example);
        }
        return value;
    }
}
