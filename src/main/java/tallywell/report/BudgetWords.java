package tallywell.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.budget.Basis;
import tallywell.budget.DifferenceBudget;
import tallywell.budget.PlateBudget;
import tallywell.budget.ResultBudget;
import tallywell.method.UncertaintyRule.Stated;
import tallywell.workup.Result;

/** What the uncertainty of a result rests on, or why there is none, in words. */
final class BudgetWords {
    private static final String DIFFERENCE = "by difference; what both results share is taken out";
    private static final String NO_DIFFERENCE = "no u: one of the two results has none";

    private static final String SCATTER_ONLY = "U is scatter only: no source that the method states acts";

    private BudgetWords() {}

    /** Of a result by difference. */
    static String of(Optional<DifferenceBudget> found) {
        return found.map(each -> each.basis() == Basis.SCATTER_ONLY ? DIFFERENCE + "; " + SCATTER_ONLY : DIFFERENCE)
                .orElse(NO_DIFFERENCE);
    }

    static String of(PlateBudget budget, Result result, Optional<ResultBudget> found) {
        return found.map(each -> remark(budget, each)).orElseGet(() -> why(budget, result));
    }

    private static String remark(PlateBudget budget, ResultBudget each) {
        List<String> remarks = new ArrayList<>();
        if (each.stated() == Stated.VALIDATION) {
            remarks.add("reported with u by validation and k = 2");
        }
        if (each.basisByBudget() == Basis.SCATTER_ONLY) {
            remarks.add(SCATTER_ONLY);
        }
        if (budget.restsOnTraces(each.result().step())) {
            remarks.add("no replicates that differ: noise of the trace only, without pipetting");
        }
        return String.join("; ", remarks);
    }

    private static String why(PlateBudget budget, Result result) {
        if (result.value().isEmpty()) {
            return "no value";
        }
        return budget.repeatabilities().get(result.step() - 1).isPresent() || budget.restsOnTraces(result.step())
                ? "no u: the traces of its wells show no scatter"
                : "no u: no replicates that differ, and no traces that show the scatter of wells, blanks and standards";
    }
}
