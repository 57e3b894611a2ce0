package tallywell.workup;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tallywell.plate.Well;

/** Mean and standard deviation of a few numbers, as a spreadsheet's AVERAGE and STDEV.S give them. */
final class Means {
    private Means() {}

    /** The mean of at least one value. */
    static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    /** The standard deviation with n - 1; empty for fewer than two values. */
    static OptionalDouble sd(double[] values) {
        if (values.length < 2) {
            return OptionalDouble.empty();
        }
        double mean = mean(values);
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        return OptionalDouble.of(Math.sqrt(squares / (values.length - 1)));
    }

    /** The coefficient of variation in percent; empty for fewer than two values or a mean of 0. */
    static OptionalDouble cvPercent(double[] values) {
        OptionalDouble sd = sd(values);
        double mean = values.length == 0 ? 0 : mean(values);
        return sd.isPresent() && mean != 0
                ? OptionalDouble.of(100 * sd.getAsDouble() / Math.abs(mean))
                : OptionalDouble.empty();
    }

    /** Wells in words. */
    static String words(List<Well> wells) {
        return wells.stream().map(Well::toString).collect(Collectors.joining(", "));
    }
}
