package tallywell.numeric;

/**
 * The end of a separable fit.
 *
 * @param regression parameters with cofactors: first the nonlinear ones, then the linear ones
 * @param iterations steps accepted
 * @param ending how it ended
 */
public record SeparableFit(Regression regression, int iterations, Ending ending) {
    /** How an iteration ended. */
    public enum Ending {
        /** Steps or gains fell below the tolerance. */
        CONVERGED,
        /** No step, however short, gained anything. */
        NO_PROGRESS,
        /** The allowed number of steps was used up. */
        LIMIT_REACHED
    }
}
