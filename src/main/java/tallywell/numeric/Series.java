package tallywell.numeric;

/** Guards on plain series. Each is written so that NaN fails. */
final class Series {
    private Series() {}

    static void sameLength(String name, double[] series, int length) {
        if (series.length != length) {
            throw new IllegalArgumentException(name + " must have length " + length + " but was " + series.length);
        }
    }

    static void atLeast(String name, double[] series, int length) {
        if (series.length < length) {
            throw new IllegalArgumentException(
                    name + " must have length of at least " + length + " but was " + series.length);
        }
    }

    static void finite(String name, double[] series) {
        for (int i = 0; i < series.length; i++) {
            if (!(Math.abs(series[i]) <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException(name + "[" + i + "] must be finite but was " + series[i]);
            }
        }
    }

    static void positive(String name, double[] series) {
        for (int i = 0; i < series.length; i++) {
            if (!(series[i] > 0 && series[i] <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException(
                        name + "[" + i + "] must be positive and finite but was " + series[i]);
            }
        }
    }

    static double positive(String name, double value) {
        if (!(value > 0)) {
            throw new IllegalArgumentException(name + " must be positive but was " + value);
        }
        return value;
    }

    static double probability(String name, double value) {
        if (!(value > 0 && value < 1)) {
            throw new IllegalArgumentException(name + " must lie between 0 and 1 but was " + value);
        }
        return value;
    }

    static double mean(double[] series) {
        double first = 0;
        for (double value : series) {
            first += value;
        }
        first /= series.length;
        // A second pass takes out the rounding of the first.
        double rest = 0;
        for (double value : series) {
            rest += value - first;
        }
        return first + rest / series.length;
    }

    /** The sum of squared deviations from a mean. */
    static double squaresAbout(double mean, double[] series) {
        double squares = 0;
        for (double value : series) {
            squares += (value - mean) * (value - mean);
        }
        return squares;
    }
}
