package tallywell.budget;

/**
 * Something that makes results uncertain. Results that share a source share its error, which is where their covariance
 * comes from.
 *
 * @param label in the words of a report, such as {@code blank} or {@code calibration}
 * @param name what tells it from other sources of the same label; unique on the plate together with the label
 * @param estimate where its size was taken from
 */
public record Source(String label, String name, Estimate estimate) {}
