package tallywell.method;

import java.util.Optional;
import tallywell.quantity.Unit;

/**
 * Units of the results.
 *
 * @param unit for liquids: a concentration, an amount concentration or a content
 * @param solids for solids: a content
 * @param as the form that results are stated in; empty for the analyte itself
 */
public record ReportRule(Unit unit, Unit solids, Optional<Form> as) {
    /** Units of the analyte itself. */
    public ReportRule(Unit unit, Unit solids) {
        this(unit, solids, Optional.empty());
    }

    /** The name that results carry. */
    public String nameOf(Analyte analyte) {
        return as.map(Form::name).orElse(analyte.name());
    }
}
