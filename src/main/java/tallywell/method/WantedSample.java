package tallywell.method;

/**
 * A row of a sample list before the run is planned.
 *
 * @param sample the sample; its slot is 0 and its dilution 1 where the list does not say
 * @param hasDilution whether the list gives the dilution
 * @param expected what is expected of it as typed, or empty
 * @param place where the row stands, for messages
 */
public record WantedSample(Sample sample, boolean hasDilution, String expected, String place) {
    /** A sample whose row is complete, of which nothing is expected. */
    public static WantedSample planned(Sample sample) {
        return new WantedSample(sample, true, "", "");
    }

    /** The same in a slot. */
    public WantedSample inSlot(int slot) {
        return new WantedSample(sample.inSlot(slot), hasDilution, expected, place);
    }

    /** Whether the list gives the slot. */
    public boolean hasSlot() {
        return sample.slot() > 0;
    }
}
