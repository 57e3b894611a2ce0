package tallywell.curve;

import java.util.List;
import java.util.OptionalDouble;
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
        Curve curve, Weigher weighting, Regression fit, List<Standard> standards, double lowest, double highest) {
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

    /** Standard deviation of a standard about the curve, for weight 1; empty where the curve passes through all by force. */
    public OptionalDouble residualSd() {
        return fit.degreesOfFreedom() > 0 ? OptionalDouble.of(fit.residualSd()) : OptionalDouble.empty();
    }

    /**
     * Standard uncertainty of the response of the curve, from the scatter of the standards alone: s · √(gᵀCg), g the
     * gradient of the curve with respect to its parameters, C their cofactors (the variance of a fitted mean; for a
     * straight line Draper and Smith, Applied Regression Analysis, 3rd ed., 1998, section 3.1, from memory).
     *
     * @param level in g/L, a level within the range
     * @return in units of net ΔA; empty where nothing shows the scatter
     */
    public OptionalDouble uAt(double level) {
        double u = Math.sqrt(fit.cofactorOf(curve.gradientAt(level)));
        return residualSd().isPresent() && u >= 0 ? OptionalDouble.of(u * fit.residualSd()) : OptionalDouble.empty();
    }

    /** The response of a standard less that of the curve. */
    public double residual(Standard standard) {
        return standard.response() - curve.at(standard.level());
    }

    /**
     * The level that the curve gives back for the response of a standard. The curve is followed beyond the range of
     * the standards here, since the outermost ones scatter about its ends; empty where it has no level to give.
     */
    public OptionalDouble backCalculated(Standard standard) {
        return curve.levelOf(standard.response());
    }

    /** The back-calculated level over the level, 1 being 100 %; empty at level 0. */
    public OptionalDouble recovery(Standard standard) {
        OptionalDouble found = backCalculated(standard);
        return standard.level() > 0 && found.isPresent()
                ? OptionalDouble.of(found.getAsDouble() / standard.level())
                : OptionalDouble.empty();
    }

    /**
     * How far the curve at a level moves when the responses of all standards move together by 1, as a common blank
     * makes them: 1 where the formula has a free constant, so that the blank cancels between samples and standards;
     * in proportion to the level for a line through zero.
     */
    public double commonShift(double level) {
        if (curve.model() != Model.LINE_THROUGH_ZERO) {
            return 1;
        }
        double first = 0;
        double second = 0;
        for (Standard each : standards) {
            first += each.weight() * each.level();
            second += each.weight() * each.level() * each.level();
        }
        return level * first / second;
    }

    /**
     * The weight that a response at a level has.
     *
     * @param level a level within the range
     */
    public double weightAt(double level) {
        return weighting.weight(level, curve.at(level));
    }

    /**
     * Standard deviation of a standard at the low end of the curve: at level 0 where the weights have an answer there,
     * else at the lowest level. The residual standard deviation itself is that of weight 1, and where weights grow
     * towards low levels that is one far up.
     *
     * @throws IllegalArgumentException if there are no degrees of freedom
     */
    public double sdAtLowEnd() {
        double weight = weighting.weightOfBlank();
        return fit.residualSd() / Math.sqrt(weight > 0 ? weight : weightAt(lowest));
    }
}
