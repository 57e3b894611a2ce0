package tallywell.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.plate.Well;
import tallywell.report.CalibrationPlaces.Fact;
import tallywell.report.CalibrationPlaces.Scope;
import tallywell.workup.Half;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** What counts of a half of a difference, as a formula: the cell of its value, or below the standards what the curve says. */
final class HalfFormula {
    private final Draft draft;
    private final ResultPlaces places;

    HalfFormula(Draft draft, ResultPlaces places) {
        this.draft = draft;
        this.places = places;
    }

    /** The difference times a factor; empty where a half has a value and its cell has not. */
    String difference(String factor, Half total, Half free) {
        List<String> needed = new ArrayList<>();
        cell(total).ifPresent(needed::add);
        cell(free).ifPresent(needed::add);
        String formula = factor + "*(" + counted(total) + "-" + counted(free) + ")";
        if (needed.isEmpty()) {
            return formula;
        }
        List<String> tests = needed.stream().map(each -> each + "=\"\"").toList();
        String test = tests.size() == 1 ? tests.get(0) : "OR(" + String.join(",", tests) + ")";
        return "IF(" + test + ",\"\"," + formula + ")";
    }

    private Optional<String> cell(Half half) {
        return half.below() == Half.Below.NOT
                ? Optional.of(ResultPlaces.own(places.row(half.reported()), ResultColumns.VALUE))
                : Optional.empty();
    }

    private String counted(Half half) {
        return cell(half).orElseGet(() -> followed(half));
    }

    private String followed(Half half) {
        StepAnalysis step = draft.analysis().stepOf(half.reported());
        List<Well> below = half.wells().stream().map(WellResult::well).toList();
        List<String> levels = new ArrayList<>();
        for (WellResult well : step.where(each -> each.used()
                && half.reported().wells().contains(each.well())
                && each.netDeltaA().isPresent())) {
            boolean middle = half.below() == Half.Below.INTERVAL && below.contains(well.well());
            levels.add(
                    middle
                            ? draft.calibration().of(step.number()).cell(Fact.LOWEST, Scope.USED) + "/2"
                            : ConcentrationFormula.beyond(
                                    draft,
                                    step,
                                    draft.wells().cell(step.number(), well.well(), WellColumns.NET_DELTA_A)));
        }
        return ResultPlaces.own(places.row(half.reported()), ResultPlaces.Working.SCALE) + "*("
                + String.join("+", levels) + ")/" + levels.size();
    }
}
