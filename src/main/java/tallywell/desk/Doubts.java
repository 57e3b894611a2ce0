package tallywell.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import tallywell.method.AssayMethod;
import tallywell.method.CalibrationRule;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.readings.Block;
import tallywell.readings.Choice;
import tallywell.readings.Importer;

/**
 * Looks for the slips of the bench in what has gone into a run: readings at another wavelength, before and after swapped, the
 * plate turned by half a turn, the layout of another plate, dilutions that were left out. Not for the event thread, since it looks into files.
 */
final class Doubts {
    private static final int MOST_OTHERS = 3;
    private static final int MOST_WELLS = 6;
    private static final int MOST_SAMPLES = 6;

    private final LayoutShelf shelf;

    Doubts(LayoutShelf shelf) {
        this.shelf = shelf;
    }

    /** What is to be asked about a run, the gravest first. */
    List<Doubt> of(Worked worked) {
        List<Doubt> doubts = new ArrayList<>();
        RunDraft draft = worked.draft();
        Wavelengths.wrong(draft).forEach(intake -> doubts.add(wavelength(draft, intake)));
        if (doubts.isEmpty() && isSwapped(worked)) {
            doubts.add(swapped(draft));
        }
        if (doubts.isEmpty()) {
            layout(draft).ifPresent(doubts::add);
        }
        if (!draft.readings().isEmpty()) {
            draft.samples().flatMap(list -> dilutions(list, forgotten(draft))).ifPresent(doubts::add);
        }
        return doubts;
    }

    /** The samples whose dilution may have been forgotten; none before list and method are known. */
    static List<Sample> forgotten(RunDraft draft) {
        return draft.samples()
                .flatMap(list -> draft.method().map(method -> list.value().forgotten(method.value())))
                .orElse(List.of());
    }

    private static Optional<Doubt> dilutions(Origin<SampleList> list, List<Sample> forgotten) {
        if (forgotten.isEmpty()) {
            return Optional.empty();
        }
        String which = forgotten.stream()
                .limit(MOST_SAMPLES)
                .map(Sample::label)
                .collect(Collectors.joining(", ", "", forgotten.size() > MOST_SAMPLES ? ", …" : ""));
        boolean one = forgotten.size() == 1;
        Origin<SampleList> stated = Origin.unsaved(list.name(), list.value().stated());
        return Optional.of(new Doubt(
                "The list \"" + list.name() + "\" has no dilution for " + forgotten.size() + " of its "
                        + list.value().bySlot().size() + " samples (" + which
                        + (list.value().statesNoDilution()
                                ? "), and the method dilutes every kind of sample. "
                                : "), while others have one. ")
                        + (one ? "It counts" : "They count")
                        + " as undiluted now; where that is wrong, type the dilution into the table of samples.",
                List.of(new Doubt.Edit(
                        one ? "It is undiluted" : "They are undiluted",
                        run -> run.withSamples(Optional.of(stated)),
                        "state that samples are undiluted"))));
    }

    private static Doubt wavelength(RunDraft draft, Intake intake) {
        AssayMethod method = draft.method().orElseThrow().value();
        double asked = method.steps().get(0).signal().wavelengthNm().orElseThrow();
        double read = intake.block().wavelengthNm().orElseThrow();
        List<Doubt.Cure> cures = new ArrayList<>();
        for (Block each : blocks(intake.file())) {
            if (Wavelengths.isSame(each.wavelengthNm(), asked)) {
                String words = "Take block " + each.number() + ", read at " + Shown.POINT.plain(asked) + " nm";
                cures.add(new Doubt.Edit(words, run -> with(run, intake, each), "take the readings at the wavelength"));
            }
        }
        String anyway = "Use what was read at " + Shown.POINT.plain(read) + " nm";
        cures.add(new Doubt.Edit(anyway, run -> anyway(run, read), "use the readings at " + read + " nm"));
        boolean standards =
                method.steps().stream().noneMatch(step -> step.calibration() instanceof CalibrationRule.ByAbsorptivity);
        if (!standards) {
            cures.add(new Doubt.MethodForm("Change the method in its form"));
        }
        String matters = standards
                ? "Standards read along make up for it, if they are on this plate."
                : "The method calculates by an absorptivity, which holds at its own wavelength only: change both in its form.";
        return new Doubt(
                intake.name() + " was read at " + Shown.POINT.plain(read) + " nm; the method asks for "
                        + Shown.POINT.plain(asked) + " nm. " + matters,
                cures);
    }

    private static List<Block> blocks(Path file) {
        try {
            return new Importer().read(file, Choice.none()).blocks();
        } catch (InputException e) {
            // The file has gone since it was read: then it has no other block to offer.
            return List.of();
        }
    }

