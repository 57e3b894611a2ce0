package tallywell.trace;

import org.jspecify.annotations.Nullable;

/**
 * Scatter of readings about a straight line, and how much of it carries over from one reading to the next.
 *
 * <pre>{@code
 * e[i] = carry e[i-1] + innovation,   corr(e[i], e[j]) = carry^|i-j|
 * }</pre>
 *
 * <p>The lag-one correlation of residuals of a line is smaller than that of the noise by about (p + (p + 2) carry) / n, p
 * being how many parameters were fitted, which is
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
    static final int FEWEST_FOR_CARRY = 20;
    static final double MOST_CARRY = 0.8;
    private static final int FEWEST_FOR_NEIGHBOURS = 10;
    private static final double USUAL_CARRY = 0.25;
    private static final int KNOWN_READINGS = 6;

    /** Noise of the readings about their line; there must be three of them at two times or more. */
    static Noise about(LineFit line, double[] t, double[] y, int from, int to, boolean @Nullable [] leftOut) {
        double carry = carry(line, t, y, from, to, leftOut);
        return about(line, carry, t, from, to, leftOut);
    }

    /** The same where it is known from elsewhere how much carries over. */
    static Noise about(LineFit line, double carry, double[] t, int from, int to, boolean @Nullable [] leftOut) {
        Moments moments = Moments.of(line, carry, t, from, to, leftOut);
        double expected = line.n() - moments.ones / line.n() - moments.times / line.timeSquares();
        double sd = Math.sqrt(line.squares() / expected);
        return new Noise(sd, carry, freedom(line.n(), 2, carry));
    }

    /**
     * Scatter by which readings of the later half differ from the mean of their neighbours: no burst enlarges it, and noise
     * that carries over by half shows two thirds of its size there. Infinite under {@value #FEWEST_FOR_NEIGHBOURS} readings.
     *
     * @param from first reading looked at
     */
    static double ofNeighbours(double[] y, int from, boolean @Nullable [] leftOut) {
        int n = y.length - from;
        double sum = 0;
        int count = 0;
        for (int i = from + Math.max(1, n / 2); i < y.length - 1; i++) {
            if (leftOut == null || !(leftOut[i - 1] || leftOut[i] || leftOut[i + 1])) {
                sum += Math.abs(y[i] - 0.5 * (y[i - 1] + y[i + 1]));
                count++;
            }
        }
        // The mean size of normal noise is √(2/π) of its standard deviation; such a difference has variance 3/2.
        return n < FEWEST_FOR_NEIGHBOURS || count == 0
                ? Double.POSITIVE_INFINITY
                : Math.sqrt(Math.PI / 3) * sum / count;
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

    /** By what noise that carries over so much enlarges the variance of something slow, over that of white noise. */
    static double inflation(double carry) {
        return (1 + carry) / (1 - carry);
    }

    /**
     * How much carries over, by the residuals of a fit.
     *
     * @param products sum of products of neighbouring residuals
     * @param squares sum of their squares
     * @param n how many there are
     * @param parameters how many were fitted
     * @return 0 under {@value #FEWEST_FOR_CARRY} residuals, and where there is no scatter
     */
    static double carry(double products, double squares, int n, int parameters) {
        return n < FEWEST_FOR_CARRY || !(squares > 0) ? 0 : unbiased(products / squares, n, parameters);
    }

    private static double carry(LineFit line, double[] t, double[] y, int from, int to, boolean @Nullable [] leftOut) {
        double products = 0;
        double last = 0;
        for (int i = from; i < to; i++) {
            if (leftOut == null || !leftOut[i]) {
                double residual = y[i] - line.at(t[i]);
                products += residual * last;
                last = residual;
            }
        }
        return carry(products, line.squares(), line.n(), 2);
    }

    /**
     * Puts back what fitting {@code parameters} parameters takes from the lag-one correlation of n residuals, and draws the
     * result towards what readers do as if {@value #KNOWN_READINGS} readings had shown it.
     */
    static double unbiased(double correlation, int n, int parameters) {
        double put = (correlation + (double) parameters / n) / (1 - (parameters + 2.0) / n);
        double drawn = (n * put + KNOWN_READINGS * USUAL_CARRY) / (n + KNOWN_READINGS);
        return Math.min(MOST_CARRY, Math.max(0, drawn));
    }

    /**
     * What a standard uncertainty rests on, the carrying over being uncertain as well.
     *
     * <pre>{@code
     * 1 / freedom = 1 / (n - parameters) + 6 (1 + c) / (1 - c) / (n + 125) min(1, c / 0.3)
     * }</pre>
     *
     * <p>An uncertainty goes as 1 / (1 - c), so that a carry c known to √((1 - c²) / n) makes it as uncertain as few degrees
     * of freedom would. The second term is of that form; its two constants were set so that 95 % intervals cover 95 % at
     * 32 to 120 readings and a carry of 0.5, and it fades out where hardly anything carries over.
     */
    static double freedom(int n, int parameters, double carry) {
        double carried = 6 * (1 + carry) / ((1 - carry) * (n + 125)) * Math.min(1, carry / 0.3);
        return 1 / (1.0 / Math.max(1, n - parameters) + carried);
    }

    /**
     * Gain in the sum of squares, in units of the noise as it is estimated, that is as rare as {@code known} were the noise
     * known.
     *
     * <pre>{@code
     * gain = freedom (exp(known / freedom) - 1)
     * }</pre>
     *
     * <p>Exact for two parameters more, whose F distribution has this closed form; near enough for one.
     */
    static double gain(double known, int n, int parameters, double carry) {
        double freedom = freedom(n, parameters, carry);
        return freedom * Math.expm1(known / freedom);
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
