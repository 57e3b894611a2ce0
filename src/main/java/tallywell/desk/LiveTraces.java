package tallywell.desk;

import java.util.List;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import tallywell.chart.DrawnTrace;
import tallywell.notice.InputException;
import tallywell.plate.Well;
import tallywell.workup.Retrace;
import tallywell.workup.Workup;

/**
 * What a run would come to while someone drags at a trace. Of many attempts that are asked for one after the other only the
 * latest is worked up; all methods are for the event thread.
 */
public final class LiveTraces {
    private static final double MINUTE = 60;

    private final RunDesk desk;
    private final Executor back;
    private final Executor front;
    private final AtomicLong attempts = new AtomicLong();

    LiveTraces(RunDesk desk, Executor back, Executor front) {
        this.desk = desk;
        this.back = back;
        this.front = front;
    }

    /** Drops what is being tried. */
    void stop() {
        attempts.incrementAndGet();
    }

    /**
     * Works single wells up as they would be with the finished part dragged to a time.
     *
     * @param timeS in s from the trigger
     * @param seen hears of the traces, unless something newer has been asked for meanwhile
     */
    public void tryFinished(int step, List<Well> wells, double timeS, Consumer<List<DrawnTrace>> seen) {
        Worked now = desk.worked();
        attempt(
                () -> {
                    RunDraft changed = now.draft().finishFrom(wells, timeS, "tried", "");
                    return DrawnTrace.of(Retrace.of(now.analysis().orElseThrow(), changed.assay(), step, wells));
                },
                seen);
    }

    /**
     * Works the plate up as it would be with the trigger of a step dragged to a time.
     *
     * @param timeS in s of the file's own time
     * @param seen hears of the traces of some wells, drawn from the trigger as it was, unless something newer has been
     *     asked for meanwhile
     */
    public void tryTrigger(int step, List<Well> wells, double timeS, Consumer<List<DrawnTrace>> seen) {
        RunDraft now = desk.worked().draft();
        double wasS = now.readings().get(0).triggerAtS().get(step - 1);
        attempt(
                () -> DrawnTrace.of(
                                new Workup().analyse(now.triggerAt(step, timeS).assay()), step, wells)
                        .stream()
                        .map(look -> look.later((timeS - wasS) / MINUTE))
                        .toList(),
                seen);
    }

    /** Traces as they would be. */
    private interface Attempt {
        List<DrawnTrace> traces() throws InputException;
    }

    private void attempt(Attempt attempt, Consumer<List<DrawnTrace>> seen) {
        if (desk.worked().analysis().isEmpty()) {
            return;
        }
        long mine = attempts.incrementAndGet();
        back.execute(() -> {
            if (mine != attempts.get()) {
                return;
            }
            try {
                List<DrawnTrace> traces = attempt.traces();
                front.execute(() -> {
                    if (mine == attempts.get()) {
                        seen.accept(traces);
                    }
                });
            } catch (InputException e) {
                // There is nothing to see at a place where the plate cannot be worked up; letting go there says why.
                front.execute(() -> seen.accept(List.of()));
            }
        });
    }
}
