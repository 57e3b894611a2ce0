package tallywell.budget;

import java.util.Optional;
import tallywell.workup.Repeatability;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * How much the ΔA of a well scatters, and what shows it: replicates all over the plate, or where there are none that
 * differ, the trace of the well itself.
 *
 * <p>The trace knows its own noise and nothing of pipetting, so what rests on it is the least that ΔA can be uncertain.
 */
final class Scatter {
    private final Optional<Repeatability> pooled;

    private Scatter(Optional<Repeatability> pooled) {
        this.pooled = pooled;
    }

    /**
     * The scatter of a step.
     *
     * @return nothing if there is no pooled scatter, and the trace of a blank or of a standard shows none either
     */
    static Optional<Scatter> of(StepAnalysis step, Optional<Repeatability> pooled) {
        boolean known = pooled.isPresent()
                || step.wells().stream()
                        .filter(well -> well.used() && well.deltaA().isPresent())
                        .filter(well -> Repeatability.isBlank(well.content())
                                || step.calibrationWells().contains(well.well()))
                        .allMatch(Scatter::shownByTrace);
        return known ? Optional.of(new Scatter(pooled)) : Optional.empty();
    }

    private static boolean shownByTrace(WellResult well) {
        return well.trace().uDeltaA().orElse(0) > 0;
    }

    /** Whether anything shows the scatter of a well. */
    boolean knows(WellResult well) {
        return pooled.isPresent() || shownByTrace(well);
    }

    /** The repeatability pooled over the plate; empty where the traces serve. */
    Optional<Repeatability> pooled() {
        return pooled;
    }

    /** The slot of a well if it scatters too much to be pooled. */
    Optional<Repeatability.Slot> outlierOf(WellResult well) {
        return pooled.flatMap(found -> found.outlierOf(well));
    }

    /** Variance of the ΔA of a well, slots that are not in the pool aside. */
    double variance(WellResult well) {
        if (pooled.isPresent()) {
            return pooled.get().function().at(Repeatability.netOf(well));
        }
        double u = well.trace().uDeltaA().orElseThrow();
        return u * u;
    }

    /** Where {@link #variance} comes from. */
    Estimate estimate() {
        return pooled.isPresent() ? Estimate.POOLED_REPEATABILITY : Estimate.TRACE;
    }

    /** How well the variances are known; twice the u of a trace covers 95 %, so its are taken as known. */
    double degreesOfFreedom() {
        return pooled.map(Repeatability::degreesOfFreedom).orElse(Double.POSITIVE_INFINITY);
    }
}
