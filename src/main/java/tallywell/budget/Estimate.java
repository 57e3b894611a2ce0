package tallywell.budget;

/** Where the size of a contribution was taken from; contributions of one estimate are wrong together. */
public enum Estimate {
    /** The repeatability pooled over the plate. */
    POOLED_REPEATABILITY,
    /** The residuals of the calibration. */
    CALIBRATION_RESIDUALS,
    /** The scatter of the sample's own wells, where it is too large for the pooled one. */
    OWN_SCATTER,
    /** The noise of the trace of each well, where no replicates show the scatter; knows nothing of pipetting. */
    TRACE,
    /**
     * What the course of the traces leaves open, burst left and creep that may die away: replicates share it, so that their
     * scatter does not show it. Taken as exactly known.
     */
    COURSE,
    /** What the method states; taken as exactly known. */
    STATED;

    /** Whether it is known by how wells scatter, and no better than that. */
    public boolean isScatter() {
        return this != STATED && this != COURSE;
    }
}
