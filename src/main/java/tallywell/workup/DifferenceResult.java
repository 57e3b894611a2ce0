package tallywell.workup;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.method.Difference;

/**
 * An analyte that follows from what a sample holds in all, less what it held free.
 *
 * @param rule what follows from what
 * @param whole what was measured after the treatment
 * @param unbound what was measured without it
 * @param factor what one unit of the difference stands for: (M2/M1) / released / yield; never negative
 * @param name of the sample
 */
public record DifferenceResult(Difference rule, Half whole, Half unbound, double factor, String name) {
    /** Role of these rows in tables. */
    public static final String ROLE = "difference";

    /** Result after the treatment, as reported. */
    public Result total() {
        return whole.reported();
    }

    /** Result without it, as reported. */
    public Result free() {
        return unbound.reported();
    }

    /** The same with the halves as they were judged, flags and all. */
    public DifferenceResult flagged(Result total, Result free) {
        return new DifferenceResult(rule, whole.flagged(total), unbound.flagged(free), factor, name);
    }

    /** The value, in the unit of both results; negative values are never cut off. */
    public OptionalDouble value() {
        return value(whole.counted().value(), unbound.counted().value());
    }

    private OptionalDouble value(OptionalDouble all, OptionalDouble some) {
        return all.isPresent() && some.isPresent()
                ? OptionalDouble.of(factor * (all.getAsDouble() - some.getAsDouble()))
                : OptionalDouble.empty();
    }

    /**
     * The same as a row of results: slot and dilution are those of the total.
     *
     * @param flags what is special about the difference
     */
    public Result row(Set<Flag> flags) {
        Result total = total();
        return new Result(
                ROLE,
                total.word(),
                total.slot(),
                name,
                rule.analyte().name(),
                total.step(),
                List.of(),
                value(),
                total.unit(),
                total.n() + free().n(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                total.dilution(),
                value(whole.counted().valueAll(), unbound.counted().valueAll()),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                flags);
    }
}
