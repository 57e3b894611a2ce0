package tallywell.curve;

import java.util.OptionalDouble;
import tallywell.numeric.StudentT;

/**
 * From where on an analyte can be called detected and quantified, as levels in the solution pipetted. Which rule they
 * come from is part of the value, since the rules differ by a factor of two and more.
 *
 * @param rule where they come from
 * @param decision the level beyond which a sample is called different from a blank; empty where the rule has none
 * @param detection the level that is hardly ever missed
 * @param quantification the level from which on a value is reported
 */
public record DetectionLimits(DetectionRule rule, OptionalDouble decision, double detection, double quantification) {
    private static final double ONE_SIDED = 0.95;

    /**
     * From the uncertainty that a value has where nothing is in the sample: of a level, of a value in the original
     * sample, or of a difference of two.
     *
     * <pre>{@code
     * decision        t · u0      t one-sided at 95 %
     * detection       twice the decision limit
     * quantification  10 · u0
     * }</pre>
     *
     * <p>The detection limit holds where u hardly grows between 0 and it.
     *
     * <p>Source: Currie (1995), IUPAC recommendations, Pure Appl. Chem. 67, 1699 (from memory).
     *
     * @param rule where u0 comes from
     * @param u u0, standard uncertainty of a value of 0, positive, in the unit that the limits are to have
     * @param degreesOfFreedom those of u0, positive, may be infinite
     */
    public static DetectionLimits fromUncertainty(DetectionRule rule, double u, double degreesOfFreedom) {
        check("u", u);
        double decision = StudentT.quantile(ONE_SIDED, degreesOfFreedom) * u;
        return new DetectionLimits(rule, OptionalDouble.of(decision), 2 * decision, 10 * u);
    }

    /**
     * From the scatter of the blanks on the net scale, by {@link #fromUncertainty} with
     *
     * <pre>{@code
     * u0 = s0 · √(1/n + 1/N) / slope
     * }</pre>
     *
     * @param sd s0, standard deviation of ΔA of one blank well, positive
     * @param degreesOfFreedom those of s0, positive
     * @param replicates n, wells of a sample, at least 1
     * @param blanks N, wells of the blank, at least 1
     * @param slope net ΔA per unit of level at the low end, positive
     */
    public static DetectionLimits fromBlanks(
            double sd, double degreesOfFreedom, int replicates, int blanks, double slope) {
        check("sd", sd);
        check("slope", slope);
        check("replicates", replicates);
        check("blanks", blanks);
        return fromUncertainty(
                DetectionRule.BLANKS, sd * Math.sqrt(1.0 / replicates + 1.0 / blanks) / slope, degreesOfFreedom);
    }

    /**
     * From a straight line: 3.3 σ / S and 10 σ / S. The residual standard deviation is the one at the low end of the
     * line, since under weights that of weight 1 lies anywhere.
     *
     * <p>Source: ICH Q2(R1), Validation of analytical procedures, sections 6.3 and 7.3.
     *
     * @param rule which σ: {@link DetectionRule#LINE_RESIDUAL} or {@link DetectionRule#LINE_INTERCEPT}
     * @param calibration a straight line with intercept, with at least one degree of freedom
     */
    public static DetectionLimits fromLine(DetectionRule rule, Calibration calibration) {
        checkLine(calibration);
        double sigma = switch (rule) {
            case LINE_RESIDUAL -> calibration.sdAtLowEnd();
            case LINE_INTERCEPT -> calibration.fit().standardError(0);
            default -> throw new IllegalArgumentException("rule must be one of the line but was " + rule);
        };
        double slope = calibration.curve().slopeAt(0);
        return new DetectionLimits(rule, OptionalDouble.empty(), 3.3 * sigma / slope, 10 * sigma / slope);
    }

    /**
     * From the prediction of a straight line at level 0, by {@link #fromUncertainty} with
     *
     * <pre>{@code
     * u0 = √(σ0² / n + unit · (cofactor of the intercept)) / S
     * }</pre>
     *
     * <p>Without weights this is s / b · √(1/n + 1/N + x̄² / Sxx). σ0 is the residual standard deviation at the low end.
     *
     * <p>Source: ISO 11843-2:2000 and DIN 32645:2008, the limit from a calibration line, with 5 % instead of the 1 % of
     * the latter's default (from memory).
     *
     * @param calibration a straight line with intercept, with at least one degree of freedom
     * @param replicates n, wells of a sample, at least 1
     */
    public static DetectionLimits fromPrediction(Calibration calibration, int replicates) {
        checkLine(calibration);
        check("replicates", replicates);
        double own = calibration.sdAtLowEnd();
        double u = Math.hypot(own / Math.sqrt(replicates), calibration.fit().standardError(0))
                / calibration.curve().slopeAt(0);
        return fromUncertainty(
                DetectionRule.LINE_PREDICTION, u, calibration.fit().degreesOfFreedom());
    }

    private static void checkLine(Calibration calibration) {
        if (!(calibration.curve().model() == Model.LINE)) {
            throw new IllegalArgumentException(
                    "calibration must be a line but was " + calibration.curve().model());
        }
    }

    /**
     * Mean of the blank plus 3 and 10 standard deviations; on the net scale the mean is 0.
     *
     * <p>Source: OIV-MA-AS1-10, method 1.
     *
     * @param sd standard deviation of the blanks' ΔA, positive
     * @param slope net ΔA per unit of level at the low end, positive
     */
    public static DetectionLimits fromBlankMean(double sd, double slope) {
        check("sd", sd);
        check("slope", slope);
        return new DetectionLimits(DetectionRule.BLANK_MEAN, OptionalDouble.empty(), 3 * sd / slope, 10 * sd / slope);
    }

    private static void check(String name, double value) {
        if (!(value > 0 && value <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException(name + " must be positive and finite but was " + value);
        }
    }
}
