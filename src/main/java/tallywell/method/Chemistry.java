package tallywell.method;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The reactions of a step, one after the other, and the formulas of what takes part.
 *
 * @param reactions from the analyte to the signal; empty if the method does not state them
 * @param formulas of the species that the method names itself
 */
public record Chemistry(List<Reaction> reactions, Map<String, Species> formulas) {
    /** Nothing stated. */
    public static final Chemistry NONE = new Chemistry(List.of(), Map.of());

    /** Keeps copies that cannot change. */
    public Chemistry {
        reactions = List.copyOf(reactions);
        formulas = Map.copyOf(formulas);
    }

    /** The species of a name: the method's own, a known cofactor, or a name that is itself a formula such as H2O. */
    public Optional<Species> species(String name) {
        Species own = formulas.get(name);
        if (own != null) {
            return Optional.of(own);
        }
        Optional<Species> known = Species.known(name);
        if (known.isPresent()) {
            return known;
        }
        try {
            return Optional.of(Species.parse(name));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** How many of each species come out of all reactions together; negative for what goes in, none for what cancels. */
    public Map<String, Integer> net() {
        Map<String, Integer> net = new TreeMap<>();
        for (Reaction each : reactions) {
            each.net().forEach((name, count) -> net.merge(name, count, Integer::sum));
        }
        net.values().removeIf(count -> count == 0);
        return net;
    }

    /**
     * What a reaction makes or loses of each element, and of charge under the key {@code charge}; empty if it balances.
     *
     * @throws IllegalArgumentException with a message for the user if a species has no formula
     */
    public Map<String, Integer> imbalance(Reaction reaction) {
        Map<String, Integer> sum = new TreeMap<>();
        reaction.net().forEach((name, count) -> {
            Species species = species(name)
                    .orElseThrow(() -> new IllegalArgumentException("found '" + name + "' in the reaction '"
                            + reaction.text() + "' without a formula; expected it under 'formulas', such as '"
                            + name + ": C6H12O6', with a charge as in SO4^2-"));
            species.formula().atoms().forEach((element, atoms) -> sum.merge(element, count * atoms, Integer::sum));
            sum.merge("charge", count * species.charge(), Integer::sum);
        });
        sum.values().removeIf(count -> count == 0);
        return sum;
    }

    /**
     * Molecules of one species that come out for each molecule of another that goes in, after all reactions; negative if
     * they go in too. Empty if the other does not go in.
     */
    public Optional<Double> yieldOf(String made, String used) {
        Map<String, Integer> net = net();
        int in = -net.getOrDefault(used, 0);
        return in > 0 ? Optional.of(net.getOrDefault(made, 0) / (double) in) : Optional.empty();
    }
}
