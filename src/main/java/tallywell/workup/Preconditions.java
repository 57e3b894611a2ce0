package tallywell.workup;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tallywell.method.AssayMethod;
import tallywell.method.CalibrationRule;
import tallywell.method.Run;
import tallywell.method.Sample;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plate.Content;
import tallywell.plate.PerAnalyte;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** What must hold before a plate can be worked up at all. */
final class Preconditions {
    private static final int NAMED = 8;

    private final Assay assay;
    private final List<Notice> faults = new ArrayList<>();

    private Preconditions(Assay assay) {
        this.assay = assay;
    }

    /**
     * Checks a plate.
     *
     * @throws InputException with every fault that was found
     */
    static void check(Assay assay) throws InputException {
        Preconditions all = new Preconditions(assay);
        all.samplesHaveSlots();
        all.wellsExist();
        all.readingsFit();
        all.readingsDiffer();
        OnePlate.faults(assay.readings()).forEach(all::fault);
        MeasuredPath.faults(assay).forEach(all::fault);
        all.analytesAreKnown();
        all.quantitiesConvert();
        new Differences(assay).faults().forEach(all::fault);
        if (!all.faults.isEmpty()) {
            throw new InputException(all.faults);
        }
    }

    /** What is odd but harmless. */
    static List<Notice> remarks(Assay assay) {
        List<Notice> remarks = new ArrayList<>();
        List<Integer> empty = assay.layout().slots().stream()
                .filter(slot -> assay.samples().in(slot).isEmpty())
                .toList();
        if (!empty.isEmpty()) {
            remarks.add(Notice.information(
                    assay.place(),
                    "the layout has slots without a row in the sample list, which count as unused: "
                            + empty.stream().map(String::valueOf).collect(Collectors.joining(", "))));
        }
        List<Sample> forgotten = assay.samples().forgotten(assay.method());
        if (!forgotten.isEmpty()) {
            remarks.add(Notice.attention(
                    assay.place(),
                    "the sample list has no dilution for " + listed(forgotten)
                            + (assay.samples().statesNoDilution()
                                    ? ", and the method dilutes every kind of sample"
                                    : ", while others have one")
                            + "; expected one for each: without it a sample counts as undiluted"));
        }
        assay.samples()
                .idsOfSeveralNames()
                .forEach((id, samples) -> remarks.add(Notice.attention(
                        assay.place(),
                        "the sample list has the id '" + id + "' for " + listed(samples)
                                + "; expected one name for each id, so that results cannot be mixed up")));
        for (Run.Exclusion each : new LinkedHashSet<>(assay.exclusions().values())) {
            unused(assay, each.wells(), each.line(), "exclude").ifPresent(remarks::add);
        }
        for (Run.FinishedFrom each : new LinkedHashSet<>(assay.finishedFrom().values())) {
            unused(assay, each.wells(), each.line(), "finished-from").ifPresent(remarks::add);
        }
        remarks.addAll(OnePlate.accepted(assay));
        remarks.addAll(MeasuredPath.remarks(assay));
        remarks.addAll(new Differences(assay).remarks());
        return remarks;
    }

    private static String listed(List<Sample> samples) {
        return samples.stream().limit(NAMED).map(Preconditions::withName).collect(Collectors.joining(", "))
                + (samples.size() > NAMED ? " and " + (samples.size() - NAMED) + " more" : "");
    }

    private static String withName(Sample sample) {
        String slot = Integer.toString(sample.slot());
        return slot.equals(sample.name()) ? slot : slot + " (" + sample.name() + ")";
    }

    private static Optional<Notice> unused(Assay assay, List<Well> wells, int line, String key) {
        List<Well> unused = wells.stream().filter(well -> !assay.uses(well)).toList();
        return unused.isEmpty()
                ? Optional.empty()
                : Optional.of(Notice.information(
                        new Place.InFile(assay.name(), "line " + line),
                        "found " + Means.words(unused) + " under '" + key
                                + "', not used on this plate, so that nothing changes; expected wells in use"));
    }

    private void fault(String text) {
        faults.add(Notice.error(assay.place(), text));
    }

