package tallywell.across;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.assess.Verdict;
import tallywell.budget.ResultBudget;
import tallywell.method.RepeatRule;
import tallywell.numeric.StudentT;
import tallywell.quantity.Numbers;

/**
 * Makes one result of one sample by a rule that was stated beforehand.
 *
 * <p>A weight of {@code weighted} is 1/own², own being what is of the result alone. What results have in common does not
 * tell them apart and would, with errors that grow with the value, pull the mean towards the smaller ones.
 */
final class Combining {
    private final RepeatRule rule;
    private final boolean withChecks;

    /**
     * Prepares.
     *
     * @param rule the laboratory's rule
     * @param withChecks whether a person has looked at the results with the verdict {@code check} and lets them stand
     */
    Combining(RepeatRule rule, boolean withChecks) {
        this.rule = rule;
        this.withChecks = withChecks;
    }

    CombinedResult combine(Linking.Link link) {
        List<Found> counting = new ArrayList<>();
        List<CombinedResult.Part> parts = new ArrayList<>();
        for (Found each : link.found()) {
            String reason = leftOut(each);
            parts.add(new CombinedResult.Part(each, reason, OptionalDouble.empty()));
            if (reason.isEmpty()) {
                counting.add(each);
            }
        }
        return new Sum(link.id(), parts, counting).result();
    }

    /** Why a result does not count; empty if it does. */
    private String leftOut(Found found) {
        if (found.value().isEmpty()) {
            return "no value";
        }
        if (found.verdict() == Verdict.REPEAT) {
            return "verdict repeat";
        }
        return found.verdict() == Verdict.CHECK && !withChecks ? "verdict check: a person must look first" : "";
    }

    /** The results of one sample that count. */
    private final class Sum {
        private final String id;
        private final List<CombinedResult.Part> all;
        private final double[] values;
        private final Optional<List<UncertaintyParts>> parts;
        private final Optional<Consistency> consistency;
        private final List<String> remarks = new ArrayList<>();

        Sum(String id, List<CombinedResult.Part> all, List<Found> counting) {
            this.id = id;
            this.all = all;
            values = counting.stream()
                    .mapToDouble(each -> each.value().orElseThrow())
                    .toArray();
            List<UncertaintyParts> known =
                    counting.stream().flatMap(each -> each.parts().stream()).toList();
            parts = known.size() == values.length && values.length > 0 ? Optional.of(known) : Optional.empty();
            consistency = values.length > 1
                    ? parts.filter(each -> each.stream().allMatch(one -> one.own() > 0))
                            .map(each -> Consistency.of(values, each))
                    : Optional.empty();
        }

        CombinedResult result() {
            int n = values.length;
            if (n == 0) {
                remarks.add("no result that may stand");
                return without();
            }
            if (n < all.size()) {
                remarks.add(n + " of " + all.size() + " results count");
            }
            if (n == 1) {
                remarks.add("one result only");
                return single();
            }
            if (parts.isEmpty()) {
                remarks.add("no uncertainty, since a result has none");
            }
            consistency
                    .filter(each -> !each.holds())
                    .ifPresent(each ->
                            remarks.add("the results differ by more than their uncertainties explain (Birge ratio "
                                    + Numbers.rounded(each.birge(), 3) + ", at most " + Numbers.rounded(each.limit(), 3)
                                    + "); look for the cause"));
            return switch (rule) {
                case MEAN -> mean();
                case WEIGHTED -> weighted();
                case MEDIAN -> median();
                case CRITICAL_RANGE -> criticalRange();
            };
        }

        private CombinedResult without() {
            return made(OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty(), new double[0]);
        }

        /** What the run itself reports, as it is. */
        private CombinedResult single() {
            double[] weight = {1};
            return made(
                    OptionalDouble.of(values[0]),
                    parts.map(each -> WeightedSum.of(weight, each)),
                    parts.isPresent() ? OptionalDouble.of(parts.get().get(0).expanded()) : OptionalDouble.empty(),
                    weight);
        }

        private double[] equal() {
            double[] weights = new double[values.length];
            Arrays.fill(weights, 1.0 / values.length);
            return weights;
        }

