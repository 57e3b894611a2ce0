package tallywell.workup;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Predicate;
import tallywell.curve.Calibration;
import tallywell.method.Step;
import tallywell.plate.Well;
import tallywell.trace.CommonDrift;

/**
 * One step of a plate, worked up.
 *
 * @param number from 1
 * @param step what the method says
 * @param blanks by group
 * @param calibration from the standards; empty where the absorptivity serves
 * @param calibrationWells the wells that are the points of the calibration, in its order
 * @param wells every well in use, in row order
 * @param indicator what is left of the indicator, by well; empty where the signal rises
 * @param drift what their traces have in common beyond their own; empty where too few have traces
 * @param creepSlope how creep goes with ΔA from well to well; empty where creep is not measured
 */
public record StepAnalysis(
        int number,
        Step step,
        Map<String, BlankMean> blanks,
        Optional<Calibration> calibration,
        List<Well> calibrationWells,
        List<WellResult> wells,
        Map<Well, IndicatorLeft> indicator,
        Optional<CommonDrift> drift,
        Optional<CreepSlope> creepSlope) {
    /** Keeps copies that cannot change. */
    public StepAnalysis {
        blanks = Collections.unmodifiableMap(new TreeMap<>(blanks));
        calibrationWells = List.copyOf(calibrationWells);
        wells = List.copyOf(wells);
        indicator = Map.copyOf(indicator);
    }

    /**
     * How far ΔA may be off, in absorbance, for what the wells drift in common: 0 where they do not; empty where too few
     * have traces.
     */
    public OptionalDouble driftOfDeltaA() {
        return drift.isPresent() ? OptionalDouble.of(drift.get().moves()) : OptionalDouble.empty();
    }

    /** The same with other results of some of its wells. */
    public StepAnalysis with(List<WellResult> others) {
        List<WellResult> all = wells.stream()
                .map(each -> others.stream()
                        .filter(other -> other.well().equals(each.well()))
                        .findFirst()
                        .orElse(each))
                .toList();
        return new StepAnalysis(number, step, blanks, calibration, calibrationWells, all, indicator, drift, creepSlope);
    }

    /** The wells that pass, in row order. */
    public List<WellResult> where(Predicate<WellResult> test) {
        return wells.stream().filter(test).toList();
    }
}
