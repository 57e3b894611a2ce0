package tallywell.assess;

import java.util.Optional;
import tallywell.budget.ResultBudget;
import tallywell.workup.Result;

/**
 * A result with what to do about it.
 *
 * @param result with all its flags
 * @param verdict whether it can stand
 * @param advice what to do next
 * @param budget how sure it is; empty where there is no value, or nothing on the plate shows the scatter
 */
public record Judgement(Result result, Verdict verdict, Advice advice, Optional<ResultBudget> budget) {
    /** The same with the budget of the result. */
    Judgement with(Optional<ResultBudget> other) {
        return new Judgement(result, verdict, advice, other);
    }
}
