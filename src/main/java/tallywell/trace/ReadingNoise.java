package tallywell.trace;

import java.util.Arrays;

/**
 * How readings scatter about a curve: a part that is always there, a part that grows with absorbance, and how much
 * carries over to the next reading.
 *
 * <pre>{@code
 * variance(A) = constant + growth A²,   both at least 0
 * }</pre>
 *
 * <p>Both parts follow from the squared residuals by weighted least squares, weights being one over the square of the
 * variance of the round before. The scatter of the baseline counts as residuals at its absorbance.
 */
final class ReadingNoise {
    private static final int ROUNDS = 3;
    /** Level and creep. */
    private static final int SMOOTH = 2;

    private final double constant;
    private final double growth;
    private final double carry;

    private ReadingNoise(double constant, double growth, double carry) {
        this.constant = constant;
        this.growth = growth;
        this.carry = carry;
    }

    /**
     * Looks at residuals.
     *
     * @param residual residuals of the readings after the trigger
     * @param fitted the curve at those readings
     * @param parameters how many parameters the curve took from them
     * @param baseline the baseline, whose scatter counts as well
     */
    static ReadingNoise of(double[] residual, double[] fitted, int parameters, BaselineRule baseline) {
        ReadingNoise white = of(residual, fitted, parameters, baseline, 0);
        return of(residual, fitted, parameters, baseline, white.carry(residual, fitted, parameters, baseline));
    }

    private static ReadingNoise of(
            double[] residual, double[] fitted, int parameters, BaselineRule baseline, double carry) {
        int n = residual.length;
        double before = baseline.value();
        double squares = baseline.squares();
        int freedom = baseline.freedom();
        // Residuals are smaller than noise by what the parameters took, and those of level and creep take more of it
        // where
        // it carries over.
        double inflation = Noise.inflation(carry);
        double enlarge = n / Math.max(0.5 * n, n - parameters - SMOOTH * (inflation - 1));
        double own = freedom == 0 ? 0 : squares / Math.max(0.5 * freedom, freedom + 1 - inflation);
        double floor = BurstTail.LEAST_SCATTER * BurstTail.LEAST_SCATTER;
        double total = squares;
        for (double each : residual) {
            total += each * each * enlarge;
        }
        double constant = Math.max(floor, total / (n + freedom));
        double growth = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double w = 0;
            double wa = 0;
            double waa = 0;
            double we = 0;
            double wae = 0;
            for (int i = -1; i < n; i++) {
                double a = i < 0 ? before * before : fitted[i] * fitted[i];
                double e = i < 0 ? own : residual[i] * residual[i] * enlarge;
                double v = constant + growth * a;
                double weight = (i < 0 ? freedom : 1) / (v * v);
                w += weight;
                wa += weight * a;
                waa += weight * a * a;
                we += weight * e;
                wae += weight * a * e;
            }
            double determinant = w * waa - wa * wa;
            growth = determinant > 1e-6 * w * waa ? Math.max(0, (w * wae - wa * we) / determinant) : 0;
            constant = (we - growth * wa) / w;
            double least = 0.02 * we / w;
            if (constant < least) {
                constant = least;
                growth = Math.max(0, (wae - constant * wa) / waa);
            }
            constant = Math.max(floor, constant);
        }
        return new ReadingNoise(constant, growth, carry);
    }

    private double carry(double[] residual, double[] fitted, int parameters, BaselineRule baseline) {
        int n = residual.length;
        if (n < Noise.FEWEST_FOR_CARRY) {
            return 0;
        }
        double variance = sd(baseline.value()) * sd(baseline.value());
        double products = baseline.products() / variance;
        double squares = baseline.squares() / variance;
        double last = 0;
        for (int i = 0; i < n; i++) {
            double e = residual[i] / sd(fitted[i]);
            products += e * last;
            squares += e * e;
            last = e;
        }
        return squares > 0 ? Noise.unbiased(products / squares, n + baseline.readings(), parameters + 1) : 0;
    }

    /** Standard deviation of a reading of this absorbance. */
    double sd(double absorbance) {
        return Math.sqrt(constant + growth * absorbance * absorbance);
    }

    /** Standard deviations along a curve. */
    double[] sd(double[] fitted) {
        return Arrays.stream(fitted).map(this::sd).toArray();
    }

    /** Correlation of neighbours. */
    double carry() {
        return carry;
    }
}
