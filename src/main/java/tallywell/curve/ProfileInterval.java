package tallywell.curve;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * The interval of a level from the profile of the sum of squares.
 *
 * <pre>{@code
 * S(x)  the least weighted sum of squares of the standards and of the sample, taken as one more point at level x
 * interval  all x with S(x) - S(standards alone) <= factor² · unit
 * }</pre>
 *
 * <p>The curve is fitted again at each x, so nothing is taken as linear; for lines and quadratics this gives the
 * interval of {@link InversePrediction} again. It costs some hundred fits. A common blank must cancel, so a line
 * through zero has no profile here.
 *
 * <p>Source: Bates and Watts (1988), Nonlinear Regression Analysis, chapter 6 (from memory).
 */
public final class ProfileInterval {
    private static final double FARTHEST = 1e3;
    private static final int HALVINGS = 40;

    private final InversePrediction prediction;
    private final double[] level;
    private final double[] response;
    private final double[] weight;
    private final double limit;

    private ProfileInterval(InversePrediction prediction, double factor) {
        var standards = prediction.calibration().standards();
        int n = standards.size();
        this.prediction = prediction;
        this.level = standards.stream().mapToDouble(Standard::level).toArray();
        this.response =
                Arrays.copyOf(standards.stream().mapToDouble(Standard::response).toArray(), n + 1);
        this.weight =
                Arrays.copyOf(standards.stream().mapToDouble(Standard::weight).toArray(), n + 1);
        this.response[n] = prediction.response();
        this.weight[n] = prediction.variance().unit() / prediction.variance().own();
        this.limit = prediction.calibration().fit().sumOfSquares()
                + factor * factor * prediction.variance().unit();
    }

    /**
     * The interval of a prediction.
     *
     * @param prediction with a curve that has a free constant, and variances unit and own above 0
     * @param factor quantile of t for the coverage and the degrees of freedom of the unit variance, positive
     */
    public static LevelInterval of(InversePrediction prediction, double factor) {
        if (prediction.calibration().curve().model() == Model.LINE_THROUGH_ZERO) {
            throw new IllegalArgumentException("prediction must have a free constant but was through zero");
        }
        if (!(prediction.variance().unit() > 0 && prediction.variance().own() > 0)) {
            throw new IllegalArgumentException("variances must be positive but were " + prediction.variance());
        }
        if (!(factor > 0 && factor <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("factor must be positive and finite but was " + factor);
        }
        ProfileInterval profile = new ProfileInterval(prediction, factor);
        double width = factor * prediction.standardUncertainty();
        return new LevelInterval(profile.end(-width), profile.end(width));
    }

    private boolean beyond(double x) {
        double[] levels = Arrays.copyOf(level, level.length + 1);
        levels[level.length] = x;
        try {
            return Calibrator.regression(
                                    levels,
                                    response,
                                    weight,
                                    prediction.calibration().curve().model())
                            .sumOfSquares()
                    > limit;
        } catch (StandardsException undetermined) {
            // No minimum at this x: the sum of squares falls on towards some limiting curve, which sets no bound.
            return false;
        }
    }

    private OptionalDouble end(double width) {
        double from = prediction.level();
        double farthest = FARTHEST
                * (prediction.calibration().highest() - prediction.calibration().lowest());
        double inside = from;
        for (double step = width / 2; Math.abs(step) < farthest; step *= 1.5) {
            double next = from + step;
            if (next < 0) {
                return beyond(0) ? OptionalDouble.of(halved(inside, 0)) : OptionalDouble.empty();
            }
            if (beyond(next)) {
                return OptionalDouble.of(halved(inside, next));
            }
            inside = next;
        }
        return OptionalDouble.empty();
    }

    private double halved(double inside, double outside) {
        double in = inside;
        double out = outside;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = in + (out - in) / 2;
            if (beyond(middle)) {
                out = middle;
            } else {
                in = middle;
            }
        }
        return in;
    }
}
