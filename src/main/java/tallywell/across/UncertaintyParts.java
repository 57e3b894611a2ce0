package tallywell.across;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.budget.Basis;
import tallywell.budget.Contribution;
import tallywell.budget.DifferenceBudget;
import tallywell.budget.ResultBudget;
import tallywell.budget.Source;
import tallywell.method.AssayMethod;
import tallywell.method.InputQuantity;
import tallywell.method.UncertaintyRule;
import tallywell.workup.Analysis;
import tallywell.workup.DifferenceResult;

/**
 * How sure a result is, taken apart into what other plates can have in common with it and what is its own.
 *
 * <pre>{@code
 * u² = own² + sum over common sources of effect²
 * }</pre>
 *
 * @param common effect of each source that other plates can have in common, with its sign, in the unit of the value
 * @param own standard uncertainty from everything else
 * @param scatter the part of {@code own} that is scatter rather than stated
 * @param scatterFreedom how well the scatter is known, in degrees of freedom; may be infinite
 * @param expanded the expanded uncertainty as the run reports it
 * @param basis what it rests on
 */
public record UncertaintyParts(
        Map<Common, Double> common, double own, double scatter, double scatterFreedom, double expanded, Basis basis) {
    /** Keeps a copy that cannot change. */
    public UncertaintyParts {
        common = Collections.unmodifiableMap(new LinkedHashMap<>(common));
    }

    /** The parts of a result of a run; the result must have a budget. */
    static UncertaintyParts of(Analysis analysis, Judgement judgement, SharedSources shared) {
        ResultBudget budget = judgement.budget().orElseThrow();
        if (budget.stated() == UncertaintyRule.Stated.VALIDATION) {
            return validated(analysis.assay().method(), budget);
        }
        Builder builder = new Builder(analysis, shared);
        budget.contributions().forEach(each -> builder.add(each, 1));
        return builder.parts(
                budget.standardUncertainty(), budget.degreesOfFreedom(), budget.expandedUncertainty(), budget.basis());
    }

    /**
     * By validation: the intermediate precision is what runs differ by, the bias what all runs of the method have in
     * common.
     */
    private static UncertaintyParts validated(AssayMethod method, ResultBudget budget) {
        UncertaintyRule.Validation validation =
                method.uncertainty().validation().orElseThrow();
        double value = Math.abs(budget.result().value().orElseThrow());
        Map<Common, Double> common = validation.bias() > 0
                ? Map.of(new Common("bias of the method", method.id(), validation.bias()), validation.bias() * value)
                : Map.of();
        return new UncertaintyParts(
                common,
                validation.precision() * value,
                0,
                Double.POSITIVE_INFINITY,
                budget.expandedUncertainty(),
                budget.basis());
    }

    /** The parts of a result by difference; it must have a budget. */
    static UncertaintyParts of(
            Analysis analysis, JudgedDifference judged, ResultBudget total, ResultBudget free, SharedSources shared) {
        DifferenceResult difference = judged.difference();
        DifferenceBudget budget = judged.budget().orElseThrow();
        Builder builder = new Builder(analysis, shared);
        total.contributions().forEach(each -> builder.add(each, difference.factor()));
        free.contributions().forEach(each -> builder.add(each, -difference.factor()));
        double yield = difference.rule().yieldU().orElse(0);
        if (yield > 0) {
            // One treatment, one yield: runs of a method have it in common.
            builder.common(
                    new Common(
                            "yield of the treatment",
                            difference.rule().analyte().name(),
                            yield),
                    difference.value().orElseThrow() * yield);
        }
        return builder.parts(
                budget.standardUncertainty(), budget.degreesOfFreedom(), budget.expandedUncertainty(), budget.basis());
    }

    /** The standard uncertainty. */
    double total() {
        double squares = own * own;
        for (double effect : common.values()) {
            squares += effect * effect;
        }
        return Math.sqrt(squares);
    }

    /** The same in a unit of which so many are one of the present. */
    UncertaintyParts times(double factor) {
        Map<Common, Double> scaled = new LinkedHashMap<>();
        common.forEach((source, effect) -> scaled.put(source, effect * factor));
        return new UncertaintyParts(scaled, own * factor, scatter * factor, scatterFreedom, expanded * factor, basis);
    }

    /** Sorts the contributions to a value. */
    private static final class Builder {
        private final Analysis analysis;
        private final SharedSources shared;
        private final Map<Common, Double> common = new LinkedHashMap<>();
        private final Map<Source, Double> own = new HashMap<>();

        Builder(Analysis analysis, SharedSources shared) {
            this.analysis = analysis;
            this.shared = shared;
        }

        void add(Contribution each, double factor) {
            double effect = factor * each.effect();
            shared.of(each.source())
                    .ifPresentOrElse(
                            quantity -> common(
                                    new Common(
                                            quantity.label(),
                                            name(quantity, each.source()),
                                            each.standardUncertainty()),
                                    effect),
                            () -> own.merge(each.source(), effect, Double::sum));
        }

        void common(Common source, double effect) {
            common.merge(source, effect, Double::sum);
        }

        /** Steps and slots have other numbers on another plate; the analyte and the sample are the same there. */
        private String name(InputQuantity quantity, Source source) {
            return switch (quantity) {
                case STANDARD, ABSORPTIVITY ->
                    analysis.steps()
                            .get(Integer.parseInt(source.name().substring("step ".length())) - 1)
                            .step()
                            .analyte()
                            .name();
                case DENSITY, MASS, CREEP -> "";
                default -> source.name();
            };
        }

        UncertaintyParts parts(double u, double freedom, double expanded, Basis basis) {
            double all = 0;
            double scatter = 0;
            for (Map.Entry<Source, Double> each : own.entrySet()) {
                double square = each.getValue() * each.getValue();
                all += square;
                scatter += each.getKey().estimate().isScatter() ? square : 0;
            }
            double part = scatter / (u * u);
            return new UncertaintyParts(
                    common,
                    Math.sqrt(all),
                    Math.sqrt(scatter),
                    scatter > 0 ? freedom * part * part : Double.POSITIVE_INFINITY,
                    expanded,
                    basis);
        }
    }
}
