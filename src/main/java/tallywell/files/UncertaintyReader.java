package tallywell.files;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tallywell.method.InputQuantity;
import tallywell.method.Spread;
import tallywell.method.UncertaintyRule;
import tallywell.method.UncertaintyRule.Stated;
import tallywell.method.UncertaintyRule.Validation;
import tallywell.method.Worded;
import tallywell.notice.InputException;
import tallywell.quantity.Kind;

/** Reads what a method says under {@code uncertainty}. */
final class UncertaintyReader {
    private static final String EXAMPLE = "{tolerance: 1 %}, {standard: 0.5 %} or {expanded: 1 %}";

    private UncertaintyReader() {}

    static UncertaintyRule rule(YamlMapping top) throws InputException {
        Optional<YamlNode> node = top.find("uncertainty");
        if (node.isEmpty()) {
            return UncertaintyRule.NONE;
        }
        String[] names = Stream.concat(
                        Stream.of("by", "validation"),
                        Arrays.stream(InputQuantity.values()).map(Worded::word))
                .toArray(String[]::new);
        YamlMapping keys = node.get()
                .mapping("sources, such as 'standard: {expanded: 1 %}'")
                .only(names);
        Map<InputQuantity, Spread> inputs = new EnumMap<>(InputQuantity.class);
        for (InputQuantity each : InputQuantity.values()) {
            if (keys.has(each.word())) {
                inputs.put(each, spread(keys.need(each.word(), EXAMPLE), each));
            }
        }
        Optional<Validation> validation = validation(keys);
        Stated stated = keys.has("by") ? keys.need("by", "'by: budget'").word(Stated.class) : Stated.BUDGET;
        if (stated == Stated.VALIDATION && validation.isEmpty()) {
            throw keys.need("by", "")
                    .wrong(
                            "found 'by: validation' without figures of one; expected 'validation: {precision: 2.5 %, bias: 0.8 %}'");
        }
        return new UncertaintyRule(stated, inputs, validation);
    }

    private static Optional<Validation> validation(YamlMapping keys) throws InputException {
        if (!keys.has("validation")) {
            return Optional.empty();
        }
        YamlMapping figures = keys.need("validation", "")
                .mapping("figures, such as {precision: 2.5 %, bias: 0.8 %}")
                .only("precision", "bias");
        double precision = figures.need("precision", "'precision: 2.5 %'").positive(Kind.RATIO);
        double bias = figures.has("bias") ? figures.need("bias", "").notNegative(Kind.RATIO) : 0;
        return Optional.of(new Validation(precision, bias));
    }

    static Spread spread(YamlNode node, InputQuantity quantity) throws InputException {
        YamlMapping keys = node.mapping("one of " + EXAMPLE).only("tolerance", "standard", "expanded");
        if (keys.all().size() != 1) {
            throw node.wrong(
                    "found " + keys.all().size() + " figures for '" + quantity.word()
                            + "'; expected exactly one of tolerance (plus or minus, all within equally likely), standard, expanded (k = 2)");
        }
        String form = keys.all().keySet().iterator().next();
        double size = size(keys.need(form, EXAMPLE), quantity);
        return switch (form) {
            case "tolerance" -> Spread.tolerance(size);
            case "standard" -> Spread.standard(size);
            default -> Spread.standard(size / 2);
        };
    }

    private static double size(YamlNode node, InputQuantity quantity) throws InputException {
        return switch (quantity) {
            case MASS -> node.positive(Kind.MASS);
            case TRIGGER_MOMENT -> node.positive(Kind.TIME);
            case CREEP -> {
                double value = node.number();
                if (!(value > 0)) {
                    throw node.wrong("found '" + node.text() + "'; expected an absorbance above 0");
                }
                yield value;
            }
            default -> node.positive(Kind.RATIO);
        };
    }
}
