package tallywell.trace;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The part of a trace after the burst, and the straight line through it: ordinary least squares over the readings from
 * {@code from} to {@code to - 1} of the series after the trigger, less those in {@code leftOut}.
 *
 * @param from first reading, counted from 0
 * @param to one past the last reading
 * @param leftOut readings in between that were left out, ascending
 * @param intercept absorbance of the line at the trigger
 * @param slopePerS creep in absorbance per s
 * @param scatter standard deviation of one reading about the line; empty under three readings
 * @param carry correlation of the scatter of neighbours, 0 where it was not estimated
 * @param meanTimeS mean time of the readings used in s from the trigger
 * @param uMean standard uncertainty of the line at that time; empty under three readings
 * @param uSlopePerS standard uncertainty of the slope; empty under three readings
 * @param burstLeft estimate of the burst still to come at the first reading, in absorbance; empty where it could not be
 *     estimated
 * @param burstBound bound on the size of that burst (about 95 % of belief below it)
 */
public record FinishedPart(
        int from,
        int to,
        List<Integer> leftOut,
        double intercept,
        double slopePerS,
        OptionalDouble scatter,
        double carry,
        double meanTimeS,
        OptionalDouble uMean,
        OptionalDouble uSlopePerS,
        OptionalDouble burstLeft,
        OptionalDouble burstBound) {
    /** Keeps a copy that cannot change. */
    public FinishedPart {
        leftOut = List.copyOf(leftOut);
    }

    /** The line at a time in s from the trigger. */
    public double at(double timeS) {
        return intercept + slopePerS * timeS;
    }

    /** Standard uncertainty of the line at a time in s, from scatter alone; empty under three readings. */
    public OptionalDouble uAt(double timeS) {
        return uMean.isPresent() && uSlopePerS.isPresent()
                ? OptionalDouble.of(Math.hypot(uMean.getAsDouble(), (timeS - meanTimeS) * uSlopePerS.getAsDouble()))
                : OptionalDouble.empty();
    }

    /** Whether a reading of the series after the trigger belongs to the line. */
    public boolean uses(int reading) {
        return reading >= from && reading < to && !leftOut.contains(reading);
    }

    /** How many readings the line rests on. */
    public int readings() {
        return to - from - leftOut.size();
    }
}
