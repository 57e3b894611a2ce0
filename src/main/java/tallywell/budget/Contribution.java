package tallywell.budget;

/**
 * What a source does to a result.
 *
 * @param source the source
 * @param sensitivity change of the value for each unit of the source
 * @param standardUncertainty of the source, at least 0
 */
public record Contribution(Source source, double sensitivity, double standardUncertainty) {
    /** The product: the standard uncertainty of the value from this source alone, with its sign. */
    public double effect() {
        return sensitivity * standardUncertainty;
    }
}
