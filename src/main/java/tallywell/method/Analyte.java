package tallywell.method;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.quantity.ChemicalFormula;

/**
 * What is measured.
 *
 * @param name as reports print it
 * @param formula chemical formula, if the method gives one
 * @param molarMass in g/mol: as the method states it, else from the formula; empty if neither is given
 * @param signalPerAnalyte molecules of the absorbing substance per molecule of analyte, positive
 */
public record Analyte(
        String name, Optional<ChemicalFormula> formula, OptionalDouble molarMass, double signalPerAnalyte) {
    /** Refuses an analyte that gives no signal. */
    public Analyte {
        if (!(signalPerAnalyte > 0)) {
            throw new IllegalArgumentException("signalPerAnalyte must be > 0 but was " + signalPerAnalyte);
        }
    }
}
