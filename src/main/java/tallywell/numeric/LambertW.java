package tallywell.numeric;

/**
 * Lambert's W function for the argument eˣ, from x itself, so that neither large nor small arguments leave the range of
 * numbers.
 *
 * <pre>{@code
 * w + ln w = x,   w > 0,   w = W(exp x)
 * }</pre>
 *
 * <p>Every x has one such w: it falls to exp(x) for small x (and to 0 with it, below x = -745) and grows as x - ln x for
 * large. A start within 30 % is improved by the step of Fritsch, Shafer and Crowley, which makes the number of right digits
 * four times as many: once where the start is good to four digits, else twice. The result is good to a few units in the
 * last place.
 *
 * <p>Source: F. N. Fritsch, R. E. Shafer and W. P. Crowley, Solution of the transcendental equation we^w = x (algorithm 443),
 * Comm. ACM 16 (1973) 123 (from memory); R. M. Corless et al., On the Lambert W function, Adv. Comput. Math. 5 (1996)
 * 329 (from memory).
 */
public final class LambertW {
    /** Below this three terms of the series in exp(x) are good to the last digit. */
    private static final double SMALL = -13;

    /** Of 1 + w: what a start may be off in the logarithm for one step to be enough. */
    private static final double CLOSE = 1e-4;

    /** Above this the start x - ln x + ln x / x is good to the last digit. */
    private static final double LARGE = 1e9;

    private LambertW() {}

    /**
     * W(exp x).
     *
     * @param x any finite number
     * @throws IllegalArgumentException unless x is finite
     */
    public static double ofExp(double x) {
        if (!(Math.abs(x) <= Double.MAX_VALUE)) {
            throw new IllegalArgumentException("x must be finite but was " + x);
        }
        if (x < SMALL) {
            double e = Math.exp(x);
            return e * (1 - e * (1 - 1.5 * e));
        }
        double w = start(x);
        if (x > LARGE) {
            return w;
        }
        double off = x - w - Math.log(w);
        double better = improved(w, off);
        return Math.abs(off) < CLOSE * (1 + w) ? better : improved(better, x - better - Math.log(better));
    }

    private static double start(double x) {
        if (x < -1) {
            double e = Math.exp(x);
            return e / (1 + e);
        }
        if (x < 3) {
            // The tangent at W(e) = 1 with the first bend: slope w / (1 + w) = 1/2, second derivative 1/8.
            double d = x - 1;
            return 1 + d * (0.5 + d * 0.0625);
        }
        double log = Math.log(x);
        return x - log + log / x;
    }

    private static double improved(double w, double z) {
        double q = 2 * (1 + w) * (1 + w + 2.0 / 3 * z);
        return w * (1 + z / (1 + w) * (q - z) / (q - 2 * z));
    }
}
