package tallywell.report;

import java.util.Optional;
import tallywell.curve.Model;
import tallywell.method.CalibrationRule;
import tallywell.workup.StepAnalysis;

/** The formula from net ΔA to the concentration of the solution pipetted, at the sample volume of the method. */
final class ConcentrationFormula {
    private ConcentrationFormula() {}

    /**
     * The formula; empty where no cell formula can invert the curve.
     *
     * @param net the cell of net ΔA
     */
    static Optional<String> of(Draft draft, StepAnalysis step, CalibrationPlaces.Scope scope, String net) {
        CalibrationPlaces.Section section = draft.calibration().of(step.number());
        if (step.calibration().isEmpty()) {
            return Optional.of("IF(" + net + "=\"\",\"\"," + net + "*"
                    + section.cell(CalibrationPlaces.Fact.FACTOR, CalibrationPlaces.Scope.USED) + ")");
        }
        if (!isLine(step)) {
            return Optional.empty();
        }
        String slope = section.cell(CalibrationPlaces.Fact.SLOPE, scope);
        String intercept = section.cell(CalibrationPlaces.Fact.INTERCEPT, scope);
        String least = section.cell(CalibrationPlaces.Fact.NET_LOWEST, scope);
        String most = section.cell(CalibrationPlaces.Fact.NET_HIGHEST, scope);
        // The line of a single standard starts at the blank: what lies a little below is scatter about nothing.
        boolean open = step.step().calibration() instanceof CalibrationRule.BySingleStandard;
        String outside = open ? net + ">" + most : "OR(" + net + "<" + least + "," + net + ">" + most + ")";
        return Optional.of("IF(OR(" + net + "=\"\"," + slope + "=\"\"),\"\",IF(" + outside + ",\"\",(" + net + "-"
                + intercept + ")/" + slope + "))");
    }

    /** Whether the step is calibrated by a straight line, of standards or of one standard. */
    static boolean isLine(StepAnalysis step) {
        return step.calibration()
                .map(each -> each.curve().model())
                .filter(model -> model == Model.LINE || model == Model.LINE_THROUGH_ZERO)
                .isPresent();
    }
}
