package tallywell.assess;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tallywell.budget.PlateBudget;
import tallywell.budget.ResultBudget;
import tallywell.method.Sample;
import tallywell.numeric.StudentT;
import tallywell.workup.Analysis;
import tallywell.workup.Result;

/**
 * Results of one plate that should agree, since the sample list calls them one sample: by name, or by a barcode. Halves of a
 * result by difference are compared with their like only.
 *
 * <pre>{@code
 * |x - y| <= t · √(u(x)² + u(y)² - 2 cov(x, y))
 * }</pre>
 *
 * <p>The limit for two results with uncertainties and a covariance follows from JCGM 100:2008, 5.2; t is Student's, two-sided
 * at 1 %, for the fewer degrees of freedom of the two, which errs on the wide side.
 */
final class SameSample {
    private static final double TWO_SIDED_ONE_PERCENT = 0.995;

    private SameSample() {}

    /** Two results of one sample, both with an uncertainty. */
    record Pair(ResultBudget one, ResultBudget other, Sample first, Sample second) {
        double difference() {
            return Math.abs(
                    one.result().value().orElseThrow() - other.result().value().orElseThrow());
        }

        double limit() {
            double variance =
                    one.byBudget() * one.byBudget() + other.byBudget() * other.byBudget() - 2 * one.covariance(other);
            double freedom = Math.min(one.degreesOfFreedom(), other.degreesOfFreedom());
            return StudentT.quantile(TWO_SIDED_ONE_PERCENT, freedom) * Math.sqrt(Math.max(0, variance));
        }

        boolean agrees() {
            return difference() <= limit();
        }
    }

    /** All pairs of a plate, in the order of the results. */
    static List<Pair> pairs(PlateBudget budget) {
        Analysis analysis = budget.analysis();
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < analysis.results().size(); i++) {
            for (int j = i + 1; j < analysis.results().size(); j++) {
                pair(budget, i, j).ifPresent(pairs::add);
            }
        }
        return pairs;
    }

    /** Keys of the results that disagree with another of the same sample. */
    static Set<String> disagreeing(PlateBudget budget) {
        Set<String> keys = new HashSet<>();
        for (Pair pair : pairs(budget)) {
            if (!pair.agrees()) {
                keys.add(pair.one().result().key());
                keys.add(pair.other().result().key());
            }
        }
        return keys;
    }

    private static Optional<Pair> pair(PlateBudget budget, int i, int j) {
        Optional<ResultBudget> one = budget.results().get(i);
        Optional<ResultBudget> other = budget.results().get(j);
        Analysis analysis = budget.analysis();
        if (one.isEmpty()
                || other.isEmpty()
                || analysis.results().get(i).step() != analysis.results().get(j).step()) {
            return Optional.empty();
        }
        Optional<Sample> first = sample(analysis, analysis.results().get(i));
        Optional<Sample> second = sample(analysis, analysis.results().get(j));
        return first.isPresent() && second.isPresent() && isOne(first.get(), second.get())
                ? Optional.of(new Pair(one.get(), other.get(), first.get(), second.get()))
                : Optional.empty();
    }

    private static Optional<Sample> sample(Analysis analysis, Result result) {
        return result.role().equals("sample") && result.slot().isPresent()
                ? analysis.assay().samples().in(result.slot().getAsInt())
                : Optional.empty();
    }

    private static boolean isOne(Sample first, Sample second) {
        return first.treatment() == second.treatment()
                && (first.name().equals(second.name())
                        || !first.id().isEmpty() && first.id().equals(second.id()));
    }
}