    private void samplesHaveSlots() {
        Set<Integer> slots = new HashSet<>(assay.layout().slots());
        for (Sample sample : assay.samples().bySlot().values()) {
            if (!slots.contains(sample.slot())) {
                fault("the sample list has '" + sample.name() + "' in slot " + sample.slot() + ", but the layout '"
                        + assay.layout().name() + "' has no such slot; expected one of its slots"
                        + (slots.isEmpty() ? "" : ", " + ends(assay.layout().slots())));
            }
        }
    }

    private static String ends(List<Integer> slots) {
        return slots.get(0) + " to " + slots.get(slots.size() - 1);
    }

    private void wellsExist() {
        for (Run.Exclusion each : new HashSet<>(assay.exclusions().values())) {
            wellsExist(each.wells(), each.line(), "exclude");
        }
        for (Run.FinishedFrom each : new HashSet<>(assay.finishedFrom().values())) {
            wellsExist(each.wells(), each.line(), "finished-from");
        }
    }

    private void wellsExist(List<Well> wells, int line, String key) {
        PlateFormat format = assay.layout().format();
        List<Well> outside = wells.stream().filter(well -> !format.holds(well)).toList();
        if (!outside.isEmpty()) {
            faults.add(Notice.error(
                    new Place.InFile(assay.name(), "line " + line),
                    "found " + Means.words(outside) + " under '" + key + "', outside the plate of " + format.wells()
                            + "; expected A1 to " + format.last()));
        }
    }

    private void readingsFit() {
        for (Taken taken : assay.readings()) {
            readingsFit(taken);
        }
    }

    private void readingsFit(Taken taken) {
        PlateFormat format = assay.layout().format();
        ReadingSeries series = taken.series();
        List<Well> outside =
                series.wells().stream().filter(well -> !format.holds(well)).toList();
        if (!outside.isEmpty()) {
            fault(taken.name() + ": found readings of a plate of "
                    + series.format().wells() + " (up to "
                    + outside.get(outside.size() - 1) + "), but the layout '"
                    + assay.layout().name()
                    + "' is drawn for " + format.wells() + " wells; expected an export and a layout of the same plate");
            return;
        }
        List<Well> missing = assay.layout().where(content -> !(content instanceof Content.Unused)).stream()
                .filter(well -> !series.has(well) && !assay.exclusions().containsKey(well))
                .filter(well -> !isUnusedSlot(well))
                .toList();
        if (!missing.isEmpty()) {
            String size = series.format().equals(format)
                    ? ""
                    : " (the export looks like a plate of " + series.format().wells() + ", the layout is drawn for "
                            + format.wells() + ")";
            fault(taken.name() + ": found no reading of " + named(missing) + ", which the layout uses" + size
                    + "; expected a reading of every well in use, or 'exclude' with a reason");
        }
    }

    private boolean isUnusedSlot(Well well) {
        int slot = Traces.slotOf(assay.layout().at(well));
        return slot > 0 && assay.samples().in(slot).isEmpty();
    }

    private static String named(List<Well> wells) {
        return wells.size() <= NAMED
                ? Means.words(wells)
                : Means.words(wells.subList(0, NAMED)) + " and " + (wells.size() - NAMED) + " more wells";
    }

    private void readingsDiffer() {
        for (int i = 0; i < assay.readings().size(); i++) {
            for (int j = i + 1; j < assay.readings().size(); j++) {
                Taken one = assay.readings().get(i);
                Taken other = assay.readings().get(j);
                if (isSame(one.series(), other.series())) {
                    fault((one.name().equals(other.name())
                                    ? one.name() + " stands twice among the readings"
                                    : one.name() + " and " + other.name()
                                            + " hold the same readings, number for number")
                            + "; expected each export once");
                }
            }
        }
    }

