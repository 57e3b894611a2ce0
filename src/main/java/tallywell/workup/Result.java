package tallywell.workup;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import tallywell.plate.Well;
import tallywell.quantity.Dilution;
import tallywell.quantity.Unit;

/**
 * What a sample, control or spike came to for one analyte.
 *
 * @param role {@code sample}, {@code control} or {@code spike}
 * @param word word of the layout: the slot number, or the legend word
 * @param slot of a sample
 * @param name of the sample or control
 * @param analyte name
 * @param step from 1
 * @param wells all its wells, excluded ones too
 * @param value mean of the used wells' values, where each of them has one
 * @param unit of the value
 * @param n used wells
 * @param cvPercent coefficient of variation of the used wells' values; empty for fewer than two
 * @param netDeltaA mean net ΔA of the used wells, where each of them has one
 * @param dilution before pipetting
 * @param valueAll the value with excluded wells put back
 * @param assigned assigned value of a control, or the rise that a spike should make, in the unit
 * @param recoveryPercent of a control or spike
 * @param flags what is special
 */
public record Result(
        String role,
        String word,
        OptionalInt slot,
        String name,
        String analyte,
        int step,
        List<Well> wells,
        OptionalDouble value,
        Unit unit,
        int n,
        OptionalDouble cvPercent,
        OptionalDouble netDeltaA,
        Dilution dilution,
        OptionalDouble valueAll,
        OptionalDouble assigned,
        OptionalDouble recoveryPercent,
        Set<Flag> flags) {
    /** Keeps copies that cannot change. */
    public Result {
        wells = List.copyOf(wells);
        EnumSet<Flag> copy = EnumSet.noneOf(Flag.class);
        copy.addAll(flags);
        flags = Collections.unmodifiableSet(copy);
    }

    /** What tells the result from the others of its plate: role, word and step. */
    public String key() {
        return role + " " + word + " " + step;
    }

    /** The same with the value that excluded wells would have led to. */
    Result withValueAll(OptionalDouble all) {
        return with(all, recoveryPercent, flags);
    }

    /** The same with another value, and another with excluded wells put back. */
    Result withValue(OptionalDouble other, OptionalDouble all) {
        return new Result(
                role,
                word,
                slot,
                name,
                analyte,
                step,
                wells,
                other,
                unit,
                n,
                cvPercent,
                netDeltaA,
                dilution,
                all,
                assigned,
                recoveryPercent,
                flags);
    }

    /** The same with a recovery. */
    Result withRecovery(OptionalDouble percent) {
        return with(valueAll, percent, flags);
    }

    /** The same with other wells. */
    public Result of(List<Well> others) {
        return new Result(
                role,
                word,
                slot,
                name,
                analyte,
                step,
                others,
                value,
                unit,
                n,
                cvPercent,
                netDeltaA,
                dilution,
                valueAll,
                assigned,
                recoveryPercent,
                flags);
    }

    /** The same with further flags. */
    public Result with(Set<Flag> further) {
        EnumSet<Flag> more = EnumSet.noneOf(Flag.class);
        more.addAll(flags);
        more.addAll(further);
        return with(valueAll, recoveryPercent, more);
    }

    private Result with(OptionalDouble all, OptionalDouble percent, Set<Flag> told) {
        return new Result(
                role, word, slot, name, analyte, step, wells, value, unit, n, cvPercent, netDeltaA, dilution, all,
                assigned, percent, told);
    }
}
