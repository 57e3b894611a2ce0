package tallywell.assess;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tallywell.budget.PlateBudget;
import tallywell.budget.ResultBudget;
import tallywell.quantity.Numbers;
import tallywell.workup.Result;

/**
 * Whether dilutions of one sample agree: slots of one name at different dilutions. Where they do not, something in the
 * sample disturbs the assay.
 *
 * <pre>{@code
 * |x - y| <= 2 · √(u(x)² + u(y)² - 2 cov(x, y))
 * }</pre>
 *
 * <p>The limit for two results with uncertainties and a covariance follows from JCGM 100:2008, 5.2; the factor 2 is common
 * practice.
 */
final class DilutionObservations {
    private static final double FACTOR = 2;
    private static final int DIGITS = 3;

    private final PlateBudget budget;

    DilutionObservations(PlateBudget budget) {
        this.budget = budget;
    }

    List<Check> all() {
        Map<String, List<ResultBudget>> bySample = new LinkedHashMap<>();
        for (int i = 0; i < budget.results().size(); i++) {
            Result result = budget.analysis().results().get(i);
            if (result.role().equals("sample")) {
                budget.results()
                        .get(i)
                        .ifPresent(each -> bySample.computeIfAbsent(
                                        result.name() + " " + result.step(), key -> new ArrayList<>())
                                .add(each));
            }
        }
        List<Check> checks = new ArrayList<>();
        for (List<ResultBudget> dilutions : bySample.values()) {
            ResultBudget first = dilutions.get(0);
            for (ResultBudget other : dilutions.subList(1, dilutions.size())) {
                if (!other.result().dilution().equals(first.result().dilution())) {
                    checks.add(check(first, other));
                }
            }
        }
        return checks;
    }

    private static Check check(ResultBudget one, ResultBudget other) {
        double first = one.result().value().orElseThrow();
        double second = other.result().value().orElseThrow();
        double variance =
                one.byBudget() * one.byBudget() + other.byBudget() * other.byBudget() - 2 * one.covariance(other);
        double limit = FACTOR * Math.sqrt(Math.max(0, variance));
        String unit = " " + one.result().unit();
        return new Check(
                "dilutions " + one.result().dilution() + " and "
                        + other.result().dilution() + " of '" + one.result().name() + "' agree, "
                        + one.result().analyte(),
                "difference at most " + Numbers.rounded(limit, DIGITS) + unit,
                Numbers.rounded(Math.abs(first - second), DIGITS) + unit,
                Observations.state(Math.abs(first - second) <= limit),
                "uncertainty of the difference, factor 2");
    }
}
