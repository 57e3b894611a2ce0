package tallywell.curve;

/**
 * What makes a response and the curve uncertain, as variances on the scale of net ΔA.
 *
 * @param unit variance of a standard of weight 1; normally the residual variance of the fit
 * @param own variance of the sample's mean response that the standards do not share: of its replicates' mean, and of
 *     its own blank where that is not the blank of the standards
 * @param commonBlank variance of the mean blank that sample and standards share
 * @param standardsBlank variance of the mean blank that only the standards have
 */
public record ResponseVariance(double unit, double own, double commonBlank, double standardsBlank) {
    /** Refuses negative variances. */
    public ResponseVariance {
        if (!(unit >= 0 && own >= 0 && commonBlank >= 0 && standardsBlank >= 0)) {
            throw new IllegalArgumentException("variances must be at least 0 but were " + unit + ", " + own + ", "
                    + commonBlank + ", " + standardsBlank);
        }
    }

    /**
     * The residual variance of the fit for everything: for the standards, and at the level of the sample, as its
     * weight there says, for the mean of its replicates. The blank is taken as exact.
     *
     * @param calibration with at least one degree of freedom
     * @param level of the sample
     * @param replicates how many wells the mean response comes from, at least 1
     */
    public static ResponseVariance residual(Calibration calibration, double level, int replicates) {
        if (!(replicates >= 1)) {
            throw new IllegalArgumentException("replicates must be at least 1 but was " + replicates);
        }
        double unit = calibration.fit().residualVariance();
        return new ResponseVariance(unit, unit / (replicates * calibration.weightAt(level)), 0, 0);
    }
}
