package tallywell.trace;

import java.util.OptionalDouble;

/** How the readings after the trigger become one absorbance. */
public sealed interface AfterRule {
    /**
     * One reading as it is.
     *
     * @param atS the reading nearest this time is taken, the later one on a tie; without it, or in a series without
     *     times, the last
     */
    record None(OptionalDouble atS) implements AfterRule {}

    /**
     * The straight line through the finished part, at the trigger.
     *
     * @param finishedFromS the analyst's own choice: readings from this time on are the finished part; without it the
     *     start is chosen from the data
     */
    record Extrapolate(OptionalDouble finishedFromS) implements AfterRule {}

    /**
     * The law of the reaction with creep, fitted to the whole trace; falls back to {@link Extrapolate}, with a flag,
     * where the law does not fit.
     *
     * @param finishedFromS the analyst's own choice of the finished part; then the line is used for this well
     */
    record ProgressCurve(OptionalDouble finishedFromS) implements AfterRule {}
}
