package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.assess.Advice;
import tallywell.assess.Assessment;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.budget.ResultBudget;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.Result;
import tallywell.workup.WellResult;

/**
 * One line of the results.
 *
 * @param result the result
 * @param name of the sample, with the slot it stands in
 * @param value rounded to its uncertainty; words if there is none
 * @param uncertainty expanded, or empty
 * @param cv coefficient of variation, or empty
 * @param creep mean creep of its wells in mA/min, or empty
 * @param deltaA mean net ΔA, or empty
 * @param verdict what to do with it
 * @param next what to do next, in words
 */
public record ResultRow(
        Result result,
        String name,
        String value,
        String uncertainty,
        String cv,
        String creep,
        String deltaA,
        Verdict verdict,
        String next) {
    private static final int PLAIN_DIGITS = 4;

    /** Where it stands on the plate. */
    public List<Well> wells() {
        return result.wells();
    }

    /** The lines of an assessment, in its order. */
    public static List<ResultRow> of(Analysis analysis, Assessment assessment, Shown shown) {
        List<ResultRow> rows = new ArrayList<>();
        for (int i = 0; i < assessment.judgements().size(); i++) {
            rows.add(row(
                    analysis,
                    assessment.judgements().get(i),
                    assessment.budget().results().get(i),
                    shown));
        }
        return rows;
    }

    private static ResultRow row(Analysis analysis, Judgement judgement, Optional<ResultBudget> budget, Shown shown) {
        Result result = judgement.result();
        String several = analysis.steps().size() > 1 ? " · " + result.analyte() : "";
        String name = switch (result.role()) {
            case "sample" -> result.word() + "  " + result.name();
            case "spike" -> "spike on " + result.name();
            default -> result.name();
        };
        OptionalDouble expanded =
                budget.isPresent() ? OptionalDouble.of(budget.get().expandedUncertainty()) : OptionalDouble.empty();
        return new ResultRow(
                result,
                (name.equals(result.word() + "  " + result.word()) ? result.word() : name) + several,
                value(result, expanded, shown),
                expanded.isPresent() && result.value().isPresent()
                        ? shown.fixed(expanded.getAsDouble(), decimals(expanded.getAsDouble()))
                        : "",
                result.cvPercent().isPresent() ? shown.fixed(result.cvPercent().getAsDouble(), 1) + " %" : "",
                creep(analysis, result, shown),
                shown.fixed(result.netDeltaA(), 3),
                judgement.verdict(),
                next(judgement, shown));
    }

    /** As many decimals as the uncertainty with two digits has (GUM 7.2.6). */
    private static String value(Result result, OptionalDouble expanded, Shown shown) {
        if (result.value().isEmpty()) {
            return result.flags().contains(Flag.ABOVE_STANDARDS)
                            || result.flags().contains(Flag.OVER_RANGE)
                    ? "too high"
                    : result.flags().contains(Flag.BELOW_STANDARDS) ? "too low" : "none";
        }
        double value = result.value().getAsDouble();
        return expanded.isPresent() && expanded.getAsDouble() > 0
                ? shown.fixed(value, decimals(expanded.getAsDouble()))
                : shown.rounded(value, PLAIN_DIGITS);
    }

    static int decimals(double uncertainty) {
        if (!(uncertainty > 0)) {
            return PLAIN_DIGITS;
        }
        return (int) Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(uncertainty))));
    }

    private static String creep(Analysis analysis, Result result, Shown shown) {
        OptionalDouble mean =
                analysis
                        .stepOf(result)
                        .where(well -> well.used() && result.wells().contains(well.well()))
                        .stream()
                        .map(WellResult::trace)
                        .flatMapToDouble(trace -> trace.creepPerMin().stream())
                        .average();
        return mean.isPresent() ? shown.fixed(1000 * mean.getAsDouble(), 1) : "";
    }

    private static String next(Judgement judgement, Shown shown) {
        List<String> words = new ArrayList<>();
        if (judgement.advice() instanceof Advice.Dilute dilute) {
            words.add(
                    "measure again at dilution " + shown.plain(dilute.dilution().factor()));
        } else if (judgement.advice() instanceof Advice.ReadLonger) {
            words.add("measure again and read longer");
        } else if (judgement.advice() instanceof Advice.Repeat) {
            words.add("measure again");
        }
        List<String> why = new ArrayList<>();
        for (Flag flag : judgement.result().flags()) {
            if (Badges.of(flag).isPresent() || flag == Flag.EXCLUDED) {
                why.add(flag.text());
            }
        }
        judgement
                .result()
                .recoveryPercent()
                .ifPresent(recovery -> why.add(0, "recovery " + shown.fixed(recovery, 1) + " %"));
        if (!why.isEmpty()) {
            words.add(String.join("; ", why));
        }
        return String.join(": ", words);
    }
}
