package tallywell.method;

/**
 * What a standard is weighed from.
 *
 * @param form the substance and how much of it holds one analyte
 * @param purity mass fraction of the dry substance that is the substance, above 0 to 1
 * @param water mass fraction of what is weighed that is water outside the formula, 0 to below 1
 */
public record StandardSubstance(Form form, double purity, double water) {
    /** Refuses fractions that are none. */
    public StandardSubstance {
        if (!(purity > 0 && purity <= 1 && water >= 0 && water < 1)) {
            throw new IllegalArgumentException(
                    "purity must be above 0 to 1 and water 0 to below 1 but were " + purity + " and " + water);
        }
    }

    /**
     * Mass to weigh for each mass of analyte.
     *
     * @param analyteMolarMass in g/mol, positive
     */
    public double weighedPerAnalyte(double analyteMolarMass) {
        return form.massRatio(analyteMolarMass) / (purity * (1 - water));
    }
}
