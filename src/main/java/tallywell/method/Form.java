package tallywell.method;

import tallywell.quantity.ChemicalFormula;

/**
 * Another way to state an amount of analyte: as a hydrate, a salt, an element or an oxide.
 *
 * @param name as reports print it
 * @param formula of the other form
 * @param perAnalyte molecules of it for each molecule of analyte, positive
 */
public record Form(String name, ChemicalFormula formula, double perAnalyte) {
    /** Refuses counts that are not positive. */
    public Form {
        if (!(perAnalyte > 0)) {
            throw new IllegalArgumentException("perAnalyte must be > 0 but was " + perAnalyte);
        }
    }

    /**
     * Mass of this form for each mass of analyte.
     *
     * @param analyteMolarMass in g/mol, positive
     */
    public double massRatio(double analyteMolarMass) {
        return perAnalyte * formula.molarMass() / analyteMolarMass;
    }
}
