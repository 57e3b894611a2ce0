package tallywell.report;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.curve.Standard;
import tallywell.method.CalibrationRule;
import tallywell.method.Weights;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;
import tallywell.report.CalibrationPlaces.Fact;
import tallywell.report.CalibrationPlaces.Scope;
import tallywell.report.CalibrationPlaces.Section;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Writes the row of one standard well on the sheet Calibration. */
final class PointRow {
    private static final Look NUMBER = Look.PLAIN.format(Looks.ABSORBANCE);
    private static final Look WORKING = Looks.NOTE;
    private static final double PERCENT = 100;

    private final Draft draft;
    private final Sheet sheet;
    private final StepAnalysis step;
    private final Section section;
    private final Calibration calibration;

    PointRow(Draft draft, Sheet sheet, StepAnalysis step, Section section, Calibration calibration) {
        this.draft = draft;
        this.sheet = sheet;
        this.step = step;
        this.section = section;
        this.calibration = calibration;
    }

    void write(WellResult well) {
        int row = sheet.text().row();
        double level = level(well);
        Optional<Standard> standard = standard(step, well.well());
        sheet.text(0, well.well().toString(), Looks.TEXT);
        sheet.number(1, level, Looks.INPUT);
        net(WellColumns.NET_DELTA_A.column(), Scope.USED, well.netDeltaA(), well, NUMBER);
        used(row, well);
        weight(row, Scope.USED, standard, Looks.TEXT.format("0.###"));
        fitted(row, well, level);
        counting(row, Scope.USED, standard, level);
        draft.whole().ifPresent(whole -> {
            StepAnalysis all = whole.steps().get(step.number() - 1);
            Optional<Standard> same = standard(all, well.well());
            OptionalDouble net =
                    all.where(each -> each.well().equals(well.well())).get(0).netDeltaA();
            net(WellPlaces.Working.NET_ALL.column(), Scope.ALL, net, well, WORKING.format(Looks.ABSORBANCE));
            weight(row, Scope.ALL, same, WORKING);
            counting(row, Scope.ALL, same, level);
        });
    }

    /** The standard well as a point of the calibration, if it is one. */
    private static Optional<Standard> standard(StepAnalysis step, Well well) {
        int index = step.calibrationWells().indexOf(well);
        return index < 0 || step.calibration().isEmpty()
                ? Optional.empty()
                : Optional.of(step.calibration().get().standards().get(index));
    }

    private double level(WellResult well) {
        Quantity level = ((Content.Standard) well.content())
                .level()
                .of(step.step().analyte().name())
                .orElseThrow();
        return level.unit().kind() == Kind.AMOUNT_CONCENTRATION
                ? level.base() * step.step().analyte().molarMass().orElseThrow() / 1000
                : level.base();
    }

    private void net(int wellsColumn, Scope scope, OptionalDouble value, WellResult well, Look look) {
        String cell = WellPlaces.SHEET + "!" + At.cell(draft.wells().row(step.number(), well.well()), wellsColumn);
        sheet.formula(scope.net, "IF(" + cell + "=\"\",\"\"," + cell + ")", value, look);
    }

    private void used(int row, WellResult well) {
        String used = draft.wells().cell(step.number(), well.well(), WellColumns.USED);
        boolean counts = well.used() && well.netDeltaA().isPresent();
        sheet.formula(
                3,
                "IF(AND(" + used + "=\"yes\",ISNUMBER(" + At.cell(row, Scope.USED.net) + ")),\"yes\",\"no\")",
                counts ? "yes" : "no",
                Looks.TEXT.align(Look.Align.CENTRE));
    }

    private String counts(int row, Scope scope) {
        return scope == Scope.USED ? At.cell(row, 3) + "=\"yes\"" : "ISNUMBER(" + At.cell(row, Scope.ALL.net) + ")";
    }

    private void weight(int row, Scope scope, Optional<Standard> standard, Look look) {
        Weights weights =
                step.step().calibration() instanceof CalibrationRule.ByStandards by ? by.weights() : Weights.NONE;
        String level = At.cell(row, 1);
        String of = switch (weights) {
            case NONE -> "1";
            case ONE_OVER_X -> "1/" + level;
            case ONE_OVER_X2 -> "1/" + level + "^2";
            case ONE_OVER_Y -> "1/" + mean(scope, level);
            case VARIANCE_FUNCTION ->
                "1/(" + section.own(Fact.VARIANCE_OF_BLANK, scope) + "+" + section.own(Fact.VARIANCE_GROWTH, scope)
                        + "*" + mean(scope, level) + "^2)";
        };
        sheet.formula(
                scope.weight,
                "IF(" + counts(row, scope) + "," + of + ",0)",
                standard.map(Standard::weight).orElse(0.0),
                look);
    }

    /** The mean net ΔA of the wells of a level. */
    private String mean(Scope scope, String level) {
        return "AVERAGEIFS(" + section.points(scope.net) + "," + section.points(1) + "," + level
                + (scope == Scope.USED ? "," + section.points(3) + ",\"yes\"" : "") + ")";
    }

    private void fitted(int row, WellResult well, double level) {
        String net = At.cell(row, Scope.USED.net);
        String fitted = At.cell(row, 5);
        String back = At.cell(row, 7);
        sheet.formula(
                5,
                new FactFormulas(draft, step, Scope.USED).at(At.cell(row, 1)),
                calibration.curve().at(level),
                NUMBER);
        sheet.formula(
                6,
                "IF(OR(" + net + "=\"\"," + fitted + "=\"\"),\"\"," + net + "-" + fitted + ")",
                residual(well, level),
                NUMBER);
        sheet.formula(7, ConcentrationFormula.beyond(draft, step, net), back(well), NUMBER);
        sheet.formula(
                8,
                "IF(" + At.cell(row, 1) + "=0,\"\",IF(" + back + "=\"\",\"\",100*" + back + "/" + At.cell(row, 1)
                        + "))",
                found(well, level),
                Look.PLAIN.format("0.0"));
    }

    private OptionalDouble residual(WellResult well, double level) {
        return well.netDeltaA().isPresent()
                ? OptionalDouble.of(
                        well.netDeltaA().getAsDouble() - calibration.curve().at(level))
                : OptionalDouble.empty();
    }

    private OptionalDouble back(WellResult well) {
        return well.netDeltaA().isPresent()
                ? calibration.curve().levelOf(well.netDeltaA().getAsDouble())
                : OptionalDouble.empty();
    }

    private OptionalDouble found(WellResult well, double level) {
        OptionalDouble back = back(well);
        return back.isPresent() && level != 0
                ? OptionalDouble.of(PERCENT * back.getAsDouble() / level)
                : OptionalDouble.empty();
    }

    /** What the sums run over: 0 and empty where the point does not count. */
    private void counting(int row, Scope scope, Optional<Standard> standard, double level) {
        sheet.formula(
                scope.response,
                "IF(" + counts(row, scope) + "," + At.cell(row, scope.net) + ",0)",
                standard.map(Standard::response).orElse(0.0),
                WORKING.format(Looks.ABSORBANCE));
        sheet.formula(
                scope.level,
                "IF(" + counts(row, scope) + "," + At.cell(row, 1) + ",\"\")",
                standard.isPresent() ? OptionalDouble.of(level) : OptionalDouble.empty(),
                WORKING);
    }
}
