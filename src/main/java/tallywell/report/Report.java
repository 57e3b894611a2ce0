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

    /** The title of the run; of a run without one the name of its file, or of its folder where all files have one name. */
    public String title() {
        return titleOf(analysis.assay().title(), run);
    }

    /**
     * What to call a run.
     *
     * @param title its own; may be empty
     * @param run path of its file
     */
    public static String titleOf(String title, String run) {
        if (!title.isEmpty()) {
            return title;
        }
        String[] parts = run.split("[/\\\\]");
        String file = parts[parts.length - 1].replaceFirst("[.][^.]*$", "");
        boolean common = file.equals("run") && parts.length > 1 && !parts[parts.length - 2].matches("[.]*");
        return common ? parts[parts.length - 2] : file;
    }
}
