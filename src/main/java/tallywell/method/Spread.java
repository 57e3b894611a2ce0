package tallywell.method;

/**
 * How far a quantity may be off: its distribution, in the unit of the quantity or relative to it.
 *
 * @param shape of the distribution
 * @param halfWidth of a rectangle, or the standard uncertainty of a normal distribution; positive
 */
public record Spread(Shape shape, double halfWidth) {
    /** Shape of a distribution. */
    public enum Shape {
        /** Anything within the tolerance is equally likely. */
        RECTANGULAR,
        /** A standard uncertainty is known. */
        NORMAL
    }

    /** Refuses what is not positive. */
    public Spread {
        if (!(halfWidth > 0 && halfWidth <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("halfWidth must be > 0 but was " + halfWidth);
        }
    }

    /** Within a tolerance, plus or minus. */
    public static Spread tolerance(double plusMinus) {
        return new Spread(Shape.RECTANGULAR, plusMinus);
    }

    /** With a standard uncertainty. */
    public static Spread standard(double uncertainty) {
        return new Spread(Shape.NORMAL, uncertainty);
    }

    /** The standard uncertainty. */
    public double standardUncertainty() {
        return shape == Shape.RECTANGULAR ? halfWidth / Math.sqrt(3) : halfWidth;
    }
}
