package tallywell.desk;

import java.util.List;
import java.util.Optional;
import tallywell.assess.Assessment;
import tallywell.assess.Assessor;
import tallywell.assess.Repeats;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.workup.Analysis;
import tallywell.workup.Workup;

/**
 * What a run came to.
 *
 * @param draft the run
 * @param analysis worked up; empty if it cannot be
 * @param assessment judged; present with the analysis
 * @param problems why it cannot be worked up; empty otherwise
 */
public record Worked(
        RunDraft draft, Optional<Analysis> analysis, Optional<Assessment> assessment, List<Notice> problems) {
    /** Keeps a copy that cannot change. */
    public Worked {
        problems = List.copyOf(problems);
    }

    /** Works a run up; not for the event thread. A run that is not complete comes to nothing, without problems. */
    public static Worked of(RunDraft draft) {
        if (!draft.isComplete()) {
            return new Worked(draft, Optional.empty(), Optional.empty(), List.of());
        }
        List<Intake> wrong = Wavelengths.wrong(draft);
        if (!wrong.isEmpty()) {
            List<Notice> problems =
                    wrong.stream().map(each -> Wavelengths.problem(each, draft)).toList();
            return new Worked(draft, Optional.empty(), Optional.empty(), problems);
        }
        try {
            Analysis analysis = new Workup().analyse(draft.assay());
            return new Worked(draft, Optional.of(analysis), Optional.of(new Assessor().assess(analysis)), List.of());
        } catch (InputException e) {
            return new Worked(draft, Optional.empty(), Optional.empty(), e.notices());
        }
    }

    /** What a run comes to that a fault of the program keeps from being worked up. */
    static Worked failed(RunDraft draft) {
        Notice fault = Notice.error(
                Place.nowhere(),
                "These inputs cannot be worked up, by a fault of the program. They are kept as they are; undo the last"
                        + " step to go on without it.");
        return new Worked(draft, Optional.empty(), Optional.empty(), List.of(fault));
    }

    /** Whether results are to be repeated. */
    public boolean hasRepeats() {
        return assessment.map(Repeats::isAny).orElse(false);
    }

    /**
     * The next plate: what is to be repeated, at the dilutions that are advised.
     *
     * @param title of the run to come
     * @param list as the user is shown the samples
     * @throws InputException if they do not fit into the slots of the layout
     */
    public RunDraft repeats(String title, String list) throws InputException {
        SampleList repeats = Repeats.of(assessment.orElseThrow(
                () -> new IllegalStateException("results must be there before they are repeated")));
        return draft.onlyMethodAndLayout().withTitle(title).withSamples(Optional.of(Origin.unsaved(list, repeats)));
    }
}
