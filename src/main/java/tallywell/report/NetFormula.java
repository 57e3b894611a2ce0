package tallywell.report;

import java.util.Optional;
import java.util.OptionalInt;
import tallywell.plate.Content;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** The formula for net ΔA on the sheet Wells: ΔA less what the blanks on the sheet Calibration show. */
final class NetFormula {
    private NetFormula() {}

    /** The formula; empty for wells that have no net ΔA. */
    static Optional<String> of(Draft draft, StepAnalysis step, WellResult well, CalibrationPlaces.Scope scope) {
        Content content = well.content();
        if (content instanceof Content.SampleBlank || content instanceof Content.Blank own && !own.triggered()) {
            return Optional.empty();
        }
        CalibrationPlaces.Section section = draft.calibration().of(step.number());
        String group = well.trace().group();
        String delta = WellPlaces.own(draft.wells().row(step.number(), well.well()), WellColumns.DELTA_A);
        String blank = section.blanks(group).orElseThrow().cell(scope);
        OptionalInt slot = WellColumns.slot(content);
        Optional<CalibrationPlaces.Means> ownBlank =
                slot.isPresent() ? section.sampleBlanks(slot.getAsInt()) : Optional.empty();
        if (ownBlank.isEmpty()) {
            return Optional.of("IF(OR(" + delta + "=\"\"," + blank + "=\"\"),\"\"," + delta + "-" + blank + ")");
        }
        String mine = ownBlank.get().cell(scope);
        String untriggered = section.withoutTrigger(group)
                .map(means -> "-IF(" + means.cell(scope) + "=\"\",0," + means.cell(scope) + ")")
                .orElse("");
        return Optional.of("IF(OR(" + delta + "=\"\"," + blank + "=\"\"," + mine + "=\"\"),\"\",(" + delta + "-" + mine
                + ")-(" + blank + untriggered + "))");
    }
}
