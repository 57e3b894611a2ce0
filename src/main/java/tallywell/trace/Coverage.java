package tallywell.trace;

/**
 * Turns a standard deviation that rests on few degrees of freedom into a standard uncertainty whose double covers about
 * 95 %.
 *
 * <pre>{@code
 * factor = t(0.975, degrees of freedom) / 1.96
 * }</pre>
 *
 * <p>From three degrees of freedom on this lies within 7 % of the factor √(ν/(ν − 2)) that JCGM 101:2008, 6.4.9.2, gives for
 * the standard deviation of a scaled and shifted t distribution, and it stays finite below. Quantiles of Student's t as
 * in any statistical table (recomputed with R 4.2.2, qt(0.975, 1:12)); beyond twelve the expansion in 1/ν is good to 4
 * digits.
 */
final class Coverage {
    // spotless:off
    private static final double[] T = {
        12.7062, 4.3027, 3.1824, 2.7764, 2.5706, 2.4469, 2.3646, 2.3060, 2.2622, 2.2281, 2.2010, 2.1788,
    };
    // spotless:on

    private static final double NORMAL = 1.959964;

    private Coverage() {}

    /** The factor; fractions of a degree of freedom are interpolated in 1/ν, and below one it stays that of one. */
    static double factor(double degreesOfFreedom) {
        if (!(degreesOfFreedom > 1)) {
            return T[0] / NORMAL;
        }
        if (degreesOfFreedom >= T.length) {
            double v = degreesOfFreedom;
            double z2 = NORMAL * NORMAL;
            return 1 + (z2 + 1) / (4 * v) + (5 * z2 * z2 + 16 * z2 + 3) / (96 * v * v);
        }
        int below = (int) degreesOfFreedom;
        double share = (1.0 / below - 1 / degreesOfFreedom) / (1.0 / below - 1.0 / (below + 1));
        return (T[below - 1] + share * (T[below] - T[below - 1])) / NORMAL;
    }
}
