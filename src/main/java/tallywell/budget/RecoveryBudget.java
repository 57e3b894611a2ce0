package tallywell.budget;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tallywell.method.InputQuantity;
import tallywell.plate.Content;
import tallywell.quantity.Quantity;
import tallywell.workup.Analysis;
import tallywell.workup.Result;
import tallywell.workup.Scale;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * How sure the recovery of a control or spike is.
 *
 * <pre>{@code
 * control  R = 100 · value / assigned                      u(R) = 100 · u(value) / assigned
 * spike    R = 100 · (c spiked − (1 − φ) · c sample) / added, with what both c share taken out
 * }</pre>
 *
 * <p>What a spike was made from and the assigned value of a control count as exact: nothing on the plate shows how well
 * they are known. Both c of a spike are in the solution pipetted, so what comes after (dilution, mass, extract, density)
 * does not act on its recovery.
 *
 * @param result the control or spike
 * @param standardUncertainty of the recovery, in percentage points
 * @param degreesOfFreedom effective ones, may be infinite
 * @param coverageFactor for 95 %
 * @param basis what it rests on
 */
public record RecoveryBudget(
        Result result, double standardUncertainty, double degreesOfFreedom, double coverageFactor, Basis basis) {
    private static final double PERCENT = 100;

    private static final Set<String> AFTER_PIPETTING = Stream.of(
                    InputQuantity.DILUTION, InputQuantity.MASS, InputQuantity.EXTRACT_VOLUME, InputQuantity.DENSITY)
            .map(InputQuantity::label)
            .collect(Collectors.toUnmodifiableSet());

    /** The budget of the recovery of a result; empty where it has no recovery or a value has no budget. */
    static Optional<RecoveryBudget> of(Analysis analysis, ResultBudget budget, Iterable<ResultBudget> others) {
        Result result = budget.result();
        if (result.recoveryPercent().isEmpty()) {
            return Optional.empty();
        }
        if (result.role().equals("control")) {
            double scale = PERCENT / result.assigned().orElseThrow();
            return Optional.of(of(result, Combination.of(scale, budget, source -> true)));
        }
        StepAnalysis step = analysis.stepOf(result);
        WellResult well =
                step.where(each -> result.wells().contains(each.well())).get(0);
        Content.Spike spike = (Content.Spike) well.content();
        for (ResultBudget other : others) {
            Result sample = other.result();
            if (sample.step() == result.step() && sample.slot().orElse(0) == spike.of()) {
                double scale = PERCENT / added(analysis, step, spike, well);
                return Optional.of(of(
                        result,
                        Combination.of(
                                scale,
                                budget,
                                scale * (1 - spike.fraction()),
                                other,
                                source -> !AFTER_PIPETTING.contains(source.label()))));
            }
        }
        return Optional.empty();
    }

    /** What the spike should add to the value. */
    private static double added(Analysis analysis, StepAnalysis step, Content.Spike spike, WellResult well) {
        Quantity added = spike.added().of(step.step().analyte().name()).orElseThrow();
        Scale scale = new Scale(analysis.assay().method(), step);
        return scale.gPerL(added) * scale.perConcentration(well);
    }

    private static RecoveryBudget of(Result result, Combination combined) {
        return new RecoveryBudget(
                result,
                combined.standardUncertainty(),
                combined.degreesOfFreedom(),
                combined.coverageFactor(),
                combined.basis());
    }

    /** The expanded uncertainty, in percentage points. */
    public double expandedUncertainty() {
        return coverageFactor * standardUncertainty;
    }
}
