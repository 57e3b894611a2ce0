package tallywell.curve;

import java.util.OptionalDouble;

/**
 * A straight line.
 *
 * @param model {@link Model#LINE} or {@link Model#LINE_THROUGH_ZERO}
 * @param intercept response at level 0; 0 for a line through zero
 * @param slope response per unit of level, not 0
 */
public record Line(Model model, double intercept, double slope) implements Curve {
    /** Refuses a line that cannot be inverted. */
    public Line {
        if (model != Model.LINE && model != Model.LINE_THROUGH_ZERO) {
            throw new IllegalArgumentException("model must be a line but was " + model);
        }
        if (!(Math.abs(intercept) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("intercept must be finite but was " + intercept);
        }
        if (model == Model.LINE_THROUGH_ZERO && intercept != 0) {
            throw new IllegalArgumentException("intercept must be 0 but was " + intercept);
        }
        if (!(Math.abs(slope) > 0 && Math.abs(slope) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("slope must be finite and not 0 but was " + slope);
        }
    }

    /** A line with an intercept. */
    public static Line of(double intercept, double slope) {
        return new Line(Model.LINE, intercept, slope);
    }

    /** A line through zero. */
    public static Line throughZero(double slope) {
        return new Line(Model.LINE_THROUGH_ZERO, 0, slope);
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
        return index == size() - 1 ? slope : intercept;
    }

    @Override
    public double at(double level) {
        return intercept + slope * level;
    }

    @Override
    public double slopeAt(double level) {
        return slope;
    }

    @Override
    public double[] gradientAt(double level) {
        return model == Model.LINE ? new double[] {1, level} : new double[] {level};
    }

    @Override
    public OptionalDouble levelOf(double response) {
        return OptionalDouble.of((response - intercept) / slope);
    }
}
