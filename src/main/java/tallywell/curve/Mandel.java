package tallywell.curve;

import java.util.List;
import java.util.Optional;
import tallywell.numeric.Polynomial;
import tallywell.numeric.Regression;
import tallywell.numeric.VarianceRatio;

/**
 * Mandel's test: whether a parabola fits clearly better than a straight line.
 *
 * <pre>{@code
 * F = (SS line - SS parabola) / (SS parabola / (n - 3))       1 and n - 3 degrees of freedom
 * }</pre>
 *
 * <p>Both curves are fitted with the weights of the calibration. The result is reported and never changes the model.
 *
 * <p>Source: ISO 8466-1, which compares with F at 99 % (from memory). Check value: Miller and Miller, fluorescein with
 * 11 points, F 16.09857 against 11.25862.
 */
public final class Mandel {
    private Mandel() {}

    /**
     * Compares a line with a parabola.
     *
     * @param calibration a straight line with intercept
     * @return nothing for another model, for fewer than four points or three levels, or where the parabola leaves no
     *     residual
     */
    public static Optional<VarianceRatio> test(Calibration calibration) {
        List<Standard> standards = calibration.standards();
        long levels = standards.stream().mapToDouble(Standard::level).distinct().count();
        if (calibration.curve().model() != Model.LINE || standards.size() < 4 || levels < 3) {
            return Optional.empty();
        }
        Regression line = calibration.fit();
        Regression parabola = Polynomial.fit(
                standards.stream().mapToDouble(Standard::level).toArray(),
                standards.stream().mapToDouble(Standard::response).toArray(),
                standards.stream().mapToDouble(Standard::weight).toArray(),
                2);
        // A residual in the last digits is rounding, and a ratio of two roundings says nothing.
        if (!(parabola.sumOfSquares() > 1e-26 * parabola.totalSumOfSquares())) {
            return Optional.empty();
        }
        double gain = Math.max(0, line.sumOfSquares() - parabola.sumOfSquares());
        return Optional.of(new VarianceRatio(gain / parabola.residualVariance(), 1, parabola.degreesOfFreedom()));
    }
}