        private CombinedResult mean() {
            return sum(equal());
        }

        private CombinedResult weighted() {
            if (parts.isEmpty() || parts.get().stream().anyMatch(each -> !(each.own() > 0))) {
                remarks.add("the rule needs an uncertainty of each result");
                return without();
            }
            double[] weights = parts.get().stream()
                    .mapToDouble(each -> 1 / (each.own() * each.own()))
                    .toArray();
            double total = Arrays.stream(weights).sum();
            for (int i = 0; i < weights.length; i++) {
                weights[i] /= total;
            }
            return sum(weights);
        }

        private CombinedResult sum(double[] weights) {
            double value = 0;
            for (int i = 0; i < weights.length; i++) {
                value += weights[i] * values[i];
            }
            return made(
                    OptionalDouble.of(value),
                    parts.map(each -> WeightedSum.of(weights, each)),
                    OptionalDouble.empty(),
                    weights);
        }

        /** What is of each result alone shrinks less in a median than in a mean; what they have in common not at all. */
        private CombinedResult median() {
            double[] weights = equal();
            return made(
                    OptionalDouble.of(Median.of(values)),
                    parts.map(each -> {
                        double own = Median.varianceRatio(values.length) * WeightedSum.ownSquares(weights, each);
                        double u = Math.sqrt(own + WeightedSum.commonSquares(weights, each));
                        return new WeightedSum(u, Freedom.of(u, weights, each));
                    }),
                    OptionalDouble.empty(),
                    new double[0]);
        }

        private CombinedResult criticalRange() {
            int n = values.length;
            if (n > CriticalRange.MOST) {
                remarks.add("the rule is for " + CriticalRange.MOST + " results at most");
                return without();
            }
            if (parts.isEmpty()) {
                remarks.add("the rule needs an uncertainty of each result");
                return without();
            }
            double sigma = Math.sqrt(parts.get().stream()
                    .mapToDouble(each -> each.own() * each.own())
                    .average()
                    .orElseThrow());
            double critical = CriticalRange.factor(n) * sigma;
            double range = Arrays.stream(values).max().orElseThrow()
                    - Arrays.stream(values).min().orElseThrow();
            String found = "range " + Numbers.rounded(range, 3) + ", critical range " + Numbers.rounded(critical, 3);
            if (range <= critical) {
                remarks.add(found + ": mean");
                return mean();
            }
            if (n == 2) {
                remarks.add(found + ": measure twice more");
                return without();
            }
            remarks.add(found + ": median");
            return median();
        }

        /**
         * The result.
         *
         * @param reported expanded uncertainty that the run reports, where one alone counts
         */
        private CombinedResult made(
                OptionalDouble value, Optional<WeightedSum> sum, OptionalDouble reported, double[] weights) {
            double freedom = sum.map(WeightedSum::degreesOfFreedom).orElse(Double.POSITIVE_INFINITY);
            OptionalDouble u =
                    sum.isPresent() ? OptionalDouble.of(sum.get().standardUncertainty()) : OptionalDouble.empty();
            double k = reported.isPresent() && u.getAsDouble() > 0
                    ? reported.getAsDouble() / u.getAsDouble()
                    : StudentT.twoSided(ResultBudget.COVERAGE, freedom);
            return new CombinedResult(
                    withWeights(weights), id, value, u, freedom, k, sd(), consistency, String.join("; ", remarks));
        }

        private List<CombinedResult.Part> withWeights(double[] weights) {
            List<CombinedResult.Part> weighted = new ArrayList<>();
            int at = 0;
            for (CombinedResult.Part each : all) {
                boolean has = each.counts() && weights.length > 0;
                weighted.add(has ? new CombinedResult.Part(each.found(), "", OptionalDouble.of(weights[at++])) : each);
            }
            return weighted;
        }

        private OptionalDouble sd() {
            int n = values.length;
            if (n < 2) {
                return OptionalDouble.empty();
            }
            double mean = Arrays.stream(values).average().orElseThrow();
            double squares = Arrays.stream(values)
                    .map(each -> (each - mean) * (each - mean))
                    .sum();
            return OptionalDouble.of(Math.sqrt(squares / (n - 1)));
        }
    }
}
