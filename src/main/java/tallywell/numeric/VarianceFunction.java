package tallywell.numeric;

import java.util.Arrays;

/**
 * A variance that grows with the size of the value.
 *
 * <pre>{@code
 * s²(y) = constant + proportional · y²        constant = s0², proportional = s1²
 * }</pre>
 *
 * <p>Fitted to the variances of many small groups, each with its mean and its degrees of freedom, by maximum likelihood
 * for normal values ({@link VarianceRatioProfile}): the highest of all maxima, edges included. At an edge one part is 0
 * and the other one is fitted alone. A part of 0 there is what the data say best, not that it is known to be 0.
 *
 * <p>Check values: {@code glm} of R with family Gamma and identity link; {@code optim} of R over 1000 simulated plates.
 */
public final class VarianceFunction {
    private final double constant;
    private final double proportional;
    private final double[][] covariance;

    private VarianceFunction(double constant, double proportional, double[][] covariance) {
        this.constant = constant;
        this.proportional = proportional;
        this.covariance = covariance;
    }

    /**
     * Fits the function.
     *
     * @param means mean of each group
     * @param variances variance of each group, at least 0, not all 0
     * @param degreesOfFreedom those of each variance, positive
     */
    public static VarianceFunction fit(double[] means, double[] variances, double[] degreesOfFreedom) {
        Series.atLeast("means", means, 1);
        Series.sameLength("variances", variances, means.length);
        Series.sameLength("degreesOfFreedom", degreesOfFreedom, means.length);
        Series.finite("means", means);
        Series.finite("variances", variances);
        Series.positive("degreesOfFreedom", degreesOfFreedom);
        for (int i = 0; i < variances.length; i++) {
            if (!(variances[i] >= 0)) {
                throw new IllegalArgumentException("variances[" + i + "] must be at least 0 but was " + variances[i]);
            }
        }
        if (!(Arrays.stream(variances).max().orElseThrow() > 0)) {
            throw new IllegalArgumentException("variances must hold a value above 0 but was 0 throughout");
        }
        return fitted(Arrays.stream(means).map(each -> each * each).toArray(), variances, degreesOfFreedom);
    }

    /** A variance that does not depend on the value: the pooled one. */
    public static VarianceFunction pooled(double[] variances, double[] degreesOfFreedom) {
        return fit(new double[variances.length], variances, degreesOfFreedom);
    }

    private static VarianceFunction fitted(double[] squares, double[] variances, double[] freedom) {
        double total = Arrays.stream(freedom).sum();
        VarianceRatioProfile profile = new VarianceRatioProfile(squares, variances, freedom);
        double ratio = profile.best();
        if (ratio == 0) {
            double pooled = profile.constant(0);
            return new VarianceFunction(pooled, 0, new double[][] {{2 * pooled * pooled / total, 0}, {0, 0}});
        }
        if (ratio == Double.POSITIVE_INFINITY) {
            double alone = profile.proportionalAlone();
            return new VarianceFunction(0, alone, new double[][] {{0, 0}, {0, 2 * alone * alone / total}});
        }
        double constant = profile.constant(ratio);
        double[] both = {constant, ratio * constant};
        return new VarianceFunction(both[0], both[1], covariance(squares, freedom, both));
    }

    /** The inverse of the information matrix: sum of ν / (2 s⁴) (1, y²)(1, y²)ᵀ. */
    private static double[][] covariance(double[] squares, double[] freedom, double[] parameters) {
        double a = 0;
        double b = 0;
        double d = 0;
        for (int i = 0; i < squares.length; i++) {
            double variance = parameters[0] + parameters[1] * squares[i];
            double information = freedom[i] / (2 * variance * variance);
            a += information;
            b += information * squares[i];
            d += information * squares[i] * squares[i];
        }
        double determinant = a * d - b * b;
        return new double[][] {{d / determinant, -b / determinant}, {-b / determinant, a / determinant}};
    }

    /** The variance of a value. */
    public double at(double value) {
        return constant + proportional * value * value;
    }

    /** s0², the variance of a value of 0. */
    public double constant() {
        return constant;
    }

    /** s1², the squared relative standard deviation of a large value. */
    public double proportional() {
        return proportional;
    }

    /**
     * How well the variance of a value is known: twice its square over the variance of its estimate. Without a
     * proportional part this is the sum of the degrees of freedom.
     */
    public double degreesOfFreedom(double value) {
        return degreesOfFreedom(1, value * value);
    }

    /**
     * How well a sum of variances is known, each of which follows this function.
     *
     * @param ofConstant sum of the factors of the variances, at least 0
     * @param ofProportional sum of the factors times the squared values, at least 0
     */
    public double degreesOfFreedom(double ofConstant, double ofProportional) {
        double variance = ofConstant * constant + ofProportional * proportional;
        double uncertain = ofConstant * ofConstant * covariance[0][0]
                + 2 * ofConstant * ofProportional * covariance[0][1]
                + ofProportional * ofProportional * covariance[1][1];
        return uncertain > 0 ? 2 * variance * variance / uncertain : Double.POSITIVE_INFINITY;
    }
}
