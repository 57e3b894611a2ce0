package tallywell.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.curve.Calibration;
import tallywell.curve.FittedVariance;
import tallywell.method.CalibrationRule;
import tallywell.numeric.FisherF;
import tallywell.quantity.Numbers;
import tallywell.workup.Repeatability;
import tallywell.workup.StepAnalysis;

/**
 * Whether replicates scatter as the weights of the calibration say. Slots are ordered by net ΔA and parted where half of
 * the degrees of freedom lie on either side; the variances of each half, each times the weight at its net ΔA, are pooled
 * and compared by F, two-sided at 1 %.
 *
 * <p>Means and variances of normal values are independent, so that one plate in a hundred fails without any fault,
 * whatever the layout. It proposes weights and never changes them.
 */
final class WeightsObservation {
    private static final String NAME = "replicates scatter as the weights say";
    private static final String SOURCE = "F of the upper to the lower half of net ΔA, two-sided, 1 %";
    private static final double TAIL = 0.005;
    private static final int DIGITS = 4;

    /** With fewer degrees of freedom a half says next to nothing. */
    private static final double LEAST = 4;

    private WeightsObservation() {}

    /** A variance for weight 1, with its place and its degrees of freedom. */
    private record Scaled(double net, double variance, double freedom) {}

    /** The observation; nothing where no curve is weighted, or by the scatter itself. */
    static Optional<Check> of(StepAnalysis step, Optional<Repeatability> scatter, String of) {
        if (!(step.step().calibration() instanceof CalibrationRule.ByStandards)
                || step.calibration().orElseThrow().weighting() instanceof FittedVariance) {
            return Optional.empty();
        }
        Set<Repeatability.Slot> outliers =
                new HashSet<>(scatter.map(Repeatability::outliers).orElse(List.of()));
        List<Scaled> all = Repeatability.slots(step).stream()
                .filter(slot -> !outliers.contains(slot))
                .flatMap(slot -> scaled(step.calibration().orElseThrow(), slot).stream())
                .sorted(Comparator.comparingDouble(Scaled::net))
                .toList();
        double half = all.stream().mapToDouble(Scaled::freedom).sum() / 2;
        List<Scaled> lower = new ArrayList<>();
        double before = 0;
        for (Scaled each : all) {
            // A slot across the middle goes to the side that it lies more on.
            if (before + each.freedom() / 2 <= half) {
                lower.add(each);
            }
            before += each.freedom();
        }
        List<Scaled> upper = all.subList(lower.size(), all.size());
        double low = pooled(lower);
        if (!(freedom(lower) >= LEAST && freedom(upper) >= LEAST && low > 0)) {
            return Optional.of(Observations.open(NAME + of, "too few replicates that differ", "layout"));
        }
        return Optional.of(compared(pooled(upper) / low, freedom(upper), freedom(lower), of));
    }

    private static Check compared(double ratio, double upper, double lower, String of) {
        double most = FisherF.quantile(1 - TAIL, upper, lower);
        double least = 1 / FisherF.quantile(1 - TAIL, lower, upper);
        boolean passes = ratio >= least && ratio <= most;
        return new Check(
                NAME + of,
                "F " + Numbers.rounded(least, DIGITS) + " to " + Numbers.rounded(most, DIGITS),
                "F " + Numbers.rounded(ratio, DIGITS)
                        + (passes ? "" : "; weights variance-function would follow the scatter"),
                Observations.state(passes),
                SOURCE);
    }

    private static Optional<Scaled> scaled(Calibration calibration, Repeatability.Slot slot) {
        double weight = Repeatability.isBlank(slot.content())
                ? calibration.weighting().weightOfBlank()
                : weight(calibration, slot.mean());
        return weight > 0 && weight <= Double.MAX_VALUE
                ? Optional.of(new Scaled(slot.mean(), weight * slot.variance(), slot.degreesOfFreedom()))
                : Optional.empty();
    }

    private static double weight(Calibration calibration, double net) {
        OptionalDouble level = calibration.curve().levelOf(net);
        return level.isPresent() ? calibration.weighting().weight(level.getAsDouble(), net) : 0;
    }

    private static double freedom(List<Scaled> slots) {
        return slots.stream().mapToDouble(Scaled::freedom).sum();
    }

    private static double pooled(List<Scaled> slots) {
        return slots.stream()
                        .mapToDouble(each -> each.freedom() * each.variance())
                        .sum()
                / freedom(slots);
    }
}
