package tallywell.gui;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import javax.swing.Timer;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.task.Progress;

/** Does what may take long beside the windows: opening, saving, writing. What takes a while is shown and can be cancelled. */
final class Jobs {
    /** What is done sooner flashes by without being shown. */
    private static final int SHOWN_AFTER_MS = 300;

    private final Executor back;
    private final Executor front;

    Jobs(Executor back, Executor front) {
        this.back = back;
        this.front = front;
    }

    /** Something that may take long. */
    interface Job<T> {
        T run(Progress progress) throws InputException, OutputException;
    }

    /** What could not be done, and why. */
    interface Failed {
        void because(OutputException why);
    }

    /** Does a small thing aside, without showing it; only what goes wrong is said. */
    <T> void aside(Said said, Job<T> job, Consumer<T> done) {
        Progress progress = Progress.SILENT;
        back.execute(() -> {
            Runnable end =
                    outcome(job, progress, done, e -> said.hint(OutputWords.of(e)), e -> said.problem(e.notices()));
            front.execute(end);
        });
    }

    /** How a job is cancelled. */
    enum Cancel {
        /** Not at all: what it writes is short and whole or not at all. */
        NEVER,
        /** What comes of it is dropped. */
        DROPS,
        /** It is asked to stop, and its result tells whether it did. */
        ASKS
    }

    /** Reads something; what goes wrong is said in the line above the work. */
    <T> void run(Said said, String what, Job<T> job, Consumer<T> done) {
        run(said, what, Cancel.DROPS, job, done, e -> said.hint(OutputWords.of(e)));
    }

    /**
     * Does a job.
     *
     * @param said where it is shown, and where unusable input is said
     * @param what in words, such as "Saving the run …"
     * @param done hears of the result in the event thread, unless it was dropped
     * @param failed hears of what could not be written, in the event thread
     */
    <T> void run(Said said, String what, Cancel cancel, Job<T> job, Consumer<T> done, Failed failed) {
        run(said, what, cancel, job, done, failed, e -> said.problem(e.notices()));
    }

    /** Does a job; hears also of input that could not be used. */
    <T> void run(
            Said said,
            String what,
            Cancel cancel,
            Job<T> job,
            Consumer<T> done,
            Failed failed,
            Consumer<InputException> refused) {
        AtomicBoolean cancelled = new AtomicBoolean();
        Timer timer = new Timer(SHOWN_AFTER_MS, event -> said.busy(what, cancelling(said, what, cancel, cancelled)));
        timer.setRepeats(false);
        timer.start();
        Progress progress = progress(said, what, cancelled);
        back.execute(() -> {
            Runnable end = () -> said.hint(Text.of("job.fault", what));
            try {
                end = outcome(job, progress, done, failed, refused);
            } finally {
                // A fault of the program goes on to whoever reports faults, but the window must not wait for it.
                Runnable last = end;
                front.execute(() -> {
                    timer.stop();
                    said.idle();
                    if (cancel != Cancel.DROPS || !cancelled.get()) {
                        last.run();
                    }
                });
            }
        });
    }

    private static Optional<Runnable> cancelling(Said said, String what, Cancel cancel, AtomicBoolean cancelled) {
        return switch (cancel) {
            case NEVER -> Optional.empty();
            case DROPS ->
                Optional.of(() -> {
                    cancelled.set(true);
                    said.idle();
                    said.hint(Text.of("job.cancelled", what.replace(" …", "")));
                });
            case ASKS ->
                Optional.of(() -> {
                    cancelled.set(true);
                    said.busy(Text.of("job.stopping"), Optional.empty());
                });
        };
    }

    private static <T> Runnable outcome(
            Job<T> job, Progress progress, Consumer<T> done, Failed failed, Consumer<InputException> refused) {
        try {
            T result = job.run(progress);
            return () -> done.accept(result);
        } catch (InputException e) {
            return () -> refused.accept(e);
        } catch (OutputException e) {
            return () -> failed.because(e);
        }
    }

    private Progress progress(Said said, String what, AtomicBoolean cancelled) {
        return new Progress() {
            @Override
            public void at(String item, int index, int of) {
                if (of > 1) {
                    front.execute(() -> said.progress(what, index, of));
                }
            }

            @Override
            public boolean isCancelled() {
                return cancelled.get();
            }
        };
    }
}
