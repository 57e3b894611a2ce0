package tallywell.method;

import java.util.List;
import java.util.OptionalDouble;
import tallywell.quantity.Dilution;

/**
 * What a plan file keeps of a plan, to compare the run with.
 *
 * @param method id of the method
 * @param layout name of the layout
 * @param wells how many wells are filled
 * @param samples one a slot
 * @param prepared standards and controls, by word; empty for a plan made before they were kept
 * @param steps volumes and times, one a step; empty for a plan made before they were kept
 */
public record PlannedRun(
        String method, String layout, int wells, List<Slot> samples, List<Prepared> prepared, List<StepPlan> steps) {
    /** Keeps copies that cannot change. */
    public PlannedRun {
        samples = List.copyOf(samples);
        prepared = List.copyOf(prepared);
        steps = List.copyOf(steps);
    }

    /**
     * A standard or control as planned.
     *
     * @param word of the layout
     * @param what level of the standard, or dilution of the control, in words
     */
    public record Prepared(String word, String what) {}

    /**
     * A step as planned.
     *
     * @param analyte that it measures
     * @param sampleUl sample in the well in µL, if the method says
     * @param totalUl liquid in the well in the end in µL, if the method says
     * @param afterS when it is read after its trigger, in s, if the method says
     */
    public record StepPlan(String analyte, OptionalDouble sampleUl, OptionalDouble totalUl, OptionalDouble afterS) {
        /** What a method plans. */
        public static StepPlan of(Step step) {
            return new StepPlan(
                    step.analyte().name(),
                    step.volumes().isPresent()
                            ? OptionalDouble.of(step.volumes().get().sampleUl())
                            : OptionalDouble.empty(),
                    step.volumes().isPresent()
                            ? OptionalDouble.of(step.volumes().get().afterTriggerUl())
                            : OptionalDouble.empty(),
                    step.timing().afterS());
        }
    }

    /**
     * One sample as planned.
     *
     * @param slot number in the layout
     * @param sample name
     * @param dilution planned
     * @param volumeUl own volume in the well in µL, if it has one
     * @param treatment free, total or neither
     */
    public record Slot(int slot, String sample, Dilution dilution, OptionalDouble volumeUl, Treatment treatment) {}
}
