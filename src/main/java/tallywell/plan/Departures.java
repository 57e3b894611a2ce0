package tallywell.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tallywell.method.PlannedRun;
import tallywell.method.Sample;
import tallywell.method.SampleList;
import tallywell.quantity.Numbers;

/** Where a run departs from its plan. */
public final class Departures {
    private Departures() {}

    /**
     * Compares; one text for each departure, none if the run followed its plan.
     *
     * @param plan what was planned
     * @param method id of the method of the run
     * @param layout name of the layout of the run
     * @param samples what stood in the slots
     */
    public static List<String> of(PlannedRun plan, String method, String layout, SampleList samples) {
        List<String> departures = new ArrayList<>();
        if (!plan.method().equals(method)) {
            departures.add(
                    "the plan is for the method '" + plan.method() + "', the run was done with '" + method + "'");
        }
        if (!plan.layout().equals(layout)) {
            departures.add("the plan is for the layout '" + plan.layout() + "', the run has '" + layout + "'");
        }
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
        return departures;
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
