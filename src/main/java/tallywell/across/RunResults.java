package tallywell.across;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.assess.Assessment;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.method.Sample;
import tallywell.workup.Analysis;
import tallywell.workup.Result;

/**
 * What one run found of its samples, controls and analytes by difference; spikes are of their plate only.
 *
 * @param run path of the run file as typed
 * @param found in the order of the run
 */
public record RunResults(String run, List<Found> found) {
    /** Keeps a copy that cannot change. */
    public RunResults {
        found = List.copyOf(found);
    }

    /** The results of a run. */
    public static RunResults of(String run, Assessment assessment, SharedSources shared) {
        Analysis analysis = assessment.budget().analysis();
        List<Found> found = new ArrayList<>();
        for (Judgement each : assessment.judgements()) {
            if (!each.result().role().equals("spike")) {
                Optional<UncertaintyParts> parts =
                        each.budget().map(budget -> UncertaintyParts.of(analysis, each, shared));
                found.add(found(run, analysis, each.result(), each, parts));
            }
        }
        for (JudgedDifference each : assessment.differences()) {
            Optional<UncertaintyParts> parts = each.budget()
                    .map(budget -> UncertaintyParts.of(analysis, each, budget.total(), budget.free(), shared));
            Result row = each.row();
            found.add(new Found(run, row, id(analysis, row), row.value(), row.unit(), each.verdict(), parts));
        }
        return new RunResults(run, found);
    }

    private static Found found(
            String run, Analysis analysis, Result result, Judgement judgement, Optional<UncertaintyParts> parts) {
        return new Found(run, result, id(analysis, result), result.value(), result.unit(), judgement.verdict(), parts);
    }

    private static String id(Analysis analysis, Result result) {
        return result.slot().isPresent()
                ? analysis.assay()
                        .samples()
                        .in(result.slot().getAsInt())
                        .map(Sample::id)
                        .orElse("")
                : "";
    }
}
