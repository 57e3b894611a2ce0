package tallywell.workup;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.method.Sample;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.trace.Change;

/**
 * One well in one step up to its ΔA.
 *
 * @param well where
 * @param content what the layout puts there
 * @param sample the sample of the slot, for samples, sample blanks and spikes
 * @param group group of blanks it belongs to
 * @param used whether it counts
 * @param readings its readings
 * @param change what the trace did, with the baseline already multiplied by {@code beforeFactor}
 * @param beforeFactor volume before over volume after the trigger where the method corrects, else 1
 * @param deltaA positive where the signal goes the way it should; for the common length where light paths were measured
 * @param path its light path, where that was measured
 * @param flags what is special
 */
public record WellTrace(
        Well well,
        Content content,
        Optional<Sample> sample,
        String group,
        boolean used,
        WellReadings readings,
        Optional<Change> change,
        double beforeFactor,
        OptionalDouble deltaA,
        Optional<WellPath> path,
        Set<Flag> flags) {
    /** Keeps a copy that cannot change. */
    public WellTrace {
        EnumSet<Flag> copy = EnumSet.noneOf(Flag.class);
        copy.addAll(flags);
        flags = Collections.unmodifiableSet(copy);
    }

    /** The same with one flag more. */
    WellTrace with(Flag flag) {
        Set<Flag> more = EnumSet.of(flag);
        more.addAll(flags);
        return new WellTrace(well, content, sample, group, used, readings, change, beforeFactor, deltaA, path, more);
    }

    /** The absorbance before the trigger, as read. */
    public OptionalDouble before() {
        return change.isPresent() ? OptionalDouble.of(change.get().before() / beforeFactor) : OptionalDouble.empty();
    }

    /** The absorbance after the reaction, as it counts. */
    public OptionalDouble after() {
        return change.isPresent() ? OptionalDouble.of(change.get().after()) : OptionalDouble.empty();
    }

    /** Creep in absorbance per min, as read. */
    public OptionalDouble creepPerMin() {
        return change.isPresent() ? change.get().creepPerMin() : OptionalDouble.empty();
    }

    /** Its standard uncertainty. */
    public OptionalDouble uCreepPerMin() {
        return change.isPresent() ? change.get().uCreepPerMin() : OptionalDouble.empty();
    }

    /** The part of the uncertainty of ΔA that the course of the trace leaves open; replicates share it. */
    public double uCourse() {
        return pathScale() * change.map(Change::uCourse).orElse(0.0);
    }

    /** What turns a change as read into ΔA: 1, or the common length over that of the well where light paths were measured. */
    public double pathScale() {
        return path.map(WellPath::scale).orElse(1.0);
    }

    /** Standard uncertainty of ΔA from the trace alone, and from its measured light path. */
    public OptionalDouble uDeltaA() {
        OptionalDouble u = change.isPresent() ? change.get().uDeltaA() : OptionalDouble.empty();
        return path.isEmpty() || u.isEmpty()
                ? u
                : OptionalDouble.of(Math.hypot(
                        pathScale() * u.getAsDouble(),
                        deltaA.orElse(0) * path.get().relativeUncertainty()));
    }
}
