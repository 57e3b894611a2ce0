package tallywell.assess;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import tallywell.numeric.StudentT;
import tallywell.workup.Repeatability;
import tallywell.workup.WellResult;

/**
 * Whether ΔA goes along with something else within slots, such as the row of the well.
 *
 * <pre>{@code
 * d = ΔA - mean of its slot     x = covariate - mean of its slot     weight 1 / variance of ΔA
 * slope = sum of w x d / sum of w x²     t = slope / its standard error, N - slots - 1 degrees of freedom
 * }</pre>
 *
 * <p>Only wells of one content are ever compared with each other, never different samples.
 *
 * @param slope ΔA for each unit of the covariate
 * @param t slope over its standard error
 * @param degreesOfFreedom at least {@value #LEAST}
 */
record Trend(double slope, double t, int degreesOfFreedom) {
    /** With fewer degrees of freedom nothing is said. */
    static final int LEAST = 3;

    /** How often a plate without any trend is suspected; low, since several trends are looked for. */
    static final double SIGNIFICANCE = 0.01;

    /** The trend among wells that count, or nothing if the wells cannot show it. */
    static Optional<Trend> of(List<WellResult> wells, Repeatability scatter, ToDoubleFunction<WellResult> covariate) {
        Map<String, double[]> sums = new HashMap<>();
        for (WellResult well : wells) {
            double[] sum = sums.computeIfAbsent(slot(well), key -> new double[3]);
            sum[0]++;
            sum[1] += well.deltaA().orElseThrow();
            sum[2] += covariate.applyAsDouble(well);
        }
        double xx = 0;
        double xd = 0;
        double dd = 0;
        double largest = 0;
        for (WellResult well : wells) {
            double[] sum = sums.getOrDefault(slot(well), new double[] {1, 0, 0});
            double d = well.deltaA().orElseThrow() - sum[1] / sum[0];
            double x = covariate.applyAsDouble(well) - sum[2] / sum[0];
            double weight = 1 / scatter.function().at(Repeatability.netOf(well));
            xx += weight * x * x;
            xd += weight * x * d;
            dd += weight * d * d;
            largest = Math.max(largest, weight * covariate.applyAsDouble(well) * covariate.applyAsDouble(well));
        }
        int freedom = wells.size() - sums.size() - 1;
        double slope = xx > 0 ? xd / xx : 0;
        double rest = dd - slope * xd;
        // Rounding aside, a covariate that does not vary within slots shows nothing.
        if (freedom < LEAST || !(xx > 1e-12 * largest) || !(rest > 0)) {
            return Optional.empty();
        }
        return Optional.of(new Trend(slope, slope / Math.sqrt(rest / freedom / xx), freedom));
    }

    private static String slot(WellResult well) {
        return Repeatability.slotOf(well);
    }

    /** The probability of a t at least as far from 0 without a trend. */
    double probability() {
        return StudentT.twoSidedTail(t, degreesOfFreedom);
    }

    boolean isClear() {
        return probability() < SIGNIFICANCE;
    }
}
