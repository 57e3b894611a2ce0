package tallywell.chart;

import java.util.List;
import java.util.Optional;
import tallywell.trace.Change;
import tallywell.trace.Series;

/**
 * One well and step as a picture needs it.
 *
 * @param name the well, such as {@code B7}
 * @param caption what is in it, such as {@code T03 Russet, tank 3}; may be empty
 * @param before readings before the trigger, as they count; empty where the step before gave the baseline
 * @param after readings after the trigger; without times they are drawn one minute apart
 * @param change what was made of them
 * @param flags what is to be said of the well, in words
 */
public record TracedWell(
        String name, String caption, Optional<Series> before, Series after, Change change, List<String> flags) {
    /** Keeps a copy that cannot change. */
    public TracedWell {
        flags = List.copyOf(flags);
    }

    /** The first flag in a word or two, for small pictures; empty where there is none. */
    String mark() {
        return change.flags().stream()
                .findFirst()
                .map(flag -> flag.code().replace('-', ' ').replace("reaction ", ""))
                .orElse(flags.isEmpty() ? "" : flags.get(0));
    }

    /** Time of a reading after the trigger in min. */
    double afterMin(int reading) {
        return after.isTimed() ? after.timeS(reading) / 60 : reading + 1;
    }

    /** Time of a reading before the trigger in min. */
    double beforeMin(Series readings, int reading) {
        return readings.isTimed() ? readings.timeS(reading) / 60 : 0.25 * (reading - readings.size());
    }

    /** Time of the first reading in min, 0 or earlier. */
    double firstMin() {
        return before.map(readings -> Math.min(0, beforeMin(readings, 0))).orElse(0.0);
    }

    /** Time of the last reading in min. */
    double lastMin() {
        return afterMin(after.size() - 1);
    }
}
