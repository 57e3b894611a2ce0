package tallywell.workup;

import java.util.List;

/**
 * The readings of one well that belong to one step, split at its trigger. Readings that carry a mark are only counted.
 *
 * @param baseline readings before the trigger, in time order; empty in a later step, whose baseline is the step before
 * @param between readings with the equilibrium settled, in time order; empty unless the step is coupled to one
 * @param after readings after the trigger, in time order
 * @param nextTriggerS time of the next step's trigger from this one in s; the last reading's time where it is not known
 * @param baselineOver how many baseline readings were over range
 * @param baselineMissing how many baseline readings are missing
 * @param afterOver times in s from the trigger of the later readings that were over range
 * @param afterMissing times in s from the trigger of the later readings that are missing
 */
public record WellReadings(
        List<Point> baseline,
        List<Point> between,
        List<Point> after,
        double nextTriggerS,
        int baselineOver,
        int baselineMissing,
        List<Double> afterOver,
        List<Double> afterMissing) {
    /** Keeps copies that cannot change. */
    public WellReadings {
        baseline = List.copyOf(baseline);
        between = List.copyOf(between);
        after = List.copyOf(after);
        afterOver = List.copyOf(afterOver);
        afterMissing = List.copyOf(afterMissing);
    }

    /**
     * One reading.
     *
     * @param ref where it stands
     * @param timed whether its time is known
     * @param timeS time in s from the trigger of the well; 0 if it is not known
     * @param absorbance as read
     */
    public record Point(Ref ref, boolean timed, double timeS, double absorbance) {}

    /** Whether every reading after the trigger has a time. */
    public boolean isTimed() {
        return after.stream().allMatch(Point::timed);
    }
}
