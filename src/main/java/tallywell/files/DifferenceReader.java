package tallywell.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.Analyte;
import tallywell.method.Chemistry;
import tallywell.method.Difference;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.quantity.Quantity;

/** Reads the analytes that follow by difference. */
final class DifferenceReader {
    private DifferenceReader() {}

    static List<Difference> differences(YamlMapping top, List<Step> steps) throws InputException {
        List<Difference> differences = new ArrayList<>();
        if (top.has("difference")) {
            for (YamlNode item : top.need("difference", "").list("one analyte an item")) {
                differences.add(difference(top, item, steps));
            }
        }
        return differences;
    }

    private static Difference difference(YamlMapping top, YamlNode item, List<Step> steps) throws InputException {
        YamlMapping keys = item.mapping("an analyte by difference")
                .only("analyte", "of", "released", "yield", "yield-uncertainty", "reactions", "free-of");
        YamlNode of = keys.need("of", "'of: D-glucose', the analyte that is measured");
        Step measured = steps.stream()
                .filter(step -> step.analyte().name().equals(raw(of)))
                .findFirst()
                .orElseThrow(() -> of.wrong("found 'of: " + of.raw() + "', which no step measures; expected one of "
                        + String.join(
                                ", ",
                                steps.stream()
                                        .map(step -> step.analyte().name())
                                        .toList())));
        Analyte analyte = MethodReader.analyte(keys);
        if (analyte.molarMass().isEmpty() || measured.analyte().molarMass().isEmpty()) {
            throw item.wrong("found an analyte by difference without a molar mass; expected 'formula' for "
                    + analyte.name() + " and for " + measured.analyte().name());
        }
        double released = released(keys);
        double yield = keys.has("yield") ? keys.need("yield", "").positive(Kind.RATIO) : 1;
        if (!(yield <= 1)) {
            throw keys.need("yield", "")
                    .wrong("found a yield over 100 %; expected the part that the treatment converts");
        }
        OptionalDouble uncertainty = keys.has("yield-uncertainty")
                ? OptionalDouble.of(keys.need("yield-uncertainty", "").positive(Kind.RATIO))
                : OptionalDouble.empty();
        Chemistry chemistry = ChemistryReader.chemistry(top, keys, analyte, measured.analyte());
        Optional<YamlNode> reactions = keys.find("reactions");
        if (reactions.isPresent()) {
            ChemistryReader.balance(chemistry, reactions.get());
            ChemistryReader.formula(analyte, chemistry, reactions.get());
            double count = ChemistryReader.count(
                    chemistry, analyte.name(), measured.analyte().name(), reactions.get());
            if (count != released) {
                throw reactions
                        .get()
                        .wrong("found reactions that release " + Numbers.plain(count) + " "
                                + measured.analyte().name() + " from each " + analyte.name()
                                + ", but 'released' is " + Numbers.plain(released) + "; expected the same in both");
            }
        }
        Optional<Quantity> freeOf = freeOf(keys);
        return new Difference(analyte, measured.analyte().name(), released, yield, uncertainty, chemistry, freeOf);
    }

    private static Optional<Quantity> freeOf(YamlMapping keys) throws InputException {
        if (!keys.has("free-of")) {
            return Optional.empty();
        }
        YamlNode node = keys.need("free-of", "");
        Quantity quantity = node.quantity(Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT);
        if (!(quantity.value() > 0)) {
            throw node.wrong("found '" + node.text()
                    + "'; expected the content up to which a product counts as free of " + "the analyte, above 0");
        }
        return Optional.of(quantity);
    }

    private static String raw(YamlNode node) {
        return node.raw().strip();
    }

    private static double released(YamlMapping keys) throws InputException {
        if (!keys.has("released")) {
            return 1;
        }
        YamlNode node = keys.need("released", "");
        double released = node.number();
        if (!(released > 0)) {
            throw node.wrong("found '" + node.text()
                    + "'; expected how many molecules of what is measured one molecule releases, above 0");
        }
        return released;
    }
}
