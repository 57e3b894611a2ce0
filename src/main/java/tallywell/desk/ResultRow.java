package tallywell.desk;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.assess.Assessment;
import tallywell.assess.BasisWords;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.budget.ResultBudget;
import tallywell.plate.Well;
import tallywell.statement.Stated;
import tallywell.statement.Words;
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
 * @param dilution before pipetting
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
        String dilution,
        Verdict verdict,
        String next) {
    private static final double MILLI = 1000;

    /** Where it stands on the plate. */
    public List<Well> wells() {
        return result.wells();
    }

    /** The lines of an assessment, in its order. */
    public static List<ResultRow> of(Analysis analysis, Assessment assessment, Shown shown) {
        List<ResultRow> rows = new ArrayList<>();
        BasisWords basis = new BasisWords(assessment);
        for (int i = 0; i < assessment.judgements().size(); i++) {
            Judgement judgement = assessment.judgements().get(i);
            boolean pooled = assessment
                    .budget()
                    .repeatabilities()
                    .get(judgement.result().step() - 1)
                    .isPresent();
            rows.add(row(analysis, judgement, basis, pooled, shown));
        }
        assessment.differences().forEach(each -> rows.add(difference(each, shown)));
        return rows;
    }

    /** A result by difference; its wells are those of both halves. */
    private static ResultRow difference(JudgedDifference judged, Shown shown) {
        List<Well> wells = new ArrayList<>(judged.difference().free().wells());
        wells.addAll(judged.difference().total().wells());
        Result result = judged.row().of(wells);
        Stated stated = Stated.of(judged);
        return new ResultRow(
                result,
                result.word() + "  " + result.name() + " · " + result.analyte(),
                shown.marked(stated.value()),
                shown.marked(stated.expanded()),
                "",
                "",
                "",
                shown.plain(result.dilution().factor()),
                judged.verdict(),
                because(shown.marked(Words.advice(judged)), Words.brief(result.flags())));
    }

    private static ResultRow row(
            Analysis analysis, Judgement judgement, BasisWords basis, boolean pooled, Shown shown) {
        Optional<ResultBudget> budget = judgement.budget();
        Result result = judgement.result();
        String several = analysis.steps().size() > 1 ? " · " + result.analyte() : "";
        String name = switch (result.role()) {
            case "sample" -> result.word() + "  " + result.name();
            case "spike" -> "spike on " + result.name();
            default -> result.name();
        };
        Stated stated = Stated.of(analysis, judgement);
        return new ResultRow(
                result,
                (name.equals(result.word() + "  " + result.word()) ? result.word() : name) + several,
                shown.marked(stated.value()),
                shown.marked(stated.expanded()),
                result.cvPercent().isPresent() ? shown.fixed(result.cvPercent().getAsDouble(), 1) + " %" : "",
                creep(analysis, result, shown),
                shown.fixed(result.netDeltaA(), 3),
                shown.plain(result.dilution().factor()),
                judgement.verdict(),
                next(judgement, pooled && budget.isPresent(), basis.row(BasisWords.of(judgement)), shown));
    }

    /** The value with its unit; words where there is no number. */
    public String valueWithUnit() {
        boolean isNumber = value.chars().anyMatch(Character::isDigit);
        return isNumber ? value + " " + result.unit() : value;
    }

    /** Whether somebody has to look at it, or do something about it. */
    public boolean needsAttention() {
        return verdict != Verdict.REPORT;
    }

    private static String creep(Analysis analysis, Result result, Shown shown) {
        List<WellResult> wells = analysis.stepOf(result)
                .where(well -> well.used() && result.wells().contains(well.well()));
        OptionalDouble mean = wells.stream()
                .map(WellResult::trace)
                .flatMapToDouble(trace -> trace.creepPerMin().stream())
                .average();
        if (mean.isPresent()) {
            return shown.fixed(MILLI * mean.getAsDouble(), 1);
        }
        // An empty cell would look like no creep.
        return result.netDeltaA().isPresent() ? "not measured" : "";
    }

    private static String next(Judgement judgement, boolean pooled, String scatter, Shown shown) {
        Result result = judgement.result();
        List<String> why = new ArrayList<>();
        result.recoveryPercent().ifPresent(recovery -> why.add("recovery " + shown.fixed(recovery, 1) + " %"));
        EnumSet<Flag> told = EnumSet.noneOf(Flag.class);
        result.flags().stream()
                .filter(flag -> Badges.of(flag).isPresent() || flag == Flag.EXCLUDED)
                .forEach(told::add);
        if (!told.isEmpty()) {
            why.add(Words.brief(told));
        }
        if (result.n() == 1 && pooled && result.value().isPresent()) {
            why.add("one well: ± U is from the scatter of the other replicates on the plate");
        }
        if (!scatter.isEmpty()) {
            why.add(scatter);
        }
        String advice = shown.marked(Words.advice(judgement));
        return because(advice, String.join("; ", why));
    }

    private static String because(String advice, String because) {
        return advice.isEmpty() || because.isEmpty() ? advice + because : advice + ": " + because;
    }
}
