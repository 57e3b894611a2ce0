package tallywell.method;

/**
 * Volumes in the well, each a total that includes the sample.
 *
 * @param sampleUl volume of sample in µL, positive
 * @param beforeTriggerUl volume when the baseline is read, in µL, at least the sample
 * @param afterTriggerUl volume after the trigger was added, in µL, at least that before
 */
public record Volumes(double sampleUl, double beforeTriggerUl, double afterTriggerUl) {
    /** Refuses volumes that shrink. */
    public Volumes {
        if (!(sampleUl > 0 && beforeTriggerUl >= sampleUl && afterTriggerUl >= beforeTriggerUl)) {
            throw new IllegalArgumentException("volumes must be positive and grow but were " + sampleUl + ", "
                    + beforeTriggerUl + ", " + afterTriggerUl);
        }
    }
}
