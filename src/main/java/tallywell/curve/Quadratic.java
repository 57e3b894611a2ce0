package tallywell.curve;

import java.util.OptionalDouble;

/**
 * A parabola, y = constant + linear · x + square · x².
 *
 * @param constant response at level 0
 * @param linear slope at level 0
 * @param square half the change of the slope per unit of level; 0 gives a straight line
 */
public record Quadratic(double constant, double linear, double square) implements Curve {
    @Override
    public Model model() {
        return Model.QUADRATIC;
    }

    @Override
    public int size() {
        return 3;
    }

    @Override
    public double coefficient(int index) {
        return switch (index) {
            case 0 -> constant;
            case 1 -> linear;
            case 2 -> square;
            default -> throw new IllegalArgumentException("index must lie in 0 to 2 but was " + index);
        };
    }

    @Override
    public double at(double level) {
        return constant + level * (linear + level * square);
    }

    @Override
    public double slopeAt(double level) {
        return linear + 2 * square * level;
    }

    @Override
    public double[] gradientAt(double level) {
        return new double[] {1, level, level * level};
    }

    @Override
    public OptionalDouble levelOf(double response) {
        double rise = response - constant;
        double discriminant = linear * linear + 4 * square * rise;
        if (!(discriminant >= 0)) {
            return OptionalDouble.empty();
        }
        // On the rising branch the slope is the root of the discriminant. Of the two forms of the solution the one
        // that adds numbers of equal sign keeps its digits.
        double slope = Math.sqrt(discriminant);
        double level = linear > 0 ? 2 * rise / (linear + slope) : (slope - linear) / (2 * square);
        return Math.abs(level) <= Double.MAX_VALUE ? OptionalDouble.of(level) : OptionalDouble.empty();
    }
}
