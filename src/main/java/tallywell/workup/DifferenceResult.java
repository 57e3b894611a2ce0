package tallywell.workup;

import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.method.Difference;

/**
 * An analyte that follows from what a sample holds in all, less what it held free.
 *
 * @param rule what follows from what
 * @param total result after the treatment
 * @param free result without it
 * @param factor what one unit of the difference stands for: (M2/M1) / released / yield; never negative
 * @param name of the sample
 */
public record DifferenceResult(Difference rule, Result total, Result free, double factor, String name) {
    /** Role of these rows in tables. */
    public static final String ROLE = "difference";

    /** The value, in the unit of both results; negative values are never cut off. */
    public OptionalDouble value() {
        return value(total.value(), free.value());
    }

    private OptionalDouble value(OptionalDouble all, OptionalDouble some) {
        return all.isPresent() && some.isPresent()
                ? OptionalDouble.of(factor * (all.getAsDouble() - some.getAsDouble()))
                : OptionalDouble.empty();
    }

    /** The same as a row of results: slot and dilution are those of the total, the flags those of both. */
    public Result row() {
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        flags.addAll(total.flags());
        flags.addAll(free.flags());
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
                total.n() + free.n(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                total.dilution(),
                value(total.valueAll(), free.valueAll()),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                flags);
    }
}
