package tallywell.budget;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The results of a plate by draws, beside its budget.
 *
 * @param trials how many draws
 * @param seed what the draws followed from
 * @param outputs one a result of the analysis, in its order; empty where there is no budget either
 */
public record SimulatedPlate(int trials, long seed, List<Optional<Simulation.Output>> outputs) {
    /** Keeps a copy that cannot change. */
    public SimulatedPlate {
        outputs = List.copyOf(outputs);
    }

    /** Draws the results of a plate. */
    public static SimulatedPlate of(PlateBudget budget, int trials, long seed) {
        return new SimulatedPlate(trials, seed, PlateSimulation.run(budget, trials, seed));
    }

    /** Where u of draws and u of the budget are farthest apart; empty if no result has a budget that is above 0. */
    public Optional<Farthest> farthest(PlateBudget budget) {
        Optional<Farthest> farthest = Optional.empty();
        for (int i = 0; i < outputs.size(); i++) {
            OptionalDouble difference = difference(budget, i);
            if (difference.isPresent()
                    && (farthest.isEmpty()
                            || Math.abs(difference.getAsDouble())
                                    > Math.abs(farthest.get().relative()))) {
                farthest = Optional.of(new Farthest(budget.results().get(i).orElseThrow(), difference.getAsDouble()));
            }
        }
        return farthest;
    }

    /** u of the draws of a result over u of its budget, less 1; empty where there is none, or u is 0. */
    public OptionalDouble difference(PlateBudget budget, int result) {
        Optional<ResultBudget> each = budget.results().get(result);
        Optional<Simulation.Output> drawn = outputs.get(result);
        return each.isPresent() && drawn.isPresent() && each.get().byBudget() > 0
                ? OptionalDouble.of(
                        drawn.get().standardUncertainty() / each.get().byBudget() - 1)
                : OptionalDouble.empty();
    }

    /**
     * The result whose two standard uncertainties are farthest apart.
     *
     * @param budget of the result
     * @param relative u of the draws over u of the budget, less 1
     */
    public record Farthest(ResultBudget budget, double relative) {}
}
