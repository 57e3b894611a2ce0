package tallywell.report;

import java.util.Optional;
import tallywell.assess.Assessment;
import tallywell.budget.SimulatedPlate;
import tallywell.workup.Analysis;

/**
 * One run, worked up and judged, ready to be written.
 *
 * @param run path of the run file as typed
 * @param analysis what it came to
 * @param assessment what to think of it
 * @param provenance where it comes from
 * @param simulated its results by draws, where asked for
 */
public record Report(
        String run,
        Analysis analysis,
        Assessment assessment,
        Provenance provenance,
        Optional<SimulatedPlate> simulated) {
    /** Refuses an assessment of something else. */
    public Report {
        if (assessment.judgements().size() != analysis.results().size()) {
            throw new IllegalArgumentException(
                    "assessment must judge " + analysis.results().size() + " results but was of "
                            + assessment.judgements().size());
        }
    }

    /** A report without draws. */
    public Report(String run, Analysis analysis, Assessment assessment, Provenance provenance) {
        this(run, analysis, assessment, provenance, Optional.empty());
    }
}
