package tallywell.workup;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.curve.Curve;
import tallywell.curve.Logistic;

/**
 * What halves of differences come to below the lowest standard, where nothing is reported of them.
 *
 * <p>net ΔA is taken against blanks, which are level 0 by definition, so that from 0 to the lowest standard both ends are
 * measured: a line, a line through zero and a parabola are followed there. A logistic curve is flat or vertical at level 0
 * and follows nothing; with it the half is anything from nothing to the lowest standard. Above the highest standard there is
 * nothing measured to hold on to, and no value.
 */
final class Halves {
    private final Assay assay;
    private final List<StepAnalysis> steps;

    Halves(Assay assay, List<StepAnalysis> steps) {
        this.assay = assay;
        this.steps = steps;
    }

    Half of(Result result) {
        StepAnalysis step = steps.get(result.step() - 1);
        List<WellResult> counting =
                Results.counting(step.where(well -> result.wells().contains(well.well())));
        if (result.value().isPresent() || step.calibration().isEmpty() || counting.isEmpty()) {
            return Half.of(result);
        }
        boolean low = counting.stream()
                .allMatch(well -> well.value().isPresent()
                        || well.netDeltaA().isPresent() && well.flags().contains(Flag.BELOW_STANDARDS));
        return low ? low(result, step, counting, step.calibration().get()) : Half.of(result);
    }

    private Half low(Result result, StepAnalysis step, List<WellResult> counting, Calibration calibration) {
        Scale scale = new Scale(assay.method(), step);
        List<WellResult> below = new ArrayList<>();
        double sum = 0;
        boolean followed = counting.stream()
                .allMatch(well -> well.value().isPresent()
                        || level(calibration.curve(), well.netDeltaA().orElseThrow())
                                .isPresent());
        for (WellResult well : counting) {
            if (well.value().isPresent()) {
                sum += well.value().getAsDouble();
            } else {
                double level = followed
                        ? level(calibration.curve(), well.netDeltaA().orElseThrow())
                                .orElseThrow()
                        : calibration.lowest();
                double concentration = scale.perLevel(well) * level;
                double value = scale.perConcentration(well) * concentration;
                below.add(new WellResult(
                        well.trace(),
                        well.netDeltaA(),
                        OptionalDouble.of(concentration),
                        OptionalDouble.of(value),
                        well.unit(),
                        well.flags()));
                sum += followed ? value : value / 2;
            }
        }
        OptionalDouble mean = OptionalDouble.of(sum / counting.size());
        return new Half(result, result.withValue(mean, mean), followed ? Half.Below.CURVE : Half.Below.INTERVAL, below);
    }

    /** The level on a curve below its lowest standard; empty where the curve cannot be followed there. */
    private static OptionalDouble level(Curve curve, double net) {
        if (curve instanceof Logistic) {
            return OptionalDouble.empty();
        }
        OptionalDouble level = curve.levelOf(net);
        return level.isPresent() && curve.slopeAt(level.getAsDouble()) > 0 ? level : OptionalDouble.empty();
    }
}
