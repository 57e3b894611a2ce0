package tallywell.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Supplier;
import tallywell.method.AssayMethod;
import tallywell.method.Sample;
import tallywell.notice.Notice;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.readings.Choice;
import tallywell.readings.Export;
import tallywell.workup.FinishedChoices;

/**
 * A run on the desk: what has gone in, what it came to, what is selected. Everything slow happens on a background
 * executor, everything seen changes on the front one; all methods are for the front.
 */
public final class RunDesk {
    private final Executor back;
    private final Executor front;
    private final History<RunDraft> history;
    private final Selection selection;
    private final Router router = new Router();
    private final Doubts inquiry;
    private final List<Runnable> listeners = new ArrayList<>();
    private Worked worked;
    private final AtomicLong generation = new AtomicLong();
    private final LiveTraces live;
    private boolean busy;
    private List<Doubt> doubts = List.of();
    private Inquired inquired = new Inquired(Optional.empty(), Optional.empty(), List.of(), List.of(), List.of());

    /** Begins with a run, with no other layouts at hand. */
    public RunDesk(RunDraft draft, Executor back, Executor front) {
        this(draft, back, front, new LayoutShelf(List.of()));
    }

    /**
     * Begins with a run.
     *
     * @param back where the work is done, one piece after the other
     * @param front where listeners are called
     * @param shelf layouts that may be used instead, where the one of the run does not fit
     */
    public RunDesk(RunDraft draft, Executor back, Executor front, LayoutShelf shelf) {
        this.back = back;
        this.front = front;
        inquiry = new Doubts(shelf);
        live = new LiveTraces(this, back, front);
        history = new History<>(draft);
        selection = new Selection(draft.format());
        worked = new Worked(draft, Optional.empty(), Optional.empty(), List.of());
        history.onChange(this::changed);
        if (draft.isComplete()) {
            workUp(history.now());
        }
    }

    /** The run with undo and redo. */
    public History<RunDraft> history() {
        return history;
    }

    /** The run now. */
    public RunDraft draft() {
        return history.now();
    }

    /** The selected wells. */
    public Selection selection() {
        return selection;
    }

    /** What the run came to, as far as it is worked up; it may lag behind the run while {@link #isBusy()}. */
    public Worked worked() {
        return worked;
    }

    /** Whether work is going on. */
    public boolean isBusy() {
        return busy;
    }

    /** What looks wrong with what has gone in; it may lag behind the run as the results do. */
    public List<Doubt> doubts() {
        return doubts;
    }

    /** Does what a doubt offers. */
    public void cure(Doubt.Edit cure) {
        history.edit(cure.edit().apply(draft()), cure.what());
    }

    /** Calls back when the run, its results or being busy have changed. */
    public void onChange(Runnable listener) {
        listeners.add(listener);
    }

    private void changed() {
        selection.format(draft().format());
        workUp(draft());
    }

    /** Works up a run that is not the present one, such as one being dragged at; the next edit takes its place. */
    public void preview(RunDraft draft) {
        workUp(draft);
    }

    private void workUp(RunDraft draft) {
        long mine = generation.incrementAndGet();
        busy = true;
        tell();
        // Where a newer state waits behind this one, nobody would see the result.
        aside(() -> mine == generation.get(), () -> Worked.of(draft), Worked.failed(draft), result -> {
            worked = result;
            busy = false;
            tell();
            inquire(result, mine);
        });
    }

    /**
     * Does a piece of work on the back and hands what came of it to the front. A fault of the program goes on to whoever
     * hears of faults, but the front must not wait for it.
     *
     * @param wanted whether anybody still waits for it
     * @param failed what comes of a fault
     */
    private <T> void aside(BooleanSupplier wanted, Supplier<T> work, T failed, Consumer<T> done) {
        back.execute(() -> {
            if (!wanted.getAsBoolean()) {
                return;
            }
            T result = failed;
            try {
                result = work.get();
            } finally {
                T last = result;
                front.execute(() -> {
                    if (wanted.getAsBoolean()) {
                        done.accept(last);
                    }
                });
            }
        });
    }

    /** Looks for slips once the results are seen; only where something has changed that they could lie in. */
    private void inquire(Worked result, long mine) {
        Inquired now = Inquired.of(result);
        if (now.equals(inquired)) {
            return;
        }
        aside(() -> mine == generation.get(), () -> inquiry.of(result), List.<Doubt>of(), found -> {
            inquired = now;
            doubts = found;
            tell();
        });
    }

    /** What slips can lie in. */
    private record Inquired(
            Optional<Origin<AssayMethod>> method,
            Optional<Origin<Layout>> layout,
            List<Intake> readings,
            List<Sample> forgotten,
            List<Notice> problems) {
        static Inquired of(Worked worked) {
            RunDraft draft = worked.draft();
            List<Sample> forgotten = Doubts.forgotten(draft);
            return new Inquired(draft.method(), draft.layout(), draft.readings(), forgotten, worked.problems());
        }
    }

