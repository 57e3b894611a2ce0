package tallywell.report;

import java.util.Optional;
import tallywell.curve.Calibration;
import tallywell.curve.Model;
import tallywell.method.CalibrationRule;
import tallywell.quantity.Numbers;
import tallywell.report.CalibrationPlaces.Fact;
import tallywell.report.CalibrationPlaces.Scope;
import tallywell.report.CalibrationPlaces.Section;
import tallywell.workup.StepAnalysis;

/**
 * The formulas of what a step is worked up with, on the sheet Calibration.
 *
 * <p>A parabola is fitted by polynomials that are orthogonal over the points, so that each coefficient is one quotient of
 * sums and few digits are lost:
 *
 * <pre>{@code
 * y = mean y + c1 p1 + c2 p2     p1 = x - mean x     p2 = p1² - α p1 - β
 * α = Σw p1³ / Σw p1²     β = Σw p1² / Σw     c1 = Σw p1 y / Σw p1²     c2 = Σw p2 y / Σw p2²
 * }</pre>
 */
final class FactFormulas {
    private final StepAnalysis step;
    private final Section section;
    private final Scope scope;
    private final String weights;
    private final String levels;
    private final String nets;

    FactFormulas(Draft draft, StepAnalysis step, Scope scope) {
        this.step = step;
        this.section = draft.calibration().of(step.number());
        this.scope = scope;
        this.weights = section.points(scope.weight);
        this.levels = section.points(1);
        this.nets = section.points(scope.response);
    }

    /** The formula of a fact; empty for what goes in, and for what no formula gives. */
    Optional<String> of(Fact fact) {
        String formula = formula(fact);
        return formula.isEmpty() ? Optional.empty() : Optional.of(formula);
    }

    private String formula(Fact fact) {
        return switch (fact) {
            case TRIGGER_FACTOR -> constant(Fact.VOLUME_BEFORE) + "/" + constant(Fact.VOLUME_AFTER);
            case PATH ->
                section.has(Fact.WELL_AREA) ? constant(Fact.VOLUME_AFTER) + "/" + constant(Fact.WELL_AREA) + "/10" : "";
            case FACTOR ->
                constant(Fact.VOLUME_AFTER) + "*" + constant(Fact.MOLAR_MASS) + "/(" + constant(Fact.ABSORPTIVITY)
                        + "*" + constant(Fact.PATH) + "*" + constant(Fact.VOLUME_SAMPLE) + "*"
                        + constant(Fact.SIGNALS) + ")";
            case POINTS -> "COUNTIF(" + weights + ",\">0\")";
            case MEAN_LEVEL -> ifPoints("SUMPRODUCT(" + weights + "," + levels + ")/SUM(" + weights + ")");
            case MEAN_NET -> ifPoints("SUMPRODUCT(" + weights + "," + nets + ")/SUM(" + weights + ")");
            case LOWEST -> lowest();
            case HIGHEST -> "MAX(" + section.points(scope.level) + ")";
            case SLOPE, INTERCEPT, SQUARE, ALPHA, BETA, STRAIGHT, BENT -> fitted(fact);
            case NET_LOWEST -> end(Fact.LOWEST, "-");
            case NET_HIGHEST -> end(Fact.HIGHEST, "+");
            case RESIDUAL_SD -> residualSd();
            default -> "";
        };
    }

    private Model model() {
        return step.calibration().orElseThrow().curve().model();
    }

    private String constant(Fact fact) {
        return section.own(fact, Scope.USED);
    }

    private String own(Fact fact) {
        return section.own(fact, scope);
    }

    private String ifPoints(String formula) {
        return "IF(" + own(Fact.POINTS) + "=0,\"\"," + formula + ")";
    }

    private static String unlessEmpty(String cell, String formula) {
        return "IF(" + cell + "=\"\",\"\"," + formula + ")";
    }

    private String fitted(Fact fact) {
        return switch (model()) {
            case LINE -> fact == Fact.SLOPE ? slope() : intercept();
            case LINE_THROUGH_ZERO -> fact == Fact.SLOPE ? slopeThroughZero() : "0";
            default -> parabola(fact);
        };
    }

    private String fromMean() {
        return "(" + levels + "-" + own(Fact.MEAN_LEVEL) + ")";
    }

    /** Nothing where fewer levels count than the formula has coefficients. */
    private String ifDetermined(String formula) {
        String level = section.points(scope.level);
        return "IF(COUNT(" + level + ")<2,\"\",IF(MAX(" + level + ")=MIN(" + level + "),\"\"," + formula + "))";
    }

    private String slope() {
        String y = "(" + nets + "-" + own(Fact.MEAN_NET) + ")";
        return ifDetermined("SUMPRODUCT(" + weights + "*" + fromMean() + "*" + y + ")/SUMPRODUCT(" + weights + "*"
                + fromMean() + "^2)");
    }

    private String slopeThroughZero() {
        String squares = "SUMPRODUCT(" + weights + "*" + levels + "^2)";
        return "IF(" + squares + "=0,\"\",SUMPRODUCT(" + weights + "*" + levels + "*" + nets + ")/" + squares + ")";
    }

