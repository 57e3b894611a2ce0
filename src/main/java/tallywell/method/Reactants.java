package tallywell.method;

import java.util.List;

/**
 * What a coupled equilibrium makes its indicator from, such as NAD and L-malate, where they are not in excess.
 *
 * @param mmolPerL concentrations in the well after the last trigger, in mmol/L, all above 0; empty where they count as in
 *     excess
 */
public record Reactants(List<Double> mmolPerL) {
    /** In excess. */
    public static final Reactants IN_EXCESS = new Reactants(List.of());

    /** Keeps a copy that cannot change; refuses what is not above 0. */
    public Reactants {
        mmolPerL = List.copyOf(mmolPerL);
        for (double each : mmolPerL) {
            if (!(each > 0)) {
                throw new IllegalArgumentException("a reactant must be > 0 mmol/L but was " + each);
            }
        }
    }

    /**
     * The absorbance of the indicator that each of them could make in all.
     *
     * @param absorptivity of the indicator in L/mol/cm
     * @param pathCm light path after the last trigger
     */
    public List<Double> absorbances(double absorptivity, double pathCm) {
        return mmolPerL.stream()
                .map(each -> each / 1000 * absorptivity * pathCm)
                .toList();
    }
}
