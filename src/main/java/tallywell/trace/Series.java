package tallywell.trace;

/**
 * Readings of one well in time order; cannot change.
 *
 * <p>Times are in s from the trigger of the well, absorbances as read. A series of end points may have no times at all.
 * Readings that the reader could not give (out of range, missing) are not among the values; their times are kept, since
 * what was lost matters to what can be said of the rest.
 */
public final class Series {
    private static final double[] NONE = {};

    private final boolean timed;
    private final double[] timeS;
    private final double[] absorbance;
    private final double[] overS;
    private final double[] missingS;

    private Series(boolean timed, double[] timeS, double[] absorbance, double[] overS, double[] missingS) {
        this.timed = timed;
        this.timeS = timeS;
        this.absorbance = absorbance;
        this.overS = overS;
        this.missingS = missingS;
    }

    /**
     * Readings with times; both arrays are copied.
     *
     * @throws IllegalArgumentException unless there is at least one reading, both arrays have one length, times ascend
     *     (equal neighbours are allowed) and every number is finite
     */
    public static Series of(double[] timeS, double[] absorbance) {
        if (timeS.length != absorbance.length) {
            throw new IllegalArgumentException(
                    "timeS must be as long as absorbance (" + absorbance.length + ") but was " + timeS.length);
        }
        requireFinite("timeS", timeS);
        for (int i = 1; i < timeS.length; i++) {
            if (!(timeS[i] >= timeS[i - 1])) {
                throw new IllegalArgumentException(
                        "timeS must be ascending but was " + timeS[i] + " after " + timeS[i - 1]);
            }
        }
        return new Series(true, timeS.clone(), checked(absorbance), NONE, NONE);
    }

    /**
     * Readings in the order taken, without times.
     *
     * @throws IllegalArgumentException unless there is at least one reading and every number is finite
     */
    public static Series untimed(double... absorbance) {
        return new Series(false, new double[absorbance.length], checked(absorbance), NONE, NONE);
    }

    /** The same with the times of readings that were out of range; for a series without times any number will do. */
    public Series withOver(double... overS) {
        return new Series(timed, timeS, absorbance, overS.clone(), missingS);
    }

    /** The same with the times of readings that are missing; for a series without times any number will do. */
    public Series withMissing(double... missingS) {
        return new Series(timed, timeS, absorbance, overS, missingS.clone());
    }

    /** How many readings, at least 1. */
    public int size() {
        return absorbance.length;
    }

    /** Whether the readings have times. */
    public boolean isTimed() {
        return timed;
    }

    /** Time of a reading in s from the trigger; 0 for a series without times. */
    public double timeS(int index) {
        return timeS[index];
    }

    /** A reading. */
    public double absorbance(int index) {
        return absorbance[index];
    }

    /** How many readings were out of range. */
    public int over() {
        return overS.length;
    }

    /** How many readings are missing. */
    public int missing() {
        return missingS.length;
    }

    /** Shared, not copied: inside this package nobody writes into it. */
    double[] times() {
        return timeS;
    }

    /** Shared, not copied: inside this package nobody writes into it. */
    double[] values() {
        return absorbance;
    }

    private static double[] checked(double[] absorbance) {
        if (absorbance.length == 0) {
            throw new IllegalArgumentException("absorbance must be at least one reading but was none");
        }
        requireFinite("absorbance", absorbance);
        return absorbance.clone();
    }

    private static void requireFinite(String name, double[] values) {
        for (double value : values) {
            if (!(Math.abs(value) <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException(name + " must be finite but was " + value);
            }
        }
    }
}
