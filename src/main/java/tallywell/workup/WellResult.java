package tallywell.workup;

import java.util.Collections;
import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Unit;

/**
 * One well in one step, from ΔA to value.
 *
 * @param trace how ΔA came about
 * @param netDeltaA ΔA less what its blanks show, where there is a ΔA
 * @param concentration in g/L of the solution pipetted, where it could be determined
 * @param value in the original sample, where it could be determined
 * @param unit of the value
 * @param flags what is special, flags of the trace included
 */
public record WellResult(
        WellTrace trace,
        OptionalDouble netDeltaA,
        OptionalDouble concentration,
        OptionalDouble value,
        Unit unit,
        Set<Flag> flags) {
    /** Keeps a copy that cannot change. */
    public WellResult {
        EnumSet<Flag> copy = EnumSet.noneOf(Flag.class);
        copy.addAll(flags);
        flags = Collections.unmodifiableSet(copy);
    }

    /** Where. */
    public Well well() {
        return trace.well();
    }

    /** What the layout puts there. */
    public Content content() {
        return trace.content();
    }

    /** Whether the well counts. */
    public boolean used() {
        return trace.used();
    }

    /** ΔA, where it could be determined. */
    public OptionalDouble deltaA() {
        return trace.deltaA();
    }

    /** The same with further flags. */
    public WellResult with(Set<Flag> further) {
        EnumSet<Flag> more = EnumSet.noneOf(Flag.class);
        more.addAll(flags);
        more.addAll(further);
        return new WellResult(trace, netDeltaA, concentration, value, unit, more);
    }
}
