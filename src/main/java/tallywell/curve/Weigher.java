package tallywell.curve;

/** How much a standard counts in the fit, and so how the variance of a response depends on where it lies. */
public sealed interface Weigher permits Weighting, FittedVariance {
    /**
     * The weight at a point: the variance of a response there is that of weight 1 divided by it.
     *
     * @param level the level
     * @param response the mean response of the wells of the level, or the response of the curve
     * @return a positive number, or one that is not positive and finite where the rule has no weight to give
     */
    double weight(double level, double response);

    /** The weight of a blank, as {@link #weight}; 0 where the rule has none to give at level 0. */
    double weightOfBlank();

    /** The rule in a word. */
    String word();
}
