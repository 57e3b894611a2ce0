package tallywell.trace;

import org.jspecify.annotations.Nullable;

/**
 * Scatter of readings about a straight line, and how much of it carries over from one reading to the next.
 *
 * <pre>{@code
 * e[i] = carry e[i-1] + innovation,   corr(e[i], e[j]) = carry^|i-j|
 * }</pre>
 *
 * <p>The lag-one correlation of residuals of a line is smaller than that of the noise by about (2 + 4 carry) / n, which is
 * put back; a negative one is taken as 0, so that an uncertainty never shrinks for it. Under fewer than
 * {@value #FEWEST_FOR_CARRY} readings it says too little and is taken as 0.
 *
 * <p>Source: first-order autoregressive errors and the bias of their estimated correlation, F. H. C. Marriott and J. A.
 * Pope, Bias in the estimation of autocorrelations, Biometrika 41 (1954) 390 (from memory).
 *
 * @param sd standard deviation of one reading
 * @param carry correlation of neighbours, 0 to {@value #MOST_CARRY}
 * @param degreesOfFreedom what the standard deviation rests on, less than n - 2 where readings carry over
 */
record Noise(double sd, double carry, double degreesOfFreedom) {
    static final int FEWEST_FOR_CARRY = 12;
    static final double MOST_CARRY = 0.9;

    /** Noise of the readings about their line; there must be three of them at two times or more. */
    static Noise about(LineFit line, double[] t, double[] y, int from, int to, boolean @Nullable [] leftOut) {
        double carry = line.n() < FEWEST_FOR_CARRY ? 0 : carry(line, t, y, from, to, leftOut);
        Moments moments = Moments.of(line, carry, t, from, to, leftOut);
        double expected = line.n() - moments.ones / line.n() - moments.times / line.timeSquares();
        double sd = Math.sqrt(line.squares() / expected);
        double effective = line.degreesOfFreedom() * (1 - carry * carry) / (1 + carry * carry);
        return new Noise(sd, carry, effective);
    }

    /** Standard deviation of the line at a time, carrying over included. */
    double ofLineAt(double timeS, LineFit line, double[] t, int from, int to, boolean @Nullable [] leftOut) {
        Moments moments = Moments.of(line, carry, t, from, to, leftOut);
        double level = 1.0 / line.n();
        double lever = line.timeSquares() > 0 ? (timeS - line.timeMean()) / line.timeSquares() : 0;
        double variance =
                level * level * moments.ones + 2 * level * lever * moments.both + lever * lever * moments.times;
        return sd * Math.sqrt(Math.max(0, variance));
    }

    /** Standard deviation of the slope of the line in absorbance per s. */
    double ofSlope(LineFit line, double[] t, int from, int to, boolean @Nullable [] leftOut) {
        return sd * Math.sqrt(Moments.of(line, carry, t, from, to, leftOut).times) / line.timeSquares();
    }

    private static double carry(LineFit line, double[] t, double[] y, int from, int to, boolean @Nullable [] leftOut) {
        if (!(line.squares() > 0)) {
            return 0;
        }
        double products = 0;
        double last = 0;
        for (int i = from; i < to; i++) {
            if (leftOut == null || !leftOut[i]) {
                double residual = y[i] - line.at(t[i]);
                products += residual * last;
                last = residual;
            }
        }
        return unbiased(products / line.squares(), line.n(), 2);
    }

    /** Puts back what fitting {@code parameters} parameters takes from the lag-one correlation of n residuals. */
    static double unbiased(double correlation, int n, int parameters) {
        double put = (correlation + (double) parameters / n) / (1 - 2.0 * parameters / n);
        return Math.min(MOST_CARRY, Math.max(0, put));
    }

    /** Quadratic forms of the correlation matrix with the constant and with the centred times. */
    private record Moments(double ones, double both, double times) {
        static Moments of(LineFit line, double carry, double[] t, int from, int to, boolean @Nullable [] leftOut) {
            if (carry == 0) {
                return new Moments(line.n(), 0, line.timeSquares());
            }
            double ones = 0;
            double both = 0;
            double times = 0;
            double pastOne = 0;
            double pastTime = 0;
            for (int i = from; i < to; i++) {
                if (leftOut == null || !leftOut[i]) {
                    double dt = t[i] - line.timeMean();
                    ones += 1 + 2 * pastOne;
                    both += dt + pastTime + dt * pastOne;
                    times += dt * dt + 2 * dt * pastTime;
                    pastOne = carry * (pastOne + 1);
                    pastTime = carry * (pastTime + dt);
                }
            }
            return new Moments(ones, both, times);
        }
    }
}
