package tallywell.assess;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.method.Treatment;
import tallywell.numeric.StudentT;
import tallywell.workup.Flag;
import tallywell.workup.Repeatability;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * Whether a sample is shown to lie below the lowest standard. "Less than 0.050 g/L" has no ± U beside it, so it must hold
 * by itself:
 *
 * <pre>{@code
 * f(lowest) - net ΔA > t · √(u²(f(lowest)) + s²(net ΔA) / n + (1 - shift)² · s²(0) / N)      t one-sided at 95 %
 * }</pre>
 *
 * <p>u of the curve is from the scatter of the standards about it, so that standards that do not fit make it large; n wells
 * of the sample, N blanks, which cancel where the curve has a free constant (shift of 1). t has the degrees of freedom of
 * the less well known of the two scatters, which is on the safe side.
 *
 * <p>Source: the decision rule of JCGM 106:2012, 8.3.2 (guarded acceptance, from memory), with the uncertainty of a fitted
 * mean.
 */
final class LowestStandard {
    private static final double ONE_SIDED = 0.95;

    private final StepAnalysis step;
    private final Optional<Repeatability> scatter;

    LowestStandard(StepAnalysis step, Optional<Repeatability> scatter) {
        this.step = step;
        this.scatter = scatter;
    }

    /** Whether a result is said to lie below the lowest standard and is not shown to; halves of differences have no bound. */
    boolean isInDoubt(Result result) {
        return result.role().equals("sample")
                && result.flags().contains(Flag.BELOW_STANDARDS)
                && result.netDeltaA().isPresent()
                && !isHalf(result)
                && !isShown(result, step.calibration().orElseThrow());
    }

    private boolean isShown(Result result, Calibration calibration) {
        OptionalDouble curve = calibration.uAt(calibration.lowest());
        if (curve.isEmpty() || scatter.isEmpty()) {
            return false;
        }
        double net = result.netDeltaA().orElseThrow();
        double apart = 1 - calibration.commonShift(calibration.lowest());
        Repeatability known = scatter.get();
        double variance = curve.getAsDouble() * curve.getAsDouble()
                + known.function().at(net) / result.n()
                + apart * apart * known.function().at(0) / blanks(result);
        double freedom =
                Math.min(calibration.fit().degreesOfFreedom(), known.function().degreesOfFreedom(net));
        double gap = calibration.curve().at(calibration.lowest()) - net;
        return gap > StudentT.quantile(ONE_SIDED, freedom) * Math.sqrt(variance);
    }

    private int blanks(Result result) {
        return Optional.ofNullable(
                        step.blanks().get(wells(result).get(0).trace().group()))
                .map(blank -> blank.wells().size())
                .orElseThrow();
    }

    private boolean isHalf(Result result) {
        return wells(result).stream()
                .flatMap(well -> well.trace().sample().stream())
                .anyMatch(sample -> sample.treatment() != Treatment.NONE);
    }

    private List<WellResult> wells(Result result) {
        return step.where(well -> result.wells().contains(well.well()));
    }
}
