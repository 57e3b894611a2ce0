package tallywell.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plate.Well;
import tallywell.readings.Block;
import tallywell.readings.Choice;
import tallywell.readings.Export;

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
    private final List<Runnable> listeners = new ArrayList<>();
    private Worked worked;
    private final AtomicLong generation = new AtomicLong();
    private boolean busy;

    /**
     * Begins with a run.
     *
     * @param back where the work is done, one piece after the other
     * @param front where listeners are called
     */
    public RunDesk(RunDraft draft, Executor back, Executor front) {
        this.back = back;
        this.front = front;
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
        back.execute(() -> {
            if (mine != generation.get()) {
                // A newer state waits behind this one; nobody would see the result.
                return;
            }
            Worked result = Worked.of(draft);
            front.execute(() -> {
                if (mine == generation.get()) {
                    worked = result;
                    busy = false;
                    tell();
                }
            });
        });
    }

    /**
     * Takes dropped files in and puts each into its place.
     *
     * @param done hears what came of it, after the run has changed
     */
    public void drop(List<Path> files, Consumer<Drop> done) {
        busy = true;
        tell();
        back.execute(() -> {
            List<Dropped> dropped = files.stream().map(router::route).toList();
            front.execute(() -> {
                busy = false;
                done.accept(take(dropped));
                tell();
            });
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
        List<Intake> reversed = new ArrayList<>(draft().readings());
        java.util.Collections.reverse(reversed);
        int steps = draft().method().map(each -> each.value().steps().size()).orElse(1);
        history.edit(draft().withReadings(ReadingOrder.marked(reversed, steps)), "swap before and after");
    }

    /** Takes one export out. */
    public void removeReading(int index) {
        List<Intake> fewer = new ArrayList<>(draft().readings());
        fewer.remove(index);
        int steps = draft().method().map(each -> each.value().steps().size()).orElse(1);
        history.edit(
                draft().withReadings(fewer.isEmpty() ? fewer : ReadingOrder.marked(fewer, steps)), "remove readings");
    }

    /** Says when the trigger was added in a single series. */
    public void triggerAt(double timeS) {
        List<Intake> readings = new ArrayList<>(draft().readings());
        readings.set(0, readings.get(0).withTriggersAt(List.of(timeS)));
        history.edit(draft().withReadings(readings), "set the trigger");
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

    /** Sets the finished part of wells by hand. */
    public void finishFrom(List<Well> wells, double timeS, String reason, String by) {
        history.edit(draft().finishFrom(wells, timeS, reason, by), "set the finished part");
    }

    private void tell() {
        List.copyOf(listeners).forEach(Runnable::run);
    }

    /** Puts what was dropped into a draft. */
    private static final class Intaking {
        private RunDraft draft;
        private final List<Notice> notices = new ArrayList<>();
        private final List<String> said = new ArrayList<>();
        private final List<Export> ask = new ArrayList<>();
        private Optional<Path> run = Optional.empty();
        private boolean added;

        Intaking(RunDraft draft) {
            this.draft = draft;
        }

        void take(Dropped dropped) {
            if (dropped instanceof Dropped.Refused refused) {
                notices.addAll(refused.why());
            } else if (dropped instanceof Dropped.OfRun ofRun) {
                run = Optional.of(ofRun.file());
            } else if (dropped instanceof Dropped.OfMethod method) {
                draft = draft.withMethod(Origin.file(method.file(), method.method()));
                said.add(method.file().getFileName() + ": method "
                        + method.method().title());
            } else if (dropped instanceof Dropped.OfLayout layout) {
                draft = draft.withLayout(Origin.file(layout.file(), layout.layout()));
                said.add(layout.file().getFileName() + ": layout "
                        + layout.layout().name());
            } else if (dropped instanceof Dropped.OfSamples samples) {
                draft = draft.withSamples(Optional.of(Origin.file(samples.file(), samples.samples())));
                said.add(samples.file().getFileName() + ": "
                        + samples.samples().bySlot().size() + " samples");
            } else if (dropped instanceof Dropped.OfReadings readings) {
                take(readings.export(), Choice.none());
            }
        }

        void take(Export export, Choice choice) {
            OptionalDouble wavelength = draft.method()
                    .map(each -> each.value().steps().get(0).signal().wavelengthNm())
                    .orElse(OptionalDouble.empty());
            try {
                Block block = export.one(choice, wavelength);
                Intake intake = new Intake(
                        export.file(),
                        choice,
                        block,
                        export.explanation().text(),
                        false,
                        List.of(),
                        OptionalDouble.empty());
                add(intake);
            } catch (InputException e) {
                if (export.blocks().size() > 1) {
                    ask.add(export);
                } else {
                    notices.addAll(e.notices());
                }
            }
        }

        private void add(Intake intake) {
            boolean twice = draft.readings().stream().anyMatch(each -> same(each, intake));
            if (twice) {
                notices.add(Notice.attention(
                        Place.file(intake.file()),
                        "these readings are in already; drop the other export, or remove this one first"));
                return;
            }
            draft.layout().ifPresent(layout -> fit(layout.value().format().wells(), intake));
            List<Intake> more = new ArrayList<>(draft.readings());
            more.add(intake);
            draft = draft.withReadings(more);
            said.add(intake.name() + ": " + intake.block().summary());
            added = true;
        }

        private void fit(int wells, Intake intake) {
            int read = intake.block().series().format().wells();
            if (intake.block().wholePlate() && read != wells) {
                notices.add(Notice.attention(
                        Place.file(intake.file()),
                        "found a plate of " + read + " wells; the layout has " + wells
                                + "; expected the layout of this plate"));
            }
        }

        private static boolean same(Intake one, Intake other) {
            return one.file().equals(other.file()) && one.choice().equals(other.choice())
                    || one.block().summary().equals(other.block().summary())
                            && one.mean().equals(other.mean());
        }

        RunDraft draft() {
            if (added) {
                int steps =
                        draft.method().map(each -> each.value().steps().size()).orElse(1);
                List<Intake> readings =
                        ReadingOrder.arranged(draft.readings(), draft.method().map(Origin::value));
                if (readings.size() == 1 && readings.get(0).triggerAtS().isEmpty()) {
                    Intake single = readings.get(0);
                    readings = List.of(single.withTriggersAt(ReadingOrder.triggers(single, steps)));
                } else if (readings.size() > 1) {
                    readings = readings.stream()
                            .map(each -> each.withTriggersAt(List.of()))
                            .toList();
                }
                draft = draft.withReadings(readings);
                added = false;
            }
            return draft;
        }

        Drop drop() {
            boolean guessed = draft.readings().size() > 1
                    || draft.readings().size() == 1
                            && !draft.readings().get(0).triggerAtS().isEmpty();
            return new Drop(notices, said, ask, run, guessed);
        }
    }
}
