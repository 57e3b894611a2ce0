package tallywell.method;

import java.util.List;
import java.util.Optional;

/**
 * How an assay is done and worked up.
 *
 * @param id short name, as runs call it
 * @param title as reports print it
 * @param source where its numbers come from, empty if it does not say
 * @param steps one a trigger, at least one
 * @param lightPath the way of the light, if the method says
 * @param triggerDilution what the added volume does to the absorbance before
 * @param before how the absorbance before follows from the baseline
 * @param cautions what to watch out for on the bench
 * @param uncertainty what it says about uncertainty
 * @param bench reagents, usual dilutions and volumes
 * @param differences analytes that follow from a result after a treatment less the one before
 * @param repeats how results of one sample from several runs become one, if the method says
 */
public record AssayMethod(
        String id,
        String title,
        String source,
        List<Step> steps,
        Optional<LightPath> lightPath,
        TriggerDilution triggerDilution,
        Before before,
        List<String> cautions,
        UncertaintyRule uncertainty,
        Bench bench,
        List<Difference> differences,
        Optional<RepeatRule> repeats) {
    /** Keeps copies that cannot change. */
    public AssayMethod {
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
        differences = List.copyOf(differences);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("steps must not be empty");
        }
    }

    /** A method that says nothing for the bench and gives nothing by difference. */
    public AssayMethod(
            String id,
            String title,
            String source,
            List<Step> steps,
            Optional<LightPath> lightPath,
            TriggerDilution triggerDilution,
            Before before,
            List<String> cautions,
            UncertaintyRule uncertainty) {
        this(
                id,
                title,
                source,
                steps,
                lightPath,
                triggerDilution,
                before,
                cautions,
                uncertainty,
                Bench.NONE,
                List.of(),
                Optional.empty());
    }

    /** The same method with something else said about uncertainty. */
    public AssayMethod withUncertainty(UncertaintyRule other) {
        return new AssayMethod(
                id,
                title,
                source,
                steps,
                lightPath,
                triggerDilution,
                before,
                cautions,
                other,
                bench,
                differences,
                repeats);
    }

    /** How many triggers a run has, over all steps. */
    public int triggers() {
        return steps.stream().mapToInt(step -> step.signalFormula().triggers()).sum();
    }
}
