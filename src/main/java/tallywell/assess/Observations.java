package tallywell.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.budget.PlateBudget;
import tallywell.workup.Analysis;
import tallywell.workup.Repeatability;
import tallywell.workup.StepAnalysis;

/**
 * What the plate itself shows beyond the criteria of its method. Limits here are those of a statistical test at 1 %, so
 * that one plate in a hundred fails each without any fault: they call for a look and decide nothing.
 */
final class Observations {
    private final PlateBudget budget;

    private final PatternReadings patterns;

    Observations(PlateBudget budget, PatternReadings patterns) {
        this.budget = budget;
        this.patterns = patterns;
    }

    List<Check> all() {
        Analysis analysis = budget.analysis();
        List<Check> checks = new ArrayList<>();
        for (StepAnalysis step : analysis.steps()) {
            String of = analysis.steps().size() == 1
                    ? ""
                    : ", " + step.step().analyte().name();
            Optional<Repeatability> scatter = budget.repeatabilities().get(step.number() - 1);
            checks.addAll(new ScatterObservations(budget, step, of).all());
            checks.addAll(new CurveObservations(step, of).all());
            WeightsObservation.of(step, scatter, of).ifPresent(checks::add);
            IntervalObservation.of(analysis, step, of).ifPresent(checks::add);
            checks.addAll(new PositionObservations(step, scatter, of).all());
            checks.addAll(new ReactionObservations(step, of).all());
            checks.addAll(new CreepObservations(step, of).all());
            checks.addAll(new LimitObservations(budget, step, of).all());
        }
        checks.addAll(new DilutionObservations(budget).all());
        checks.addAll(patterns.checks());
        return checks;
    }

    /** A check that has nothing to go by. */
    static Check open(String name, String found, String source) {
        return new Check(name, "", found, Check.State.NOT_ASSESSED, source);
    }

    static Check.State state(boolean passes) {
        return passes ? Check.State.PASSED : Check.State.FAILED;
    }
}