    private String intercept() {
        String slope = own(Fact.SLOPE);
        return unlessEmpty(slope, own(Fact.MEAN_NET) + "-" + slope + "*" + own(Fact.MEAN_LEVEL));
    }

    private String parabola(Fact fact) {
        String x = fromMean();
        String squares = "SUMPRODUCT(" + weights + "*" + x + "^2)";
        String alpha = own(Fact.ALPHA);
        String mean = own(Fact.MEAN_LEVEL);
        String bent = own(Fact.BENT);
        return switch (fact) {
            case ALPHA -> ifDetermined("SUMPRODUCT(" + weights + "*" + x + "^3)/" + squares);
            case BETA -> ifPoints(squares + "/SUM(" + weights + ")");
            case STRAIGHT -> ifDetermined("SUMPRODUCT(" + weights + "*" + x + "*" + nets + ")/" + squares);
            case BENT -> bent(x);
            case SQUARE -> bent;
            case SLOPE -> unlessEmpty(bent, own(Fact.STRAIGHT) + "-" + bent + "*(" + alpha + "+2*" + mean + ")");
            default ->
                unlessEmpty(
                        bent,
                        own(Fact.MEAN_NET) + "-" + own(Fact.STRAIGHT) + "*" + mean + "+" + bent + "*(" + mean + "^2+"
                                + alpha + "*" + mean + "-" + own(Fact.BETA) + ")");
        };
    }

    private String bent(String x) {
        String p2 = "(" + x + "^2-" + own(Fact.ALPHA) + "*" + x + "-" + own(Fact.BETA) + ")";
        String squares = "SUMPRODUCT(" + weights + "*" + p2 + "^2)";
        // Two levels leave nothing but rounding of the bent part.
        String nothing = "1E-20*" + own(Fact.BETA) + "^2*SUM(" + weights + ")";
        return unlessEmpty(
                own(Fact.ALPHA),
                "IF(" + squares + "<=" + nothing + ",\"\",SUMPRODUCT(" + weights + "*" + p2 + "*" + nets + ")/"
                        + squares + ")");
    }

    /** The curve at a level, empty where there is none. */
    String at(String level) {
        return switch (model()) {
            case LINE, LINE_THROUGH_ZERO ->
                unlessEmpty(own(Fact.SLOPE), own(Fact.INTERCEPT) + "+" + own(Fact.SLOPE) + "*" + level);
            case QUADRATIC ->
                unlessEmpty(
                        own(Fact.SQUARE),
                        own(Fact.INTERCEPT) + "+" + own(Fact.SLOPE) + "*" + level + "+" + own(Fact.SQUARE) + "*" + level
                                + "^2");
            case LOGISTIC_4 -> logistic(level, "");
            case LOGISTIC_5 -> logistic(level, "^" + own(Fact.ASYMMETRY));
        };
    }

    private String logistic(String level, String power) {
        return own(Fact.UPPER) + "+(" + own(Fact.LOWER) + "-" + own(Fact.UPPER) + ")/(1+(" + level + "/"
                + own(Fact.MIDDLE) + ")^" + own(Fact.STEEPNESS) + ")" + power;
    }

    private String residualSd() {
        String fitted = switch (model()) {
            case LINE, LINE_THROUGH_ZERO -> own(Fact.INTERCEPT) + "-" + own(Fact.SLOPE) + "*" + levels;
            case QUADRATIC ->
                own(Fact.INTERCEPT) + "-" + own(Fact.SLOPE) + "*" + levels + "-" + own(Fact.SQUARE) + "*" + levels
                        + "^2";
            default -> "";
        };
        if (fitted.isEmpty()) {
            return "";
        }
        int parameters = model().parameters();
        return "IF(OR(" + own(Fact.SLOPE) + "=\"\"," + own(Fact.POINTS) + "<=" + parameters + "),\"\",SQRT(SUMPRODUCT("
                + weights + "*(" + nets + "-" + fitted + ")^2)/(" + own(Fact.POINTS) + "-" + parameters + ")))";
    }

    /** The range of a line through zero begins at zero where there is one level only. */
    private String lowest() {
        String level = section.points(scope.level);
        if (step.step().calibration() instanceof CalibrationRule.BySingleStandard) {
            return "0";
        }
        return model() == Model.LINE_THROUGH_ZERO
                ? "IF(MIN(" + level + ")<MAX(" + level + "),MIN(" + level + "),0)"
                : "MIN(" + level + ")";
    }

    /** Rounding may not put a well that equals the end standard outside. */
    private String end(Fact level, String sign) {
        String least = at(own(Fact.LOWEST));
        String most = at(own(Fact.HIGHEST));
        String here = level == Fact.LOWEST ? least : most;
        String room = sign + Numbers.plain(Calibration.END_TOLERANCE) + "*((" + most + ")-(" + least + "))";
        String formula = "(" + here + ")" + room;
        return switch (model()) {
            case LINE, LINE_THROUGH_ZERO -> unlessEmpty(own(Fact.SLOPE), formula);
            case QUADRATIC -> unlessEmpty(own(Fact.SQUARE), formula);
            default -> formula;
        };
    }
}
