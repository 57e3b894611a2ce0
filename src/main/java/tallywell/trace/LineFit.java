package tallywell.trace;

import org.jspecify.annotations.Nullable;

/**
 * Ordinary least squares through a run of readings.
 *
 * <p>Kept apart from the general routine because the start of the finished part is chosen anew for every well, and a
 * plate has to be done in well under a millisecond. Sums are taken about the means, so nothing cancels.
 *
 * @param n readings used
 * @param timeMean mean time in s
 * @param mean mean absorbance
 * @param timeSquares sum of squares of the times about their mean; 0 if all times are equal
 * @param slope absorbance per s; 0 if all times are equal
 * @param squares sum of squared residuals
 */
record LineFit(int n, double timeMean, double mean, double timeSquares, double slope, double squares) {
    /**
     * Fits readings {@code from} to {@code to - 1}.
     *
     * @param leftOut readings to pass over, or null for none
     */
    static LineFit of(double[] t, double[] y, int from, int to, boolean @Nullable [] leftOut) {
        int n = 0;
        double timeSum = 0;
        double sum = 0;
        for (int i = from; i < to; i++) {
            if (leftOut == null || !leftOut[i]) {
                n++;
                timeSum += t[i];
                sum += y[i];
            }
        }
        if (n == 0) {
            throw new IllegalArgumentException("readings used must be at least 1 but was 0");
        }
        double timeMean = timeSum / n;
        double mean = sum / n;
        double tt = 0;
        double ty = 0;
        double yy = 0;
        for (int i = from; i < to; i++) {
            if (leftOut == null || !leftOut[i]) {
                double dt = t[i] - timeMean;
                double dy = y[i] - mean;
                tt += dt * dt;
                ty += dt * dy;
                yy += dy * dy;
            }
        }
        double slope = tt > 0 ? ty / tt : 0;
        return new LineFit(n, timeMean, mean, tt, slope, Math.max(0, yy - slope * ty));
    }

    /** The line at a time in s. */
    double at(double timeS) {
        return mean + slope * (timeS - timeMean);
    }

    /** Variance of the line at a time, for readings of variance 1 without correlation. */
    double varianceAt(double timeS) {
        double dt = timeS - timeMean;
        return 1.0 / n + (timeSquares > 0 ? dt * dt / timeSquares : 0);
    }

    /** Readings less the two parameters of the line. */
    int degreesOfFreedom() {
        return n - 2;
    }
}
