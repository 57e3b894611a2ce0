package tallywell.report;

import java.util.List;
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
 * @param departures where it departs from its plan, in words; none without a plan
 */
public record Report(
        String run,
        Analysis analysis,
        Assessment assessment,
        Provenance provenance,
        Optional<SimulatedPlate> simulated,
        List<String> departures) {
    /** Refuses an assessment of something else. */
    public Report {
        departures = List.copyOf(departures);
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

    /** A report on a run without a plan. */
    public Report(
            String run,
            Analysis analysis,
            Assessment assessment,
            Provenance provenance,
            Optional<SimulatedPlate> simulated) {
        this(run, analysis, assessment, provenance, simulated, List.of());
    }

    /** The same with what it departs from its plan in. */
    public Report departing(List<String> from) {
        return new Report(run, analysis, assessment, provenance, simulated, from);
    }
}
