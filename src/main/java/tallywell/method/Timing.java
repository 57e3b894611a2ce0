package tallywell.method;

import java.util.OptionalDouble;

/**
 * When a step is read. The planned times never cut a series.
 *
 * @param beforeS planned time of the baseline, in s
 * @param afterS planned time from the trigger to the reading after it, in s
 * @param triggerToFirstReadS from the first trigger to the first reading after it, in s
 * @param staggerPerColumnS from the trigger of one column to that of the next, in s
 * @param staggerFrom where the additions start
 * @param settleS time after the last addition whose readings are dropped, in s
 */
public record Timing(
        OptionalDouble beforeS,
        OptionalDouble afterS,
        double triggerToFirstReadS,
        double staggerPerColumnS,
        StaggerFrom staggerFrom,
        double settleS) {
    /** Nothing planned, nothing staggered. */
    public static final Timing NONE =
            new Timing(OptionalDouble.empty(), OptionalDouble.empty(), 0, 0, StaggerFrom.LEFT, 0);

    /** Refuses negative times. */
    public Timing {
        if (!(triggerToFirstReadS >= 0 && staggerPerColumnS >= 0 && settleS >= 0)) {
            throw new IllegalArgumentException(
                    "times must be >= 0 but were " + triggerToFirstReadS + ", " + staggerPerColumnS + ", " + settleS);
        }
    }

    /**
     * How long after the first trigger that of a column came, in s.
     *
     * @param column from 0
     * @param columns of the plate
     */
    public double delayS(int column, int columns) {
        return (staggerFrom == StaggerFrom.LEFT ? column : columns - 1 - column) * staggerPerColumnS;
    }
}
