package tallywell.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tallywell.method.AssayMethod;
import tallywell.method.PlannedRun;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.method.Step;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.quantity.Numbers;

/** Where a run departs from its plan. */
public final class Departures {
    /** Part of the planned time by which a last reading may be early and still be as planned (own choice). */
    private static final double EARLY = 0.1;

    private static final double S_PER_MIN = 60;

    private Departures() {}

    /**
     * A run as it was done.
     *
     * @param method how
     * @param layout what stood where
     * @param samples what stood in the slots
     * @param lastReadS when each step was read last, in s from its trigger; empty where nothing tells
     */
    public record Done(AssayMethod method, Layout layout, SampleList samples, List<OptionalDouble> lastReadS) {
        /** Keeps a copy that cannot change. */
        public Done {
            lastReadS = List.copyOf(lastReadS);
        }
    }

    /** Compares; one text for each departure, none if the run followed its plan. */
    public static List<String> of(PlannedRun plan, Done run) {
        List<String> departures = new ArrayList<>();
        String method = run.method().id();
        String layout = run.layout().name();
        SampleList samples = run.samples();
        if (!plan.method().equals(method)) {
            departures.add(
                    "the plan is for the method '" + plan.method() + "', the run was done with '" + method + "'");
        }
        if (!plan.layout().equals(layout)) {
            departures.add("the plan is for the layout '" + plan.layout() + "', the run has '" + layout + "'");
        }
        samples(plan, samples, departures);
        if (plan.layout().equals(layout)) {
            prepared(plan, run.layout(), departures);
            wells(plan, run, departures);
        }
        if (plan.method().equals(method)) {
            steps(plan, run, departures);
        }
        return departures;
    }

    private static void samples(PlannedRun plan, SampleList samples, List<String> departures) {
        Map<Integer, PlannedRun.Slot> planned = new HashMap<>();
        plan.samples().forEach(each -> planned.put(each.slot(), each));
        for (PlannedRun.Slot each : plan.samples()) {
            samples.in(each.slot())
                    .ifPresentOrElse(
                            sample -> departures.addAll(slot(each, sample)),
                            () -> departures.add("slot " + each.slot() + " was planned for '" + each.sample()
                                    + "' and is not in the sample list"));
        }
        for (Sample sample : samples.bySlot().values()) {
            if (!planned.containsKey(sample.slot())) {
                departures.add("slot " + sample.slot() + " holds '" + sample.label() + "', which was not planned");
            }
        }
    }

    /** Standards with their levels and controls with their dilutions, as a layout has them. */
    static List<PlannedRun.Prepared> prepared(Layout layout) {
        Map<String, String> byWord = new TreeMap<>();
        layout.wells().forEach((well, content) -> {
            if (content instanceof Content.Standard standard) {
                byWord.put(content.word(), StandardSeries.words(standard.level()));
            } else if (content instanceof Content.Control control) {
                byWord.put(content.word(), "dilution " + control.dilution());
            }
        });
        return byWord.entrySet().stream()
                .map(each -> new PlannedRun.Prepared(each.getKey(), each.getValue()))
                .toList();
    }

    private static void prepared(PlannedRun plan, Layout layout, List<String> departures) {
        if (plan.prepared().isEmpty()) {
            return;
        }
        Map<String, String> now = new TreeMap<>();
        prepared(layout).forEach(each -> now.put(each.word(), each.what()));
        for (PlannedRun.Prepared each : plan.prepared()) {
            String found = now.remove(each.word());
            if (found == null) {
                departures.add("'" + each.word() + "' (" + each.what() + ") was planned and is not in the layout");
            } else if (!found.equals(each.what())) {
                departures.add("'" + each.word() + "' was planned with " + each.what() + ", the layout says " + found);
            }
        }
        now.forEach(
                (word, what) -> departures.add("'" + word + "' (" + what + ") is in the layout and was not planned"));
    }

    /** Wells that are filled, samples as far as the list has them. */
    private static void wells(PlannedRun plan, Done run, List<String> departures) {
        Set<Integer> listed = run.samples().bySlot().keySet();
        Set<Integer> planned =
                plan.samples().stream().map(PlannedRun.Slot::slot).collect(Collectors.toSet());
        if (!listed.equals(planned)) {
            // Then the slots themselves have been told already.
            return;
        }
        int wells =
                run.layout().where(content -> Planner.isFilled(content, listed)).size();
        if (wells != plan.wells()) {
            departures.add("the plan fills " + plan.wells() + " wells, the run " + wells);
        }
    }

    private static void steps(PlannedRun plan, Done run, List<String> departures) {
        List<Step> steps = run.method().steps();
        for (int i = 0; i < Math.min(plan.steps().size(), steps.size()); i++) {
            PlannedRun.StepPlan planned = plan.steps().get(i);
            PlannedRun.StepPlan now = PlannedRun.StepPlan.of(steps.get(i));
            String step = "step '" + planned.analyte() + "'";
            if (!planned.sampleUl().equals(now.sampleUl())) {
                departures.add(step + " was planned with " + volume(planned.sampleUl())
                        + " of sample in a well, the method says " + volume(now.sampleUl()));
            }
            if (!planned.totalUl().equals(now.totalUl())) {
                departures.add(step + " was planned with " + volume(planned.totalUl())
                        + " in a well in the end, the method says " + volume(now.totalUl()));
            }
            OptionalDouble read = i < run.lastReadS().size() ? run.lastReadS().get(i) : OptionalDouble.empty();
            if (planned.afterS().isPresent()
                    && read.isPresent()
                    && read.getAsDouble() < planned.afterS().getAsDouble() * (1 - EARLY)) {
                departures.add(step + " was planned to be read " + minutes(planned.afterS())
                        + " min after its trigger, the last reading is " + minutes(read) + " min after it");
            }
        }
    }

    private static String minutes(OptionalDouble seconds) {
        return Numbers.brief(seconds.orElse(0) / S_PER_MIN, 3);
    }

    private static List<String> slot(PlannedRun.Slot planned, Sample sample) {
        List<String> departures = new ArrayList<>();
        String slot = "slot " + sample.slot() + " ('" + sample.label() + "')";
        if (!planned.sample().equals(sample.name())) {
            departures.add(slot + " was planned for '" + planned.sample() + "'");
        }
        if (planned.treatment() != sample.treatment()) {
            departures.add(slot + " was planned as " + word(planned.treatment().word()) + ", the list says "
                    + word(sample.treatment().word()));
        }
        if (planned.dilution().factor() != sample.dilution().factor()) {
            departures.add(
                    slot + " was planned at dilution " + planned.dilution() + ", the list says " + sample.dilution());
        }
        if (!planned.volumeUl().equals(sample.volumeUl())) {
            departures.add(slot + " was planned with " + volume(planned.volumeUl()) + ", the list says "
                    + volume(sample.volumeUl()));
        }
        return departures;
    }

    private static String word(String treatment) {
        return treatment.isEmpty() ? "untreated" : treatment;
    }

    private static String volume(OptionalDouble volume) {
        return volume.isPresent() ? Numbers.plain(volume.getAsDouble()) + " µL" : "the volume of the method";
    }
}
