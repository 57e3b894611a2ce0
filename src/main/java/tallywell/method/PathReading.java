package tallywell.method;

/**
 * Where the light path of each well is measured: two readings in the near infra-red, at the peak of water's absorption and
 * beside it, and the same two of water in a light path of 1 cm.
 *
 * @param peak which reading of the plate was taken at the peak
 * @param beside which was taken beside it
 * @param peakOfOneCm absorbance of 1 cm at the peak
 * @param besideOfOneCm absorbance of 1 cm beside it, less than at the peak
 * @param spread how far the difference of the two may be off, relative
 */
public record PathReading(
        Run.Reading peak, Run.Reading beside, double peakOfOneCm, double besideOfOneCm, Spread spread) {
    /** Refuses a difference that is not above 0. */
    public PathReading {
        if (!(peakOfOneCm - besideOfOneCm > 0)) {
            throw new IllegalArgumentException(
                    "peakOfOneCm must be above besideOfOneCm but were " + peakOfOneCm + " and " + besideOfOneCm);
        }
    }
}
