package tallywell.assess;

import java.util.List;
import tallywell.budget.PlateBudget;
import tallywell.quantity.Numbers;
import tallywell.workup.Result;

/**
 * Whether rows of one sample agree, at several dilutions or at one. Where they do not, something in the sample disturbs the
 * assay, or two samples go by one name.
 */
final class DilutionObservations {
    private static final int DIGITS = 3;

    private final PlateBudget budget;

    DilutionObservations(PlateBudget budget) {
        this.budget = budget;
    }

    List<Check> all() {
        return SameSample.pairs(budget).stream()
                .map(DilutionObservations::check)
                .toList();
    }

    private static Check check(SameSample.Pair pair) {
        String unit = " " + pair.one().result().unit();
        return new Check(
                name(pair) + ", " + pair.one().result().analyte(),
                "difference at most " + Numbers.rounded(pair.limit(), DIGITS) + unit,
                Numbers.rounded(pair.difference(), DIGITS) + unit,
                Observations.state(pair.agrees()),
                "uncertainty of the difference, 1 %");
    }

    private static String name(SameSample.Pair pair) {
        Result one = pair.one().result();
        Result other = pair.other().result();
        if (!pair.first().name().equals(pair.second().name())) {
            return "'" + one.name() + "' and '" + other.name() + "' of one id, '"
                    + pair.first().id() + "', agree";
        }
        return one.dilution().equals(other.dilution())
                ? "slots " + pair.first().slot() + " and " + pair.second().slot() + " of '" + one.name() + "' agree"
                : "dilutions " + one.dilution() + " and " + other.dilution() + " of '" + one.name() + "' agree";
    }
}
