package tallywell.report;

import java.io.IOException;
import java.util.Optional;
import tallywell.notice.InputException;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;
import tallywell.workup.Workup;

/**
 * A report about to be written as a workbook, with the places of everything that formulas refer to.
 *
 * @param report what is written
 * @param readings places on the sheet Readings
 * @param wells places on the sheet Wells
 * @param results places on the sheet Results
 * @param calibration places on the sheet Calibration
 * @param whole the same run with excluded wells put back; empty where it cannot be worked up so
 */
record Draft(
        Report report,
        ReadingGrid readings,
        WellPlaces wells,
        ResultPlaces results,
        CalibrationPlaces calibration,
        Optional<Analysis> whole) {

    static Draft of(Report report) throws IOException {
        Analysis analysis = report.analysis();
        return new Draft(
                report,
                new ReadingGrid(analysis),
                new WellPlaces(analysis),
                new ResultPlaces(analysis),
                new CalibrationPlaces(analysis),
                whole(analysis));
    }

    private static Optional<Analysis> whole(Analysis analysis) {
        if (analysis.assay().exclusions().isEmpty()) {
            return Optional.of(analysis);
        }
        try {
            return Optional.of(new Workup().analyse(analysis.assay().withoutExclusions()));
        } catch (InputException e) {
            // Then there is nothing to show; the analysis left the column empty for the same reason.
            return Optional.empty();
        }
    }

    Analysis analysis() {
        return report.analysis();
    }

    /** The same well with excluded wells put back. */
    Optional<WellResult> whole(StepAnalysis step, Well well) {
        return whole.flatMap(all -> all.steps().get(step.number() - 1).wells().stream()
                .filter(each -> each.well().equals(well))
                .findFirst());
    }
}
