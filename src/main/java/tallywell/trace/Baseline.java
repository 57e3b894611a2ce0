package tallywell.trace;

/** What was there before the trigger. */
public sealed interface Baseline {
    /**
     * Readings taken before the trigger.
     *
     * @param readings times at most 0 s
     * @param rule how they become one absorbance; a line through fewer than two times is the mean
     */
    record Read(Series readings, BeforeRule rule) implements Baseline {}

    /**
     * An absorbance known already, as the finished line of the step before at this trigger.
     *
     * @param value absorbance before the trigger
     * @param standardUncertainty its standard uncertainty; 0 where nothing is known of it
     */
    record Given(double value, double standardUncertainty) implements Baseline {
        /** Refuses what is no number. */
        public Given {
            if (!(Math.abs(value) <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException("value must be finite but was " + value);
            }
            if (!(standardUncertainty >= 0 && standardUncertainty <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException(
                        "standardUncertainty must be at least 0 but was " + standardUncertainty);
            }
        }
    }
}