    private static RunDraft with(RunDraft run, Intake old, Block block) {
        return run.withReadings(run.readings().stream()
                .map(each -> each.equals(old) ? each.with(Choice.none().withBlock(block.number()), block) : each)
                .toList());
    }

    private static RunDraft anyway(RunDraft run, double nm) {
        return run.withReadings(run.readings().stream()
                .map(each -> Wavelengths.isSame(each.block().wavelengthNm(), nm)
                        ? each.with(each.choice().withWavelengthNm(nm), each.block())
                        : each)
                .toList());
    }

    private static boolean isSwapped(Worked worked) {
        return worked.problems().stream().map(Notice::text).anyMatch(text -> text.contains("probably swapped"))
                && worked.draft().readings().size() > 1;
    }

    private static Doubt swapped(RunDraft draft) {
        String names = draft.readings().stream().map(Intake::name).collect(Collectors.joining(", then "));
        return new Doubt(
                "Most wells go the wrong way: before and after are probably swapped. They stand as " + names + ".",
                List.of(new Doubt.Edit("Swap before and after", ReadingOrder::reversed, "swap before and after")));
    }

    private Optional<Doubt> layout(RunDraft draft) {
        if (draft.layout().isEmpty() || draft.readings().isEmpty()) {
            return Optional.empty();
        }
        Origin<Layout> origin = draft.layout().get();
        Layout layout = origin.value();
        Map<Well, Double> changes = Reacted.of(draft.readings());
        changes.keySet().removeAll(draft.excluded().keySet());
        if (changes.isEmpty()
                || changes.keySet().stream().anyMatch(well -> !layout.format().holds(well))) {
            return Optional.empty();
        }
        LayoutFit fit = LayoutFit.of(layout, changes);
        if (!fit.isWrong()) {
            return Optional.empty();
        }
        String turnedName = layout.name() + ", turned by 180 degrees";
        Layout turned = LayoutFit.turned(layout, turnedName);
        if (LayoutFit.of(turned, changes).curesMisfitOf(fit)) {
            return Optional.of(turned(layout, turned));
        }
        return Optional.of(other(origin, fit, changes));
    }

    private static Doubt turned(Layout layout, Layout turned) {
        Origin<Layout> copy = Origin.unsaved(turned.name(), turned);
        return new Doubt(
                "The readings fit the layout \"" + layout.name()
                        + "\" badly, and well when it is turned by 180°: the plate"
                        + " probably lay the wrong way round. A turned copy of the layout can be used in its place; the run"
                        + " keeps the copy, and the layout itself stays as it is.",
                List.of(new Doubt.Edit("Use the turned layout", run -> run.withLayout(copy), "use the turned layout")));
    }

    private Doubt other(Origin<Layout> origin, LayoutFit fit, Map<Well, Double> changes) {
        List<Doubt.Cure> cures = new ArrayList<>();
        Set<Layout> seen = new HashSet<>();
        for (Origin<Layout> each : shelf.all(origin.file().stream().toList())) {
            Layout layout = each.value();
            boolean fits = layout.format().equals(origin.value().format())
                    && LayoutFit.of(layout, changes).curesMisfitOf(fit);
            if (fits && seen.add(layout) && cures.size() < MOST_OTHERS) {
                cures.add(new Doubt.Edit(
                        "Use \"" + layout.name() + "\"", run -> run.withLayout(each), "use another layout"));
            }
        }
        String better = cures.isEmpty() ? " No other layout at hand fits better." : " This fits better:";
        return new Doubt(
                "Is \"" + origin.value().name() + "\" the layout of this plate? " + found(fit) + "." + better, cures);
    }

    /** What speaks against a layout, in words. */
    private static String found(LayoutFit fit) {
        List<String> found = new ArrayList<>();
        if (high(fit.standards())) {
            found.add("blanks and standards do not rise with their level");
        }
        if (high(fit.replicates())) {
            found.add("replicates differ as much as any two wells");
        }
        if (!fit.unread().isEmpty()) {
            found.add(wells(fit.unread()) + " should hold something and were not read");
        }
        if (fit.reacting().size() > 2) {
            found.add(wells(fit.reacting()) + " should be unused and reacted");
        }
        String text = String.join("; ", found);
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    private static boolean high(OptionalDouble part) {
        return part.orElse(0) >= LayoutFit.WRONG;
    }

    private static String wells(List<Well> wells) {
        String named = wells.stream().limit(MOST_WELLS).map(Well::toString).collect(Collectors.joining(", "));
        return wells.size() > MOST_WELLS ? named + " and " + (wells.size() - MOST_WELLS) + " more wells" : named;
    }
}
