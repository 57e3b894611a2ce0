package tallywell.curve;

import java.util.OptionalDouble;

/**
 * An interval for a level.
 *
 * @param low the lower end; empty where the calibration sets no bound
 * @param high the upper end; empty where the calibration sets no bound
 */
public record LevelInterval(OptionalDouble low, OptionalDouble high) {
    static LevelInterval of(double low, double high) {
        return new LevelInterval(OptionalDouble.of(low), OptionalDouble.of(high));
    }

    static LevelInterval unbounded() {
        return new LevelInterval(OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** Whether a level lies in the interval, ends included. */
    public boolean contains(double level) {
        return low.orElse(Double.NEGATIVE_INFINITY) <= level && level <= high.orElse(Double.POSITIVE_INFINITY);
    }
}
