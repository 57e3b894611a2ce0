package tallywell.numeric;

import java.util.Arrays;

/**
 * A model linear in some of its parameters.
 *
 * <pre>{@code
 * y[i] = sum over j of  c[j] basis[j](i; theta)
 * }</pre>
 *
 * <p>Rows may be scaled by the caller (weights, whitening), as long as basis, slopes and y are scaled alike.
 */
public interface SeparableModel {
    /** How many observations. */
    int rows();

    /** How many linear parameters c, at least 1. */
    int linear();

    /** How many nonlinear parameters theta, at least 1. */
    int nonlinear();

    /**
     * Fills the basis.
     *
     * @param theta nonlinear parameters
     * @param basis takes {@link #linear} columns of {@link #rows} values
     * @return whether theta is allowed; if not, nothing is read from the basis and a shorter step is tried
     */
    boolean basis(double[] theta, double[][] basis);

    /**
     * Fills the derivatives of the fitted values, the linear parameters being held.
     *
     * @param theta nonlinear parameters, the same as in the last call of {@link #basis}
     * @param c linear parameters
     * @param slopes takes {@link #nonlinear} columns, of which the first {@link #rows} values are read
     */
    void slopes(double[] theta, double[] c, double[][] slopes);

    /**
     * Says what is believed of the nonlinear parameters beforehand: for each a mean and a standard deviation, which act
     * as one more observation of it with that scatter. Nothing is believed unless this is overridden; rows must then be
     * scaled so that an observation has scatter 1.
     *
     * @param mean takes {@link #nonlinear} means
     * @param sd takes {@link #nonlinear} standard deviations, infinite where nothing is believed
     */
    default void beliefs(double[] mean, double[] sd) {
        Arrays.fill(sd, Double.POSITIVE_INFINITY);
    }
}
