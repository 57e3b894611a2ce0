package tallywell.trace;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The absorbance before the trigger, and how it came about.
 *
 * @param value absorbance at the trigger
 * @param slopePerS slope of the line drawn through the baseline in absorbance per s; 0 unless the rule is a line
 * @param leftOut baseline readings left out as off the baseline, ascending
 * @param scatter standard deviation of one reading about the baseline; empty under three readings
 * @param standardUncertainty of the value; empty where nothing shows it
 */
public record BaselineFit(
        double value,
        double slopePerS,
        List<Integer> leftOut,
        OptionalDouble scatter,
        OptionalDouble standardUncertainty) {
    /** Keeps a copy that cannot change. */
    public BaselineFit {
        leftOut = List.copyOf(leftOut);
    }

    /** The baseline at a time in s from the trigger. */
    public double at(double timeS) {
        return value + slopePerS * timeS;
    }
}
