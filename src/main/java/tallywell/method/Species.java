package tallywell.method;

import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tallywell.quantity.ChemicalFormula;

/**
 * What takes part in a reaction: a formula with its charge, written {@code SO4^2-} or {@code H^+}.
 *
 * <p>The cofactors that methods share are known by name, each written with all its acid groups protonated. At the pH of
 * an assay they are ionised, which moves protons about and changes neither the other elements nor the signal.
 *
 * @param formula elements and counts
 * @param charge in elementary charges
 */
public record Species(ChemicalFormula formula, int charge) {
    private static final Pattern CHARGED = Pattern.compile("(.*)\\^(\\d*)([+-])");

    /** Formulas from memory; each reaction of a built-in method is checked to balance with them. */
    private static final Map<String, String> KNOWN = Map.ofEntries(
            Map.entry("H+", "H^+"),
            Map.entry("NAD+", "C21H28N7O14P2^+"),
            Map.entry("NADH", "C21H29N7O14P2"),
            Map.entry("NADP+", "C21H29N7O17P3^+"),
            Map.entry("NADPH", "C21H30N7O17P3"),
            Map.entry("ATP", "C10H16N5O13P3"),
            Map.entry("ADP", "C10H15N5O10P2"),
            Map.entry("AMP", "C10H14N5O7P"),
            Map.entry("ITP", "C10H15N4O14P3"),
            Map.entry("IDP", "C10H14N4O11P2"),
            Map.entry("CoA", "C21H36N7O16P3S"),
            Map.entry("acetyl-CoA", "C23H38N7O17P3S"),
            Map.entry("succinyl-CoA", "C25H40N7O19P3S"),
            Map.entry("phosphate", "H3PO4"),
            Map.entry("diphosphate", "H4P2O7"),
            Map.entry("phosphoenolpyruvate", "C3H5O6P"),
            Map.entry("pyruvic acid", "C3H4O3"),
            Map.entry("L-lactic acid", "C3H6O3"),
            Map.entry("oxaloacetic acid", "C4H4O5"),
            Map.entry("L-malic acid", "C4H6O5"),
            Map.entry("2-oxoglutaric acid", "C5H6O5"),
            Map.entry("L-glutamic acid", "C5H9NO4"),
            Map.entry("L-alanine", "C3H7NO2"),
            Map.entry("L-aspartic acid", "C4H7NO4"),
            Map.entry("acetic acid", "C2H4O2"),
            Map.entry("citric acid", "C6H8O7"),
            Map.entry("ammonia", "NH3"));

    /**
     * Reads a formula with its charge.
     *
     * @throws IllegalArgumentException with a message for the user if the text is no formula
     */
    public static Species parse(String text) {
        Matcher charged = CHARGED.matcher(text.strip());
        if (!charged.matches()) {
            return new Species(ChemicalFormula.parse(text), 0);
        }
        int size = charged.group(2).isEmpty() ? 1 : Integer.parseInt(charged.group(2));
        return new Species(
                ChemicalFormula.parse(charged.group(1)), charged.group(3).equals("+") ? size : -size);
    }

    /** A cofactor that every method may name without giving its formula. */
    public static Optional<Species> known(String name) {
        return Optional.ofNullable(KNOWN.get(name)).map(Species::parse);
    }
}
