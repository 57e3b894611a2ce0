package tallywell.curve;

import java.util.OptionalDouble;

/**
 * A calibration formula with its coefficients: response y (net ΔA) over level x.
 *
 * <p>A curve knows nothing of a range; {@link Calibration#invert} keeps to that of the standards.
 */
public sealed interface Curve permits Line, Quadratic, Logistic {
    /** The formula. */
    Model model();

    /** How many coefficients the curve has. */
    int size();

    /** The coefficient at an index from 0, in the order of the formula in {@link Model}. */
    double coefficient(int index);

    /** The response at a level, at least 0. */
    double at(double level);

    /** The derivative of the response with respect to the level. */
    double slopeAt(double level);

    /** The derivatives of the response at a level with respect to the coefficients, in their order. */
    double[] gradientAt(double level);

    /**
     * The level that gives a response, on the rising branch of the curve that reaches level 0 or comes next to it.
     * Empty if the curve never gives that response. A straight line answers below 0 too.
     */
    OptionalDouble levelOf(double response);
}
