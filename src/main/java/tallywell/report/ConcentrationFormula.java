package tallywell.report;

import tallywell.curve.Model;
import tallywell.method.CalibrationRule;
import tallywell.report.CalibrationPlaces.Fact;
import tallywell.report.CalibrationPlaces.Scope;
import tallywell.report.CalibrationPlaces.Section;
import tallywell.workup.StepAnalysis;

/** The formula from net ΔA to the concentration of the solution pipetted, at the sample volume of the method. */
final class ConcentrationFormula {
    private final Section section;
    private final StepAnalysis step;
    private final Scope scope;

    private ConcentrationFormula(Draft draft, StepAnalysis step, Scope scope) {
        this.section = draft.calibration().of(step.number());
        this.step = step;
        this.scope = scope;
    }

    /**
     * The formula, empty outside the standards.
     *
     * @param net the cell of net ΔA
     */
    static String of(Draft draft, StepAnalysis step, Scope scope, String net) {
        return new ConcentrationFormula(draft, step, scope).within(net);
    }

    /** The formula that follows the curve beyond the standards too. */
    static String beyond(Draft draft, StepAnalysis step, String net) {
        ConcentrationFormula formula = new ConcentrationFormula(draft, step, Scope.USED);
        return "IF(OR(" + net + "=\"\"," + formula.cell(Fact.NET_LOWEST) + "=\"\"),\"\"," + formula.level(net, "\"\"")
                + ")";
    }

    private String within(String net) {
        if (step.calibration().isEmpty()) {
            return "IF(" + net + "=\"\",\"\"," + net + "*" + section.cell(Fact.FACTOR, Scope.USED) + ")";
        }
        String least = cell(Fact.NET_LOWEST);
        String most = cell(Fact.NET_HIGHEST);
        // The line of a single standard starts at the blank: what lies a little below is scatter about nothing.
        boolean open = step.step().calibration() instanceof CalibrationRule.BySingleStandard;
        String outside = open ? net + ">" + most : "OR(" + net + "<" + least + "," + net + ">" + most + ")";
        return "IF(OR(" + net + "=\"\"," + least + "=\"\"),\"\",IF(" + outside + ",\"\","
                + level(net, cell(Fact.LOWEST)) + "))";
    }

    private String cell(Fact fact) {
        return section.cell(fact, scope);
    }

    /** The level at a net ΔA; the text for what lies below the lower end of a logistic curve by rounding only. */
    private String level(String net, String below) {
        Model model = step.calibration().orElseThrow().curve().model();
        return switch (model) {
            case LINE, LINE_THROUGH_ZERO -> "(" + net + "-" + cell(Fact.INTERCEPT) + ")/" + cell(Fact.SLOPE);
            case QUADRATIC -> parabola(net);
            case LOGISTIC_4 -> logistic(net, "", below);
            case LOGISTIC_5 -> logistic(net, "^(1/" + cell(Fact.ASYMMETRY) + ")", below);
        };
    }

    /** Of the two forms of the solution the one that adds numbers of equal sign keeps its digits. */
    private String parabola(String net) {
        String rise = "(" + net + "-" + cell(Fact.INTERCEPT) + ")";
        String slope = cell(Fact.SLOPE);
        String square = cell(Fact.SQUARE);
        String root = "SQRT(" + slope + "^2+4*" + square + "*" + rise + ")";
        return "IF(" + slope + "^2+4*" + square + "*" + rise + "<0,\"\",IF(" + slope + ">0,2*" + rise + "/(" + slope
                + "+" + root + "),(" + root + "-" + slope + ")/(2*" + square + ")))";
    }

    private String logistic(String net, String power, String below) {
        String lower = cell(Fact.LOWER);
        String upper = cell(Fact.UPPER);
        return "IF(" + net + "<" + lower + "," + below + ",IF(" + net + ">=" + upper + ",\"\","
                + cell(Fact.MIDDLE) + "*(((" + upper + "-" + lower + ")/(" + upper + "-" + net + "))" + power
                + "-1)^(1/"
                + cell(Fact.STEEPNESS) + ")))";
    }
}
