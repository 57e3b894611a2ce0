package tallywell.across;

import java.util.List;

/**
 * Effective degrees of freedom of a combination of results of several plates. Their scatter is independent, so the formula
 * of Welch and Satterthwaite holds for it; what is stated counts as exactly known.
 *
 * <p>Source: JCGM 100:2008 (GUM), G.4.1.
 */
final class Freedom {
    private double sum;

    /**
     * Adds the scatter of one result.
     *
     * @param u its part of the combination, standard uncertainty
     * @param freedom its degrees of freedom, may be infinite
     */
    void add(double u, double freedom) {
        sum += u > 0 ? Math.pow(u, 4) / freedom : 0;
    }

    /** The degrees of freedom of a combination with this standard uncertainty; may be infinite. */
    double of(double u) {
        return sum > 0 ? Math.pow(u, 4) / sum : Double.POSITIVE_INFINITY;
    }

    /** The degrees of freedom of a weighted sum. */
    static double of(double u, double[] weights, List<UncertaintyParts> parts) {
        Freedom freedom = new Freedom();
        for (int i = 0; i < weights.length; i++) {
            freedom.add(
                    Math.abs(weights[i]) * parts.get(i).scatter(), parts.get(i).scatterFreedom());
        }
        return freedom.of(u);
    }
}
