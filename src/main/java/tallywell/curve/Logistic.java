package tallywell.curve;

import java.util.OptionalDouble;
import tallywell.numeric.LogisticCurve;

/**
 * A rising logistic curve, y = d + (a − d) / (1 + (x / c)^b)^g.
 *
 * @param model {@link Model#LOGISTIC_4} or {@link Model#LOGISTIC_5}
 * @param lower a, the response at level 0
 * @param steepness b, positive
 * @param middle c, positive, in the unit of the level; with four parameters the level half way up
 * @param upper d, the response that is approached at high levels, over a
 * @param asymmetry g, positive; 1 with four parameters
 */
public record Logistic(Model model, double lower, double steepness, double middle, double upper, double asymmetry)
        implements Curve {
    /** Refuses a curve that does not rise. */
    public Logistic {
        if (model != Model.LOGISTIC_4 && model != Model.LOGISTIC_5) {
            throw new IllegalArgumentException("model must be a logistic but was " + model);
        }
        if (!(steepness > 0 && middle > 0 && asymmetry > 0)) {
            throw new IllegalArgumentException("steepness, middle and asymmetry must be positive but were " + steepness
                    + ", " + middle + ", " + asymmetry);
        }
        if (!(upper > lower && upper <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("upper must be over " + lower + " but was " + upper);
        }
        if (model == Model.LOGISTIC_4 && asymmetry != 1) {
            throw new IllegalArgumentException("asymmetry must be 1 but was " + asymmetry);
        }
    }

    @Override
    public int size() {
        return model.parameters();
    }

    @Override
    public double coefficient(int index) {
        if (!(index >= 0 && index < size())) {
            throw new IllegalArgumentException("index must lie in 0 to " + (size() - 1) + " but was " + index);
        }
        return coefficients()[index];
    }

    private double[] coefficients() {
        return model == Model.LOGISTIC_4
                ? new double[] {lower, steepness, middle, upper}
                : new double[] {lower, steepness, middle, upper, asymmetry};
    }

    @Override
    public double at(double level) {
        return LogisticCurve.at(coefficients(), level);
    }

    @Override
    public double slopeAt(double level) {
        return LogisticCurve.slope(coefficients(), level);
    }

    @Override
    public double[] gradientAt(double level) {
        return LogisticCurve.gradient(coefficients(), level);
    }

    @Override
    public OptionalDouble levelOf(double response) {
        if (!(response >= lower && response < upper)) {
            return OptionalDouble.empty();
        }
        // (x/c)^b = ((d - a) / (d - y))^(1/g) - 1, without loss of digits near the lower end
        double ratio = Math.expm1(Math.log1p((response - lower) / (upper - response)) / asymmetry);
        double level = middle * Math.pow(ratio, 1 / steepness);
        return level <= Double.MAX_VALUE ? OptionalDouble.of(level) : OptionalDouble.empty();
    }
}
