package tallywell.curve;

import java.util.List;
import tallywell.numeric.Regression;

/**
 * A curve fitted to standards, with everything that a report shows of it.
 *
 * @param curve the fitted curve, rising throughout the range
 * @param weighting how the standards were weighted
 * @param fit parameters in the order of the formula, cofactors, residual variance
 * @param standards the points, in the order in which they were given
 * @param lowest the lowest level that a response is turned into
 * @param highest the highest level that a response is turned into
 */
public record Calibration(
        Curve curve, Weighting weighting, Regression fit, List<Standard> standards, double lowest, double highest) {
    /**
     * How far a response may lie outside the fitted responses at the ends of the range and still count as within, as a
     * part of their difference: room for rounding only, so that a response equal to that of the highest standard is
     * within.
     */
    public static final double END_TOLERANCE = 1e-9;

    /** Refuses an empty range. */
    public Calibration {
        standards = List.copyOf(standards);
        if (!(lowest < highest)) {
            throw new IllegalArgumentException("highest must be over " + lowest + " but was " + highest);
        }
    }

    /**
     * The level that a response stands for, as far as the standards reach.
     *
     * @param response net ΔA, finite
     */
    public Inverse invert(double response) {
        if (!(Math.abs(response) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("response must be finite but was " + response);
        }
        double least = curve.at(lowest);
        double most = curve.at(highest);
        double room = END_TOLERANCE * (most - least);
        if (response < least - room) {
            return new Inverse.Below(lowest);
        }
        if (response > most + room) {
            return new Inverse.Above(highest);
        }
        // Within the tolerance a curve with a turning point or an asymptote just outside may have no level to give.
        double nearest = response > most ? highest : lowest;
        return new Inverse.Within(curve.levelOf(response).orElse(nearest));
    }

    /** The response of a standard less that of the curve. */
    public double residual(Standard standard) {
        return standard.response() - curve.at(standard.level());
    }
}
