package tallywell.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tallywell.method.Analyte;
import tallywell.method.Chemistry;
import tallywell.method.Direction;
import tallywell.method.Reaction;
import tallywell.method.Species;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.quantity.Numbers;

/** Reads the reactions of a step, and holds them to the elements, the charge and the signal. */
final class ChemistryReader {
    private ChemistryReader() {}

    /** The reactions under {@code reactions}, with the formulas of the method and those of analytes. */
    static Chemistry chemistry(YamlMapping top, YamlMapping keys, Analyte... analytes) throws InputException {
        Optional<YamlNode> node = keys.find("reactions");
        if (node.isEmpty()) {
            return Chemistry.NONE;
        }
        List<Reaction> reactions = new ArrayList<>();
        for (YamlNode item : node.get().list("one reaction an item")) {
            try {
                reactions.add(Reaction.parse(item.freeText()));
            } catch (IllegalArgumentException e) {
                throw item.wrong(e);
            }
        }
        Map<String, Species> formulas = formulas(top);
        for (Analyte analyte : analytes) {
            analyte.formula().ifPresent(formula -> formulas.putIfAbsent(analyte.name(), new Species(formula, 0)));
        }
        return new Chemistry(reactions, formulas);
    }

    private static Map<String, Species> formulas(YamlMapping top) throws InputException {
        Map<String, Species> formulas = new HashMap<>();
        Optional<YamlNode> node = top.find("formulas");
        if (node.isPresent()) {
            for (Map.Entry<String, YamlNode> each :
                    node.get().mapping("names with formulas").all().entrySet()) {
                try {
                    formulas.put(each.getKey(), Species.parse(each.getValue().text()));
                } catch (IllegalArgumentException e) {
                    throw each.getValue().wrong(e);
                }
            }
        }
        return formulas;
    }

    /** The step's own reactions must balance, use its analyte, and make or use the signal that it counts. */
    static void check(Step step, YamlMapping keys) throws InputException {
        if (!step.chemistry().reactions().isEmpty()) {
            YamlNode node = keys.need("reactions", "");
            balance(step.chemistry(), node);
            formula(step.analyte(), step.chemistry(), node);
            double count =
                    count(step.chemistry(), step.analyte().name(), step.signal().species(), node);
            double said = step.signal().direction().sign() * step.analyte().signalPerAnalyte();
            if (count != said) {
                throw node.wrong("found reactions that give " + Numbers.plain(count) + " "
                        + step.signal().species() + " for each "
                        + step.analyte().name() + ", but the step says "
                        + Numbers.plain(said) + " ('signal-per-analyte' with the sign of 'direction': "
                        + (said > 0 ? Direction.RISES : Direction.FALLS).word()
                        + "); expected the same in both");
            }
        }
    }

    static void balance(Chemistry chemistry, YamlNode node) throws InputException {
        for (Reaction reaction : chemistry.reactions()) {
            Map<String, Integer> off;
            try {
                off = chemistry.imbalance(reaction);
            } catch (IllegalArgumentException e) {
                throw node.wrong(e);
            }
            if (!off.isEmpty()) {
                throw node.wrong(
                        "found the reaction '" + reaction.text() + "', which does not balance (right less left: " + off
                                + "); expected as much of each element, and the same charge, on both sides");
            }
        }
    }

    static void formula(Analyte analyte, Chemistry chemistry, YamlNode node) throws InputException {
        boolean differs = analyte.formula().isPresent()
                && chemistry
                        .species(analyte.name())
                        .filter(species -> !species.formula()
                                .atoms()
                                .equals(analyte.formula().get().atoms()))
                        .isPresent();
        if (differs) {
            throw node.wrong("found " + analyte.name() + " with one formula under 'analyte' ("
                    + analyte.formula().get() + ") and another in its reactions; expected the same");
        }
    }

    /** How many of a species come out for each one that goes in. */
    static double count(Chemistry chemistry, String used, String made, YamlNode node) throws InputException {
        return chemistry
                .yieldOf(made, used)
                .orElseThrow(() -> node.wrong("found reactions in which no '" + used
                        + "' goes in; expected the analyte under its own name on the left"));
    }
}
