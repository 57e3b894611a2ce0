package tallywell.report;

import tallywell.assess.Judgement;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.workup.Result;
import tallywell.workup.ResultScale;
import tallywell.workup.StepAnalysis;

/** What 1 g/L of the solution pipetted stands for in the original sample, as a formula. */
final class ScaleFormula {
    private final Draft draft;
    private final StepAnalysis step;
    private final Result result;
    private final ResultScale scale;

    ScaleFormula(Draft draft, Judgement judgement, ResultScale scale) {
        this.draft = draft;
        this.result = judgement.result();
        this.step = draft.analysis().stepOf(result);
        this.scale = scale;
    }

    /** The formula. */
    String formula() {
        int row = draft.results().row(result);
        CalibrationPlaces.Section section = draft.calibration().of(step.number());
        StringBuilder formula = new StringBuilder(ResultPlaces.own(row, ResultColumns.DILUTION));
        if (step.step().report().as().isPresent()) {
            formula.append('*').append(Numbers.plain(scale.form()));
        }
        if (scale.ownVolume().isPresent()) {
            formula.append('*')
                    .append(section.cell(CalibrationPlaces.Fact.VOLUME_SAMPLE, CalibrationPlaces.Scope.USED))
                    .append('/')
                    .append(ResultPlaces.own(row, ResultPlaces.Working.VOLUME));
        }
        if (scale.solid().isPresent()) {
            formula.append('*')
                    .append(ResultPlaces.own(row, ResultPlaces.Working.EXTRACT))
                    .append("/1000/")
                    .append(ResultPlaces.own(row, ResultPlaces.Working.MASS))
                    .append("*100");
        } else if (result.unit().kind() == Kind.AMOUNT_CONCENTRATION) {
            formula.append("*1000/")
                    .append(
                            step.step().report().as().isPresent()
                                    ? Numbers.plain(scale.molarMass())
                                    : section.cell(CalibrationPlaces.Fact.MOLAR_MASS, CalibrationPlaces.Scope.USED));
        } else if (result.unit().kind() == Kind.CONTENT) {
            formula.append("/(10*")
                    .append(ResultPlaces.own(row, ResultPlaces.Working.DENSITY))
                    .append(')');
        }
        double factor = result.unit().factor();
        return factor == 1
                ? formula.toString()
                : formula.append('/').append(Numbers.plain(factor)).toString();
    }
}
