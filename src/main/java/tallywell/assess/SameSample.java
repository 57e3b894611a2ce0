package tallywell.assess;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tallywell.budget.Combination;
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
 * |x - y| <= t · u(x - y)
 * }</pre>
 *
 * <p>What both share is taken out of u, and its degrees of freedom are those of the scatter that is left: see
 * {@link Combination}. t is Student's, two-sided at 1 %.
 */
final class SameSample {
    private static final double TWO_SIDED_ONE_PERCENT = 0.995;

    private SameSample() {}

    /** Two results of one sample in one unit, whose difference has an uncertainty. */
    record Pair(ResultBudget one, ResultBudget other, Sample first, Sample second, Combination doubt) {
        double difference() {
            return Math.abs(
                    one.result().value().orElseThrow() - other.result().value().orElseThrow());
        }

        double limit() {
            return StudentT.quantile(TWO_SIDED_ONE_PERCENT, doubt.degreesOfFreedom()) * doubt.standardUncertainty();
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
                || analysis.results().get(i).step() != analysis.results().get(j).step()
                || !one.get().result().unit().equals(other.get().result().unit())) {
            return Optional.empty();
        }
        Optional<Sample> first = sample(analysis, analysis.results().get(i));
        Optional<Sample> second = sample(analysis, analysis.results().get(j));
        if (first.isEmpty() || second.isEmpty() || !isOne(first.get(), second.get())) {
            return Optional.empty();
        }
        Combination doubt = Combination.difference(one.get(), other.get());
        return doubt.standardUncertainty() > 0
                ? Optional.of(new Pair(one.get(), other.get(), first.get(), second.get(), doubt))
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
