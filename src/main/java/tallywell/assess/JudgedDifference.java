package tallywell.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.budget.DifferenceBudget;
import tallywell.budget.PlateBudget;
import tallywell.budget.ResultBudget;
import tallywell.workup.Analysis;
import tallywell.workup.DifferenceResult;

/**
 * A result by difference with what to do about it: it can stand where both results that it follows from can.
 *
 * @param difference the result
 * @param budget how sure it is, where both results have a budget
 * @param verdict the worse of the two
 * @param advice that of the total where it has one, else that of the free
 */
public record JudgedDifference(
        DifferenceResult difference, Optional<DifferenceBudget> budget, Verdict verdict, Advice advice) {
    static List<JudgedDifference> of(List<Judgement> judgements, PlateBudget budget) {
        Analysis analysis = budget.analysis();
        List<JudgedDifference> judged = new ArrayList<>();
        for (DifferenceResult each : analysis.differences()) {
            int total = analysis.results().indexOf(each.total());
            int free = analysis.results().indexOf(each.free());
            Judgement one = judgements.get(total);
            Judgement other = judgements.get(free);
            Optional<ResultBudget> all = budget.results().get(total);
            Optional<ResultBudget> some = budget.results().get(free);
            // Judging adds flags to the results; those of the difference are the same.
            DifferenceResult flagged =
                    new DifferenceResult(each.rule(), one.result(), other.result(), each.factor(), each.name());
            judged.add(new JudgedDifference(
                    flagged,
                    all.isPresent() && some.isPresent()
                            ? Optional.of(DifferenceBudget.of(each, all.get(), some.get()))
                            : Optional.empty(),
                    one.verdict().compareTo(other.verdict()) >= 0 ? one.verdict() : other.verdict(),
                    one.advice() instanceof Advice.None ? other.advice() : one.advice()));
        }
        return judged;
    }
}
