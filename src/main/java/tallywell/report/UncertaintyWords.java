package tallywell.report;

import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.stream.Collectors;
import tallywell.budget.PlateBudget;
import tallywell.budget.ResultBudget;
import tallywell.method.InputQuantity;
import tallywell.method.UncertaintyRule.Stated;

/** What the stated uncertainties hold and what they do not, in words. */
public final class UncertaintyWords {
    private UncertaintyWords() {}

    /** Of all results of a plate; empty where none has an uncertainty. */
    public static String of(PlateBudget budget) {
        Set<String> held = new LinkedHashSet<>();
        Set<InputQuantity> unstated = EnumSet.noneOf(InputQuantity.class);
        boolean byValidation = false;
        for (ResultBudget each :
                budget.results().stream().flatMap(found -> found.stream()).toList()) {
            held.addAll(each.shares().keySet());
            unstated.addAll(each.unstated());
            byValidation |= each.stated() == Stated.VALIDATION;
        }
        if (byValidation) {
            return "± U is from the validation of the method.";
        }
        return held.isEmpty() ? "" : "± U holds " + String.join(", ", held) + "." + missing(unstated);
    }

    /** What is not in a budget, as a sentence with a blank before it; empty if nothing is missing. */
    public static String missing(Set<InputQuantity> unstated) {
        return unstated.isEmpty()
                ? ""
                : " Not in it, since the method states nothing of it: "
                        + unstated.stream().map(InputQuantity::label).collect(Collectors.joining(", ")) + ".";
    }
}
