package tallywell.desk;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tallywell.files.SampleListWriter;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.method.WantedSample;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.readings.Block;
import tallywell.readings.Choice;
import tallywell.readings.Export;

/** Puts what was dropped into a draft. */
final class Intaking {
    private RunDraft draft;
    private final List<Notice> notices = new ArrayList<>();
    private final List<String> said = new ArrayList<>();
    private final List<Export> ask = new ArrayList<>();
    private Optional<Path> run = Optional.empty();
    private Optional<Path> listed = Optional.empty();
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
            said.add(method.file().getFileName() + ": method " + method.method().title());
        } else if (dropped instanceof Dropped.OfLayout layout) {
            draft = draft.withLayout(Origin.file(layout.file(), layout.layout()));
            said.add(layout.file().getFileName() + ": layout " + layout.layout().name());
        } else if (dropped instanceof Dropped.OfSamples samples) {
            draft = draft.withSamples(Optional.of(Origin.file(samples.file(), samples.samples())));
            said.add(samples.file().getFileName() + ": "
                    + samples.samples().bySlot().size() + " samples");
            listed = Optional.of(samples.file());
        } else if (dropped instanceof Dropped.OfWanted wanted) {
            take(wanted);
        } else if (dropped instanceof Dropped.OfReadings readings) {
            take(readings.export(), Choice.none());
        }
    }

    /** Samples without numbers get those of the layout that are free, in the order of the list. */
    private void take(Dropped.OfWanted dropped) {
        Set<Integer> given =
                dropped.samples().stream().map(each -> each.sample().slot()).collect(Collectors.toSet());
        List<Integer> slots = draft.layout()
                .map(each -> each.value().slots())
                .orElseGet(() -> IntStream.rangeClosed(1, dropped.samples().size() + given.size())
                        .boxed()
                        .toList());
        Deque<Integer> free = new ArrayDeque<>(slots);
        free.removeAll(given);
        List<WantedSample> placed = new ArrayList<>();
        for (WantedSample each : dropped.samples()) {
            if (!each.hasSlot() && free.isEmpty()) {
                notices.add(Notice.error(
                        Place.file(dropped.file()),
                        "found " + dropped.samples().size() + " samples for the " + slots.size()
                                + " numbers of the layout; expected at most " + slots.size()));
                return;
            }
            placed.add(each.hasSlot() ? each : inSlot(each, free.remove()));
        }
        SampleList list =
                SampleList.of(placed.stream().map(WantedSample::sample).toList());
        String name = String.valueOf(dropped.file().getFileName());
        draft = draft.withSamples(Optional.of(
                new Origin<>(name, Optional.empty(), list, Optional.of(new SampleListWriter().wanted(placed)))));
        said.add(name + ": " + placed.size() + " samples, numbered in their order");
    }

    private static WantedSample inSlot(WantedSample wanted, int slot) {
        Sample sample = wanted.sample();
        boolean unnamed = sample.name().equals("0");
        Sample placed = new Sample(
                slot,
                unnamed ? Integer.toString(slot) : sample.name(),
                sample.dilution(),
                sample.volumeUl(),
                sample.solid(),
                sample.densityGPerMl(),
                sample.group(),
                sample.id(),
                sample.note(),
                sample.treatment());
        return new WantedSample(placed, wanted.hasDilution(), wanted.expected(), wanted.place());
    }

    void take(Export export, Choice choice) {
        OptionalDouble wavelength = draft.method()
                .map(each -> each.value().steps().get(0).signal().wavelengthNm())
                .orElse(OptionalDouble.empty());
        if (export.blocks().size() == 1) {
            // Read at another wavelength it is taken in all the same, and asked about.
            add(intake(export, choice, export.blocks().get(0)));
            return;
        }
        try {
            add(intake(export, choice, export.one(choice, wavelength)));
        } catch (InputException e) {
            ask.add(export);
        }
    }

    private static Intake intake(Export export, Choice choice, Block block) {
        return new Intake(
                export.file(),
                choice,
                block,
                export.explanation().text(),
                false,
                List.of(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    private void add(Intake intake) {
        boolean twice = draft.readings().stream().anyMatch(each -> same(each, intake));
        if (twice) {
            notices.add(Notice.attention(
                    Place.file(intake.file()),
                    "these readings are in already, number for number; drop the other export, or remove the one that is"
                            + " in first"));
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
        return Readings.same(one.block().series(), other.block().series());
    }

    RunDraft draft() {
        if (added) {
            int steps = draft.method().map(each -> each.value().steps().size()).orElse(1);
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

    /** Says which samples of a list have no number on the plate, once all files of a drop are in. */
    private void fitList(Path file) {
        SampleWords words = SampleWords.of(draft.sampleList(), draft.layout().map(Origin::value), Shown.POINT);
        if (!words.fits()) {
            notices.add(Notice.attention(
                    Place.file(file), "found sample numbers " + words.text() + "; expected numbers of the layout"));
        }
    }

    RunDesk.Drop drop() {
        listed.ifPresent(this::fitList);
        boolean guessed = draft.readings().size() > 1
                || draft.readings().size() == 1
                        && !draft.readings().get(0).triggerAtS().isEmpty();
        return new RunDesk.Drop(notices, said, ask, run, guessed);
    }
}
