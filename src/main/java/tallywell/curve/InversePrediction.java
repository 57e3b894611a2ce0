package tallywell.curve;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * The level that a response stands for, with its uncertainty.
 *
 * <pre>{@code
 * level        x with f(x) = y
 * spread(x)²   own + unit · gᵀCg + commonBlank · (1 - k(x))² + standardsBlank · k(x)²
 * u(level)     spread(x) / f'(x)                                      first order, "delta"
 * interval     all x with |y - f(x)| <= factor · spread(x)
 * }</pre>
 *
 * <p>y is the mean net ΔA of the sample, g the gradient of the curve at x with respect to its parameters, C its
 * cofactors and k(x) the shift of the curve with a common shift of the standards (1 with a free constant term, so that
 * a common blank cancels; in proportion to x for a line through zero).
 *
 * <p>For straight lines the interval is Fieller's, in closed form and exact under normal scatter; for a quadratic it is
 * exact too, since y − f(x) is linear in the parameters, and its ends are searched. For a logistic it is linear in the
 * parameters to first order only; {@link ProfileInterval} does without that. The interval may reach beyond the
 * standards, and where the curve sets no bound it has none.
 *
 * <p>Source: Fieller (1954), J. R. Stat. Soc. B 16, 175 (from memory); EURACHEM/CITAC Guide CG 4 (2012), appendix E.4.
 * Check values: EURACHEM A5, Miller and Miller's fluorescein line, DNase Run 1.
 */
public final class InversePrediction {
    /** How far beyond the standards an end of an interval is searched, in ranges of the standards. */
    private static final double FARTHEST = 1e4;

    private final Calibration calibration;
    private final double response;
    private final ResponseVariance variance;
    private final double level;

    /**
     * Predicts a level.
     *
     * @param calibration the calibration
     * @param response mean net ΔA, such that the calibration gives a level within its range
     * @param variance what makes response and curve uncertain
     */
    public InversePrediction(Calibration calibration, double response, ResponseVariance variance) {
        if (!(calibration.invert(response) instanceof Inverse.Within within)) {
            throw new IllegalArgumentException("response must lie within the standards but was " + response);
        }
        this.calibration = calibration;
        this.response = response;
        this.variance = variance;
        this.level = within.level();
    }

    /** The level. */
    public double level() {
        return level;
    }

    /** The calibration. */
    public Calibration calibration() {
        return calibration;
    }

    /** The mean net ΔA. */
    public double response() {
        return response;
    }

    /** What makes response and curve uncertain. */
    public ResponseVariance variance() {
        return variance;
    }

    /** The standard uncertainty of the level, to first order. */
    public double standardUncertainty() {
        return Math.sqrt(spreadSquared(level)) / calibration.curve().slopeAt(level);
    }

    /** The part of the standard uncertainty that comes from the curve and what it shares with the sample. */
    public double curveUncertainty() {
        return Math.sqrt(Math.max(0, spreadSquared(level) - variance.own()))
                / calibration.curve().slopeAt(level);
    }

    /**
     * The interval.
     *
     * @param factor quantile of t for the coverage and the degrees of freedom of the spread, positive
     */
    public LevelInterval interval(double factor) {
        if (!(factor > 0 && factor <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("factor must be positive and finite but was " + factor);
        }
        if (calibration.curve() instanceof Line line) {
            return fieller(line.slope(), factor);
        }
        DoubleUnaryOperator beyond =
                x -> Math.abs(response - calibration.curve().at(x)) - factor * Math.sqrt(spreadSquared(x));
        double width = factor * standardUncertainty();
        return new LevelInterval(end(beyond, -width), end(beyond, width));
    }

    private double spreadSquared(double x) {
        double shift = calibration.commonShift(x);
        return variance.own()
                + variance.unit()
                        * calibration.fit().cofactorOf(calibration.curve().gradientAt(x))
                + variance.commonBlank() * (1 - shift) * (1 - shift)
                + variance.standardsBlank() * shift * shift;
    }

    /** The squared spread of a line is a parabola in x, so the ends are the roots of a quadratic equation. */
    private LevelInterval fieller(double slope, double factor) {
        double range = calibration.highest() - calibration.lowest();
        double here = spreadSquared(level);
        double above = spreadSquared(level + range);
        double below = spreadSquared(level - range);
        double square = factor * factor;
        double bend = (above + below - 2 * here) / (2 * range * range);
        double tilt = (above - below) / (4 * range);
        double leading = slope * slope - square * bend;
        if (!(leading > 0)) {
            return LevelInterval.unbounded();
        }
        double root = factor * Math.sqrt(square * tilt * tilt + leading * here);
        return LevelInterval.of(level + (square * tilt - root) / leading, level + (square * tilt + root) / leading);
    }

    /** Walks from the level with growing steps until the condition turns, then halves. */
    private OptionalDouble end(DoubleUnaryOperator beyond, double width) {
        if (width == 0) {
            return OptionalDouble.of(level);
        }
        Curve curve = calibration.curve();
        double farthest = FARTHEST * (calibration.highest() - calibration.lowest());
        double inside = level;
        for (double step = width / 4; Math.abs(step) < farthest; step *= 1.5) {
            double next = level + step;
            // A logistic has no level below 0; past the turning point of a parabola there is nothing to find.
            boolean pastTheCurve = curve instanceof Logistic ? next < 0 : !(curve.slopeAt(next) > 0);
            if (pastTheCurve) {
                next = curve instanceof Quadratic parabola ? -parabola.linear() / (2 * parabola.square()) : 0;
            }
            if (beyond.applyAsDouble(next) > 0) {
                return OptionalDouble.of(halved(beyond, inside, next));
            }
            if (pastTheCurve) {
                return OptionalDouble.empty();
            }
            inside = next;
        }
        return OptionalDouble.empty();
    }

    private static double halved(DoubleUnaryOperator beyond, double inside, double outside) {
        double in = inside;
        double out = outside;
        for (int i = 0; i < 200; i++) {
            double middle = in + (out - in) / 2;
            if (middle == in || middle == out) {
                break;
            }
            if (beyond.applyAsDouble(middle) > 0) {
                out = middle;
            } else {
                in = middle;
            }
        }
        return in;
    }
}
