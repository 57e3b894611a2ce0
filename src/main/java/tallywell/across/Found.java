package tallywell.across;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.assess.Verdict;
import tallywell.budget.Basis;
import tallywell.quantity.Unit;
import tallywell.workup.Result;

/**
 * What one run found of one sample or control.
 *
 * @param run path of the run file as typed
 * @param result the result as the run has it
 * @param id barcode of the sample, or empty
 * @param value in the common unit, if there is one
 * @param unit the common unit
 * @param verdict whether the run lets it stand
 * @param parts how sure it is, in the common unit; empty where the run cannot tell
 */
public record Found(
        String run,
        Result result,
        String id,
        OptionalDouble value,
        Unit unit,
        Verdict verdict,
        Optional<UncertaintyParts> parts) {
    /** The standard uncertainty, where the run can tell. */
    public OptionalDouble standardUncertainty() {
        return parts.isPresent() ? OptionalDouble.of(parts.get().total()) : OptionalDouble.empty();
    }

    /** The expanded uncertainty as the run reports it, where it can tell. */
    public OptionalDouble expandedUncertainty() {
        return parts.isPresent() ? OptionalDouble.of(parts.get().expanded()) : OptionalDouble.empty();
    }

    /** What the uncertainty rests on, where there is one. */
    public Optional<Basis> basis() {
        return parts.map(UncertaintyParts::basis);
    }

    /** Where it stands, for messages: the slot of a sample. */
    String place() {
        return result.slot().isPresent() ? "slot " + result.slot().getAsInt() : "'" + result.word() + "'";
    }

    /** The same in another unit of the same kind. */
    Found in(Unit other) {
        double factor = unit.factor() / other.factor();
        return other == unit
                ? this
                : new Found(
                        run,
                        result,
                        id,
                        value.isPresent() ? OptionalDouble.of(value.getAsDouble() * factor) : value,
                        other,
                        verdict,
                        parts.map(each -> each.times(factor)));
    }
}
