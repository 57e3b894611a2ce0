package tallywell.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tallywell.assess.Advice;
import tallywell.assess.Judgement;
import tallywell.trace.Change;
import tallywell.workup.Flag;
import tallywell.workup.WellResult;

/** What stands above the picture of a trace. */
final class TraceWords {
    /** Decimals of ΔA above and in a chart. */
    static final int DELTA_A_DECIMALS = 4;

    private final StepTraces step;
    private final WellResult well;

    TraceWords(StepTraces step, WellResult well) {
        this.step = step;
        this.well = well;
    }

    /** Well, content and analyte. */
    String title() {
        return well.well() + " · " + step.contentOf(well) + " · " + step.analyte();
    }

    /** The numbers of the trace. */
    String numbers() {
        if (well.deltaA().isEmpty()) {
            return "No ΔA could be found.";
        }
        Change change = well.trace().change().orElseThrow();
        List<String> parts = new ArrayList<>();
        parts.add("ΔA " + Ink.number(well.deltaA().getAsDouble(), DELTA_A_DECIMALS)
                + uncertain(change.uDeltaA(), 1, DELTA_A_DECIMALS));
        if (change.creepPerMin().isPresent()) {
            double creep = 1000 * change.creepPerMin().getAsDouble();
            parts.add("creep " + Ink.number(creep, 2) + " mA/min" + uncertain(change.uCreepPerMin(), 1000, 2));
        }
        change.finished()
                .ifPresent(part -> parts.add("line through " + part.readings() + " readings from "
                        + Ink.number(
                                well.trace().readings().after().get(part.from()).timeS() / 60, 1) + " min"));
        change.curve().ifPresent(curve -> parts.add(curve.law()));
        return String.join(" · ", parts);
    }

    private static String uncertain(OptionalDouble u, double factor, int decimals) {
        return u.isPresent() ? " (u " + Ink.number(factor * u.getAsDouble(), decimals) + ")" : "";
    }

    /** The flags of the well in words. */
    String flags() {
        String words = StepTraces.flagsOf(well).stream().map(Flag::text).collect(Collectors.joining("; "));
        return words.isEmpty() ? "Nothing is flagged in this well." : "Flagged: " + words + ".";
    }

    /** What the result that the well is part of came to; empty for blanks and standards. */
    String verdict() {
        Optional<Judgement> judged = step.judged(well.well());
        if (judged.isEmpty()) {
            return "";
        }
        Advice advice = judged.get().advice();
        String next = advice instanceof Advice.Dilute dilute
                ? " at dilution " + dilute.dilution()
                : advice instanceof Advice.ReadLonger ? ", reading longer" : "";
        return "Verdict on " + judged.get().result().name() + ": "
                + judged.get().verdict().word() + next + ".";
    }
}