    /**
     * Takes dropped files in and puts each into its place.
     *
     * @param done hears what came of it, after the run has changed
     */
    public void drop(List<Path> files, Consumer<Drop> done) {
        busy = true;
        tell();
        aside(
                () -> true,
                () -> Optional.of(files.stream().map(router::route).toList()),
                Optional.<List<Dropped>>empty(),
                dropped -> {
                    busy = false;
                    dropped.ifPresent(each -> done.accept(take(each)));
                    tell();
                });
    }

    /**
     * What came of dropped files.
     *
     * @param notices what could not be used, and what to look at
     * @param said what was understood, in words
     * @param ask exports that hold several blocks, of which one must be chosen
     * @param run a run file among them, to be opened in place of this run
     * @param guessed whether before and after were told apart by a guess
     */
    public record Drop(List<Notice> notices, List<String> said, List<Export> ask, Optional<Path> run, boolean guessed) {
        /** Keeps copies that cannot change. */
        public Drop {
            notices = List.copyOf(notices);
            said = List.copyOf(said);
            ask = List.copyOf(ask);
        }
    }

    private Drop take(List<Dropped> dropped) {
        Intaking intaking = new Intaking(draft());
        dropped.forEach(intaking::take);
        RunDraft next = intaking.draft();
        history.edit(next, "take in " + files(dropped));
        return intaking.drop();
    }

    /** What speaks for the order of several exports and what against it, in words; empty for fewer than two. */
    public String orderEvidence(Shown shown) {
        return OrderEvidence.words(draft().readings(), shown);
    }

    private static String files(List<Dropped> dropped) {
        return dropped.size() == 1 ? String.valueOf(dropped.get(0).file().getFileName()) : dropped.size() + " files";
    }

    /** Takes one block of an export that holds several. */
    public void choose(Export export, int number) {
        Intaking intaking = new Intaking(draft());
        intaking.take(export, Choice.none().withBlock(number));
        history.edit(intaking.draft(), "take in block " + number);
    }

    /** Swaps the order of the readings: what was first becomes last. */
    public void reverseReadings() {
        history.edit(ReadingOrder.reversed(draft()), "swap before and after");
    }

    /** Takes one export out. */
    public void removeReading(int index) {
        List<Intake> fewer = new ArrayList<>(draft().readings());
        fewer.remove(index);
        int steps = draft().method().map(each -> each.value().steps().size()).orElse(1);
        history.edit(
                draft().withReadings(fewer.isEmpty() ? fewer : ReadingOrder.marked(fewer, steps)), "remove readings");
    }

    /** Says when the trigger was added in a single series, in s of its own time. */
    public void triggerAt(double timeS) {
        triggerAt(1, timeS);
    }

    /** Says when the trigger of a step was added in a single series; it holds for all wells. */
    public void triggerAt(int step, double timeS) {
        history.edit(draft().triggerAt(step, timeS), "set the trigger");
    }

    /** Where the trigger of a step can be moved to; empty where it does not stand inside a single series. */
    public Optional<TriggerSpan> trigger(int step) {
        return TriggerSpan.of(draft(), step);
    }

    /** What the run would come to while something is dragged at. */
    public LiveTraces live() {
        return live;
    }

    /** Excludes the selected wells. */
    public void exclude(String reason, String by) {
        List<Well> wells = List.copyOf(selection.wells());
        history.edit(draft().exclude(wells, reason, by), "exclude " + selection.words());
    }

    /** Puts the selected wells back. */
    public void putBack() {
        history.edit(draft().putBack(List.copyOf(selection.wells())), "put back " + selection.words());
    }

    /** Whether all selected wells are excluded. */
    public boolean selectionIsExcluded() {
        return !selection.wells().isEmpty() && draft().excluded().keySet().containsAll(selection.wells());
    }

    /** Whether the finished part of any of some wells is set by hand. */
    public boolean isFinishedByHand(List<Well> wells) {
        return draft().finishedFrom().stream()
                .flatMap(each -> each.wells().stream())
                .anyMatch(wells::contains);
    }

    /** The latest time at which the finished part of all of some wells can begin, in s from the trigger; empty if there is none. */
    public OptionalDouble latestFinish(List<Well> wells) {
        return worked().analysis()
                .map(each -> FinishedChoices.latestS(each, wells))
                .orElse(OptionalDouble.empty());
    }

    /** Lets the program find the finished part of wells again. */
    public void finishByRule(List<Well> wells) {
        history.edit(draft().finishByRule(wells), "let the program find the finished part");
    }

    /** Sets the finished part of wells by hand. */
    public void finishFrom(List<Well> wells, double timeS, String reason, String by) {
        history.edit(draft().finishFrom(wells, timeS, reason, by), "set the finished part");
    }

    private void tell() {
        List.copyOf(listeners).forEach(Runnable::run);
    }
}
