package tallywell.budget;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.workup.Analysis;
import tallywell.workup.Half;
import tallywell.workup.Repeatability;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;

/**
 * How sure the results of one plate are.
 *
 * @param analysis the plate
 * @param repeatabilities one a step; empty where no replicates of the step differ
 * @param results one a result of the analysis, in its order; empty where there is no value, or nothing shows the scatter
 */
public record PlateBudget(
        Analysis analysis, List<Optional<Repeatability>> repeatabilities, List<Optional<ResultBudget>> results) {
    /** Keeps copies that cannot change. */
    public PlateBudget {
        repeatabilities = List.copyOf(repeatabilities);
        results = List.copyOf(results);
    }

    /** The budgets of a plate. */
    public static PlateBudget of(Analysis analysis) {
        List<Optional<Repeatability>> repeatabilities =
                analysis.steps().stream().map(Repeatability::of).toList();
        List<Optional<StepModel>> models = analysis.steps().stream()
                .map(step -> model(analysis, step, repeatabilities))
                .toList();
        List<Optional<ResultBudget>> results = new ArrayList<>();
        for (Result result : analysis.results()) {
            results.add(models.get(result.step() - 1)
                    .filter(model -> result.value().isPresent())
                    .filter(model -> model.wellsOf(result).stream().allMatch(model.scatter()::knows))
                    .map(model -> new Budgeting(model, result).budget()));
        }
        return new PlateBudget(analysis, repeatabilities, results);
    }

    private static Optional<StepModel> model(
            Analysis analysis, StepAnalysis step, List<Optional<Repeatability>> repeatabilities) {
        return Scatter.of(step, repeatabilities.get(step.number() - 1))
                .map(scatter -> new StepModel(analysis.assay().method(), step, scatter));
    }

    /** How sure what counts of a half of a difference is; empty where it has no value, or nothing shows the scatter. */
    public Optional<ResultBudget> of(Half half) {
        if (half.below() == Half.Below.NOT) {
            return results.get(analysis.results().indexOf(half.reported()));
        }
        return model(analysis, analysis.stepOf(half.reported()), repeatabilities)
                .map(model -> HalfBudget.model(model, half))
                .filter(model -> model.wellsOf(half.counted()).stream().allMatch(model.scatter()::knows))
                .map(model -> HalfBudget.of(model, half));
    }

    /** How sure the recovery of each result is, in their order; empty where it has none, or no budget. */
    public List<Optional<RecoveryBudget>> recoveries() {
        List<ResultBudget> known = results.stream().flatMap(Optional::stream).toList();
        return results.stream()
                .map(each -> each.flatMap(budget -> RecoveryBudget.of(analysis, budget, known)))
                .toList();
    }

    /** Whether any result rests on scatter only, so that its U does not say where the true value lies. */
    public boolean anyScatterOnly() {
        return results.stream().flatMap(Optional::stream).anyMatch(each -> each.basis() == Basis.SCATTER_ONLY);
    }

    /** Whether results of a step, from 1, rest on the noise of traces, since no replicates show the scatter. */
    public boolean restsOnTraces(int step) {
        return repeatabilities.get(step - 1).isEmpty()
                && results.stream()
                        .flatMap(Optional::stream)
                        .anyMatch(each -> each.result().step() == step);
    }
}
