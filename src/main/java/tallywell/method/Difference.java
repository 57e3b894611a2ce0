package tallywell.method;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.quantity.Quantity;

/**
 * An analyte that follows from what is there in all after a treatment, less what was there free:
 * {@code c = (M2/M1) / released / yield · (c total - c free)}.
 *
 * @param analyte what follows; its molar mass is given
 * @param of name of the analyte that is measured
 * @param released molecules of that analyte which the treatment makes from one molecule, positive
 * @param yield part of the analyte that the treatment converts, above 0 to 1
 * @param yieldU relative standard uncertainty of the yield, if the method says
 * @param chemistry the treatment
 * @param freeOf content up to which a product counts as free of the analyte, if the method says
 */
public record Difference(
        Analyte analyte,
        String of,
        double released,
        double yield,
        OptionalDouble yieldU,
        Chemistry chemistry,
        Optional<Quantity> freeOf) {
    /** Refuses what releases nothing. */
    public Difference {
        if (!(released > 0 && yield > 0 && yield <= 1)) {
            throw new IllegalArgumentException(
                    "released must be > 0 and yield above 0 to 1 but were " + released + " and " + yield);
        }
    }
}
