package tallywell.numeric;

import java.util.Arrays;

/**
 * The result of a least-squares fit, made once and complete.
 *
 * <p>The cofactor matrix is (XᵀWX)⁻¹, X being the matrix of sensitivities of the fitted values to the parameters: it
 * holds without any residual. The covariance matrix is the cofactor matrix times the residual variance, so it exists
 * only where {@link #degreesOfFreedom} is at least 1.
 */
public final class Regression {
    private final double[] parameters;
    private final double[][] cofactors;
    private final int observations;
    private final double sumOfSquares;
    private final double totalSumOfSquares;

    /**
     * A fit.
     *
     * @param parameters p values
     * @param cofactors p rows of p values, symmetric
     * @param observations how many points were fitted, at least p
     * @param sumOfSquares weighted sum of squared residuals
     * @param totalSumOfSquares weighted sum of squares that the fit is measured against: about the weighted mean where
     *     the formula has a constant term, about zero where it has none
     */
    public Regression(
            double[] parameters,
            double[][] cofactors,
            int observations,
            double sumOfSquares,
            double totalSumOfSquares) {
        if (observations < parameters.length) {
            throw new IllegalArgumentException(
                    "observations must be at least " + parameters.length + " but was " + observations);
        }
        this.parameters = parameters.clone();
        this.cofactors = Arrays.stream(cofactors).map(double[]::clone).toArray(double[][]::new);
        this.observations = observations;
        this.sumOfSquares = sumOfSquares;
        this.totalSumOfSquares = totalSumOfSquares;
    }

    /** How many parameters were fitted. */
    public int size() {
        return parameters.length;
    }

    /** The parameter at an index from 0. */
    public double parameter(int index) {
        return parameters[index];
    }

    /** All parameters, in a new array. */
    public double[] parameters() {
        return parameters.clone();
    }

    /** One element of (XᵀWX)⁻¹. */
    public double cofactor(int row, int column) {
        return cofactors[row][column];
    }

    /** How many points were fitted. */
    public int observations() {
        return observations;
    }

    /** Points less parameters, 0 where the curve passes through every point by force. */
    public int degreesOfFreedom() {
        return observations - parameters.length;
    }

    /** The weighted sum of squared residuals. */
    public double sumOfSquares() {
        return sumOfSquares;
    }

    /** What the sum of squares is measured against: about the mean, or about zero without a constant term. */
    public double totalSumOfSquares() {
        return totalSumOfSquares;
    }

    /**
     * The variance of a point of weight 1.
     *
     * @throws IllegalStateException if there is no degree of freedom
     */
    public double residualVariance() {
        if (degreesOfFreedom() == 0) {
            throw new IllegalStateException(
                    "no residual variance: " + observations + " points for " + size() + " parameters");
        }
        return sumOfSquares / degreesOfFreedom();
    }

    /**
     * The standard deviation of a point of weight 1.
     *
     * @throws IllegalStateException if there is no degree of freedom
     */
    public double residualSd() {
        return Math.sqrt(residualVariance());
    }

    /**
     * The covariance of two parameters.
     *
     * @throws IllegalStateException if there is no degree of freedom
     */
    public double covariance(int row, int column) {
        return residualVariance() * cofactors[row][column];
    }

    /**
     * The standard error of a parameter.
     *
     * @throws IllegalStateException if there is no degree of freedom
     */
    public double standardError(int index) {
        return Math.sqrt(covariance(index, index));
    }

    /**
     * The part of the sum of squares that the curve explains; 1 where there was nothing to explain. For formulas
     * without a constant term this is the uncentred one, as NIST certifies it.
     */
    public double rSquared() {
        return totalSumOfSquares > 0 ? 1 - sumOfSquares / totalSumOfSquares : 1;
    }

    /**
     * The quadratic form gᵀ (XᵀWX)⁻¹ g: the variance of a quantity with gradient g per unit of residual variance.
     *
     * @param gradient p derivatives with respect to the parameters
     */
    public double cofactorOf(double[] gradient) {
        Series.sameLength("gradient", gradient, parameters.length);
        double sum = 0;
        for (int i = 0; i < gradient.length; i++) {
            for (int j = 0; j < gradient.length; j++) {
                sum += gradient[i] * cofactors[i][j] * gradient[j];
            }
        }
        return sum;
    }
}
