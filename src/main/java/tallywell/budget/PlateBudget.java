package tallywell.budget;

import java.util.List;
import java.util.Optional;
import tallywell.workup.Analysis;

/**
 * How sure the results of one plate are.
 *
 * @param analysis the plate
 * @param repeatabilities one a step; empty where the step shows no scatter
 * @param results one a result of the analysis, in its order; empty where there is no value, or no repeatability
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
                .map(step -> repeatabilities
                        .get(step.number() - 1)
                        .map(scatter -> new StepModel(analysis.assay().method(), step, scatter)))
                .toList();
        List<Optional<ResultBudget>> results = analysis.results().stream()
                .map(result -> result.value().isPresent()
                        ? models.get(result.step() - 1).map(model -> new Budgeting(model, result).budget())
                        : Optional.<ResultBudget>empty())
                .toList();
        return new PlateBudget(analysis, repeatabilities, results);
    }
}