    private static boolean isSame(ReadingSeries one, ReadingSeries other) {
        List<Well> wells = one.wells();
        if (!wells.equals(other.wells())) {
            return false;
        }
        for (Well well : wells) {
            if (one.size(well) != other.size(well)) {
                return false;
            }
            for (int i = 0; i < one.size(well); i++) {
                if (one.mark(well, i) != other.mark(well, i)
                        || one.mark(well, i) == tallywell.plate.Mark.NONE
                                && one.absorbance(well, i) != other.absorbance(well, i)) {
                    return false;
                }
            }
        }
        return true;
    }

    private void analytesAreKnown() {
        List<String> analytes = assay.method().steps().stream()
                .map(step -> step.analyte().name())
                .toList();
        Set<String> told = new HashSet<>();
        assay.layout().wells().forEach((well, content) -> {
            for (String name : quantities(content).byName().keySet()) {
                if (!name.isEmpty() && !analytes.contains(name) && told.add(name)) {
                    fault("the layout gives '" + content.word() + "' a quantity of '" + name
                            + "', which the method '" + assay.method().id() + "' does not measure; expected "
                            + String.join(", ", analytes));
                }
            }
        });
    }

    private static PerAnalyte quantities(Content content) {
        if (content instanceof Content.Standard standard) {
            return standard.level();
        }
        if (content instanceof Content.Control control) {
            return control.assigned();
        }
        return content instanceof Content.Spike spike ? spike.added() : PerAnalyte.none();
    }

    private void quantitiesConvert() {
        AssayMethod method = assay.method();
        for (Step step : method.steps()) {
            molarMassIsKnown(step);
            for (Sample sample : assay.samples().bySlot().values()) {
                convert(step, sample);
            }
            if (step.calibration() instanceof CalibrationRule.ByAbsorptivity) {
                continue;
            }
            boolean any = !assay.layout()
                    .where(content -> content instanceof Content.Standard standard
                            && standard.level().of(step.analyte().name()).isPresent())
                    .isEmpty();
            if (!any) {
                fault("the method '" + method.id() + "' calibrates "
                        + step.analyte().name() + " by "
                        + step.calibration().word() + ", but the layout '"
                        + assay.layout().name()
                        + "' has no standard of it; expected wells with the role 'standard'");
            }
        }
    }

    private void molarMassIsKnown(Step step) {
        if (step.analyte().molarMass().isPresent()) {
            return;
        }
        boolean needed = step.report().unit().kind() == Kind.AMOUNT_CONCENTRATION;
        for (Well well : assay.layout().format().all()) {
            Optional<Quantity> quantity =
                    quantities(assay.layout().at(well)).of(step.analyte().name());
            needed |= quantity.isPresent() && quantity.get().unit().kind() == Kind.AMOUNT_CONCENTRATION;
        }
        if (needed) {
            fault("the method '" + assay.method().id() + "' gives no molar mass of "
                    + step.analyte().name()
                    + ", but amounts in mmol/L or µmol/L need one; expected 'formula' or 'molar-mass' under 'analyte'");
        }
    }

    private void convert(Step step, Sample sample) {
        if (sample.solid().isEmpty()
                && step.report().unit().kind() == Kind.CONTENT
                && sample.densityGPerMl().isEmpty()) {
            fault(
                    "the sample '" + sample.name() + "' in slot " + sample.slot() + " is to be reported in "
                            + step.report().unit()
                            + ", which needs its density; expected 'density_g_per_mL' (liquid), or 'mass_g' and 'extract_mL' (solid)");
        }
        if (sample.volumeUl().isPresent()) {
            if (step.volumes().isEmpty()) {
                fault("the sample '" + sample.name() + "' in slot " + sample.slot()
                        + " has a volume of its own, but the method '"
                        + assay.method().id()
                        + "' gives no volumes to compare it with; expected 'volumes' in the step");
            } else if (sample.volumeUl().getAsDouble() > step.volumes().get().beforeTriggerUl()) {
                fault("the sample '" + sample.name() + "' in slot " + sample.slot() + " has a volume of "
                        + tallywell.quantity.Numbers.plain(sample.volumeUl().getAsDouble())
                        + " µL, more than the whole volume before the trigger; expected at most "
                        + tallywell.quantity.Numbers.plain(step.volumes().get().beforeTriggerUl()) + " µL");
            }
        }
    }
}
