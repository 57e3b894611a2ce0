package tallywell.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import tallywell.method.AssayMethod;
import tallywell.method.DilutionSeries;
import tallywell.method.Run;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.workup.Assay;
import tallywell.workup.FinishedChoices;

/**
 * A run as far as it has come: any part may still be missing.
 *
 * @param title as reports print it, or empty
 * @param operator who did the work, or empty
 * @param method how it was done
 * @param layout what stands where
 * @param samples what is in the slots; without it every slot counts at dilution 1
 * @param readings in the order they were taken
 * @param exclusions wells that do not count
 * @param finishedFrom the analyst's own choices of the finished part
 * @param file the run file, once there is one
 * @param bench what the run says about its planning
 */
public record RunDraft(
        String title,
        String operator,
        Optional<Origin<AssayMethod>> method,
        Optional<Origin<Layout>> layout,
        Optional<Origin<SampleList>> samples,
        List<Intake> readings,
        List<Run.Exclusion> exclusions,
        List<Run.FinishedFrom> finishedFrom,
        Optional<Path> file,
        Bench bench) {
    /** A run of which nothing is known. */
    public static final RunDraft EMPTY = new RunDraft(
            "",
            "",
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            List.of(),
            List.of(),
            Optional.empty(),
            Bench.NONE);

    /** Keeps copies that cannot change. */
    public RunDraft {
        readings = List.copyOf(readings);
        exclusions = List.copyOf(exclusions);
        finishedFrom = List.copyOf(finishedFrom);
    }

    /** Whether there is enough to work up. */
    public boolean isComplete() {
        return needs().isEmpty();
    }

    /** What is still needed. */
    public List<Need> needs() {
        List<Need> needs = new ArrayList<>();
        if (method.isEmpty()) {
            needs.add(Need.METHOD);
        }
        if (layout.isEmpty()) {
            needs.add(Need.LAYOUT);
        }
        if (readings.isEmpty()) {
            needs.add(Need.READINGS);
        } else if (readings.stream().noneMatch(Intake::triggerBefore)) {
            boolean inside =
                    readings.stream().anyMatch(reading -> !reading.triggerAtS().isEmpty());
            boolean series = readings.stream()
                    .anyMatch(reading -> Readings.length(reading.block().series()) > 3);
            if (!inside) {
                needs.add(series && readings.size() == 1 ? Need.TRIGGER_TIME : Need.AFTER);
            }
        }
        return List.copyOf(needs);
    }

    /** Something that is still needed. */
    public enum Need {
        /** How it was done. */
        METHOD,
        /** What stands where. */
        LAYOUT,
        /** Any readings. */
        READINGS,
        /** The reading after the trigger. */
        AFTER,
        /** When the trigger was added in a series. */
        TRIGGER_TIME
    }

    /** The plate: that of the layout, else that of the readings, else one of 96 wells. */
    public PlateFormat format() {
        return layout.map(each -> each.value().format())
                .or(() -> readings.stream()
                        .findFirst()
                        .map(each -> each.block().series().format()))
                .orElse(PlateFormat.P96);
    }

    /** The samples, from the list or one a slot. */
    public SampleList sampleList() {
        return samples.map(Origin::value)
                .orElseGet(() -> SampleList.plain(
                        layout.map(each -> each.value().slots()).orElse(List.of())));
    }

    /**
     * What is worked up; only for a run that is complete.
     *
     * @throws InputException if a run file that said the same would be refused
     */
    Assay assay() throws InputException {
        String name = file.map(Path::toString).orElse("this run");
        return new Assay(
                name,
                "",
                title,
                operator,
                method.orElseThrow().value(),
                layout.orElseThrow().value(),
                sampleList(),
                readings.stream().map(Intake::taken).toList(),
                excluded(),
                FinishedChoices.byWell(name, finishedFrom),
                DilutionSeries.of(bench.planning()));
    }

    /** The excluded wells with what was said of them. */
    public Map<Well, Run.Exclusion> excluded() {
        return Run.Exclusion.byWell(exclusions);
    }

    /** The same with wells excluded. */
    public RunDraft exclude(List<Well> wells, String reason, String by) {
        List<Run.Exclusion> more = new ArrayList<>(putBack(wells).exclusions());
        more.add(new Run.Exclusion(wells, reason, by, 0));
        return with(more, finishedFrom);
    }

    /** The same with wells put back. */
    public RunDraft putBack(List<Well> wells) {
        List<Run.Exclusion> fewer = new ArrayList<>();
        for (Run.Exclusion each : exclusions) {
            List<Well> left = without(each.wells(), wells::contains);
            if (!left.isEmpty()) {
                fewer.add(new Run.Exclusion(left, each.reason(), each.by(), 0));
            }
        }
        return with(fewer, finishedFrom);
    }

    /** The same with the finished part of wells set by hand. */
    public RunDraft finishFrom(List<Well> wells, double timeS, String reason, String by) {
        List<Run.FinishedFrom> more = new ArrayList<>(finishByRule(wells).finishedFrom());
        more.add(new Run.FinishedFrom(wells, timeS, reason, by, 0));
        return with(exclusions, more);
    }

    /** The same with the finished part of wells found by the program. */
    public RunDraft finishByRule(List<Well> wells) {
        List<Run.FinishedFrom> fewer = new ArrayList<>();
        for (Run.FinishedFrom each : finishedFrom) {
            List<Well> left = without(each.wells(), wells::contains);
            if (!left.isEmpty()) {
                fewer.add(new Run.FinishedFrom(left, each.timeS(), each.reason(), each.by(), 0));
            }
        }
        return with(exclusions, fewer);
    }

    private static List<Well> without(List<Well> wells, Predicate<Well> gone) {
        return wells.stream().filter(gone.negate()).toList();
    }

    private RunDraft with(List<Run.Exclusion> excluded, List<Run.FinishedFrom> finished) {
        return new RunDraft(title, operator, method, layout, samples, readings, excluded, finished, file, bench);
    }

    /** The same with another method. */
    public RunDraft withMethod(Origin<AssayMethod> other) {
        return new RunDraft(
                title, operator, Optional.of(other), layout, samples, readings, exclusions, finishedFrom, file, bench);
    }

    /** The same with another layout. */
    public RunDraft withLayout(Origin<Layout> other) {
        return new RunDraft(
                title, operator, method, Optional.of(other), samples, readings, exclusions, finishedFrom, file, bench);
    }

    /** The same with other samples. */
    public RunDraft withSamples(Optional<Origin<SampleList>> other) {
        return new RunDraft(title, operator, method, layout, other, readings, exclusions, finishedFrom, file, bench);
    }

    /** The same with other readings. */
    public RunDraft withReadings(List<Intake> other) {
        return new RunDraft(title, operator, method, layout, samples, other, exclusions, finishedFrom, file, bench);
    }

    /**
     * The same with the trigger of a step moved in a single series.
     *
     * @param step from 1
     * @param timeS in s of the file's own time
     */
    RunDraft triggerAt(int step, double timeS) {
        Intake series = readings.get(0);
        List<Double> triggers = new ArrayList<>(series.triggerAtS());
        if (triggers.isEmpty()) {
            triggers.add(timeS);
        } else {
            triggers.set(step - 1, timeS);
        }
        List<Intake> other = new ArrayList<>(readings);
        other.set(0, series.withTriggersAt(triggers));
        return withReadings(other);
    }

    /** The same under another title. */
    public RunDraft withTitle(String other) {
        return new RunDraft(other, operator, method, layout, samples, readings, exclusions, finishedFrom, file, bench);
    }

    /** The same done by somebody else. */
    public RunDraft withOperator(String other) {
        return new RunDraft(title, other, method, layout, samples, readings, exclusions, finishedFrom, file, bench);
    }

    /** The same with other words about its planning. */
    RunDraft withBench(Bench other) {
        return new RunDraft(title, operator, method, layout, samples, readings, exclusions, finishedFrom, file, other);
    }

    /** Method and layout only, for other files of one's own. */
    public RunDraft onlyMethodAndLayout() {
        return new RunDraft(
                "",
                operator,
                method,
                layout,
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                bench.ofAnotherRun());
    }
}
