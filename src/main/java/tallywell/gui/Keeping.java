package tallywell.gui;

import java.util.Optional;
import java.util.concurrent.Executor;
import tallywell.desk.History;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutEdits;
import tallywell.desk.Recovery;
import tallywell.desk.RunDesk;
import tallywell.desk.RunDraft;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.plate.Layout;

/** Keeps every edit as it is made, and offers what was kept when the program ended without saving. */
final class Keeping {
    private final Recovery recovery;
    private final Executor back;
    private final Executor front;

    Keeping(Recovery recovery, Executor back, Executor front) {
        this.recovery = recovery;
        this.back = back;
        this.front = front;
    }

    /** What is done with what was kept. */
    interface Opening {
        void layout(LayoutDesk desk);

        RunDesk emptyRun();
    }

    /** Keeps a run from now on; what is saved needs no keeping. */
    void keep(RunDesk desk, Said said) {
        desk.history().onChange(() -> {
            RunDraft draft = desk.draft();
            keep(desk.history(), said, () -> recovery.keep(draft));
        });
    }

    /** Keeps a layout from now on. */
    void keep(LayoutDesk desk, Said said) {
        desk.history().onChange(() -> {
            Layout drawn = desk.layout();
            keep(desk.history(), said, () -> recovery.keep(drawn));
        });
    }

    /** Writes something. */
    private interface Writing {
        void run() throws OutputException;
    }

    private void keep(History<?> history, Said said, Writing writing) {
        boolean unsaved = history.isUnsaved();
        write(said, unsaved ? writing : recovery::forget);
    }

    private void write(Said said, Writing writing) {
        back.execute(() -> {
            try {
                writing.run();
            } catch (OutputException e) {
                front.execute(() -> said.hint(OutputWords.of(e)));
            }
        });
    }

    /** Drops what was kept. */
    void forget(Said said) {
        write(said, recovery::forget);
    }

    /** Offers what was kept. */
    void offer(Said said, Opening opening) {
        back.execute(() -> {
            try {
                Optional<RunDraft> run = recovery.run();
                Optional<Layout> layout = recovery.layout();
                front.execute(() -> offer(said, opening, run, layout));
            } catch (InputException e) {
                front.execute(() -> said.problem(e.notices()));
            }
        });
    }

    private static void offer(Said said, Opening opening, Optional<RunDraft> run, Optional<Layout> layout) {
        layout.ifPresent(kept -> said.offer(Text.of("kept.layout", kept.name()), Text.of("kept.open"), () -> {
            LayoutDesk desk = new LayoutDesk(LayoutEdits.empty(kept.name(), kept.format()), Optional.empty());
            opening.layout(desk);
            desk.history().edit(kept, Text.of("kept.edit"));
        }));
        run.ifPresent(kept -> said.offer(
                Text.of("kept.run", kept.title().isEmpty() ? Text.of("run.untitled") : kept.title()),
                Text.of("kept.open"),
                () -> opening.emptyRun().history().edit(kept, Text.of("kept.edit"))));
    }
}
