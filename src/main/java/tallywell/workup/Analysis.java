package tallywell.workup;

import java.util.List;
import tallywell.notice.Notice;

/**
 * One plate worked up, with everything in between so that a report can show the working.
 *
 * @param assay what it was worked up from
 * @param steps one a trigger
 * @param results samples by slot, then controls, then spikes, each by step
 * @param differences analytes that follow by difference, with the results they follow from
 * @param notices what the user should be told
 */
public record Analysis(
        Assay assay,
        List<StepAnalysis> steps,
        List<Result> results,
        List<DifferenceResult> differences,
        List<Notice> notices) {
    /** Keeps copies that cannot change. */
    public Analysis {
        steps = List.copyOf(steps);
        results = List.copyOf(results);
        differences = List.copyOf(differences);
        notices = List.copyOf(notices);
    }

    /** The step that a result belongs to. */
    public StepAnalysis stepOf(Result result) {
        return steps.get(result.step() - 1);
    }
}
