package tallywell.chart;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.assess.Assessment;
import tallywell.assess.Judgement;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellReadings;
import tallywell.workup.WellResult;

/**
 * One step of a plate, as its pictures show it.
 *
 * @param analysis the plate, worked up
 * @param assessment what to think of it
 * @param step which step, from 1
 * @param analyte what it measures
 * @param wavelengthNm where it was read, in nm, if known
 */
public record StepTraces(
        Analysis analysis, Assessment assessment, int step, String analyte, OptionalDouble wavelengthNm) {
    /** Fewer readings than these after the trigger are no trace. */
    private static final int FEWEST = 3;

    /** Refuses a step that the plate does not have. */
    public StepTraces {
        if (!(step >= 1 && step <= analysis.steps().size())) {
            throw new IllegalArgumentException(
                    "step must be 1 to " + analysis.steps().size() + " but was " + step);
        }
    }

    /** Whether a well has readings over time: three or more after the trigger, with times. */
    public static boolean isTrace(WellResult well) {
        WellReadings readings = well.trace().readings();
        return readings.isTimed() && DrawnTrace.count(readings) >= FEWEST;
    }

    /** Whether any well has a trace. */
    public boolean hasTraces() {
        return wells().stream().anyMatch(StepTraces::isTrace);
    }

    /** Every well in use, in row order. */
    public List<WellResult> wells() {
        return worked().wells();
    }

    /** The wells with a trace and something special about it, in row order. */
    public List<WellResult> flagged() {
        return worked().where(well -> isTrace(well) && !flagsOf(well).isEmpty());
    }

    /** What is special about a well; that a standard reads beyond the standards is no news of it. */
    public static Set<Flag> flagsOf(WellResult well) {
        EnumSet<Flag> flags = EnumSet.noneOf(Flag.class);
        flags.addAll(well.flags());
        if (well.content() instanceof Content.Standard) {
            flags.removeAll(EnumSet.of(Flag.BELOW_STANDARDS, Flag.ABOVE_STANDARDS));
        }
        return Collections.unmodifiableSet(flags);
    }

    /** What was measured, as an axis says it. */
    public String absorbance() {
        return absorbance(wavelengthNm);
    }

    /** What is measured at a wavelength in nm, as an axis says it. */
    public static String absorbance(OptionalDouble wavelengthNm) {
        return wavelengthNm.isPresent()
                ? "absorbance, " + Numbers.plain(wavelengthNm.getAsDouble()) + " nm"
                : "absorbance";
    }

    /** What is in a well, in words. */
    public String contentOf(WellResult well) {
        Content content = well.content();
        if (content instanceof Content.Standard standard) {
            return "standard"
                    + standard.level().of(analyte).map(level -> " " + level).orElse("");
        }
        if (content instanceof Content.SampleBlank blank) {
            return "blank of the sample in slot " + blank.of();
        }
        String name = judged(well.well()).map(each -> each.result().name()).orElse("");
        return switch (content.role()) {
            case "sample" -> name.equals(content.word()) ? "sample " + name : name;
            case "control" -> "control " + name;
            case "spike" -> name + " with a spike";
            default -> content.role();
        };
    }

    /** What the result that a well is part of came to. */
    Optional<Judgement> judged(Well well) {
        return assessment.judgements().stream()
                .filter(each ->
                        each.result().step() == step && each.result().wells().contains(well))
                .findFirst();
    }

    private StepAnalysis worked() {
        return analysis.steps().get(step - 1);
    }
}
