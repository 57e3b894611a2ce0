package tallywell.curve;

import java.util.Optional;
import java.util.TreeMap;
import tallywell.numeric.VarianceRatio;

/**
 * Asks whether the level means lie farther from the curve than the scatter of the replicates explains.
 *
 * <pre>{@code
 * pure error   sum of w (y - mean of its level)²              n - L degrees of freedom
 * lack of fit  residual sum of squares less pure error        L - p degrees of freedom
 * F = (lack of fit / (L - p)) / (pure error / (n - L))
 * }</pre>
 *
 * <p>n wells at L levels, p parameters. The result is reported and never changes the model.
 *
 * <p>Check values: {@code anova} of R between the line and the model with a mean for each level.
 */
public final class LackOfFit {
    private LackOfFit() {}

    /**
     * Compares lack of fit with pure error.
     *
     * @return nothing without replicates, without more levels than parameters, or where replicates agree exactly
     */
    public static Optional<VarianceRatio> test(Calibration calibration) {
        TreeMap<Double, double[]> sums = new TreeMap<>();
        for (Standard each : calibration.standards()) {
            double[] sum = sums.computeIfAbsent(each.level(), ignored -> new double[2]);
            sum[0] += each.response();
            sum[1]++;
        }
        double pure = 0;
        for (Standard each : calibration.standards()) {
            double[] sum = sums.getOrDefault(each.level(), new double[] {0, 1});
            double deviation = each.response() - sum[0] / sum[1];
            pure += each.weight() * deviation * deviation;
        }
        int error = calibration.standards().size() - sums.size();
        int lack = sums.size() - calibration.fit().size();
        if (error < 1 || lack < 1 || !(pure > 0)) {
            return Optional.empty();
        }
        double rest = Math.max(0, calibration.fit().sumOfSquares() - pure);
        return Optional.of(new VarianceRatio(rest / lack / (pure / error), lack, error));
    }
}
