package tallywell.budget;

import tallywell.curve.Calibration;

/**
 * How far the curve at a level moves with the response of each standard.
 *
 * <pre>{@code
 * pull(j) = w(j) g(j)ᵀ (Σ w g gᵀ)⁻¹ g(level)      g: slopes of the curve in its parameters
 * }</pre>
 *
 * <p>For a straight line that is the row of its hat matrix.
 */
final class Pull {
    private Pull() {}

    /** The pull of each standard, in the order of the calibration. */
    static double[] of(Calibration calibration, double level) {
        double[] gradient = calibration.curve().gradientAt(level);
        int p = gradient.length;
        double[] weighted = new double[p];
        for (int i = 0; i < p; i++) {
            for (int j = 0; j < p; j++) {
                weighted[i] += calibration.fit().cofactor(i, j) * gradient[j];
            }
        }
        return calibration.standards().stream()
                .mapToDouble(standard -> {
                    double[] at = calibration.curve().gradientAt(standard.level());
                    double sum = 0;
                    for (int i = 0; i < p; i++) {
                        sum += at[i] * weighted[i];
                    }
                    return standard.weight() * sum;
                })
                .toArray();
    }
}
