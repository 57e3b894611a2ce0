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
 * large. A start within 30 % is improved twice by the step of Fritsch, Shafer and Crowley, each of which makes the
 * number of right digits four times as many; the result is good to a few units in the last place.
 *
 * <p>Source: F. N. Fritsch, R. E. Shafer and W. P. Crowley, Solution of the transcendental equation we^w = x (algorithm 443),
 * Comm. ACM 16 (1973) 123 (from memory); R. M. Corless et al., On the Lambert W function, Adv. Comput. Math. 5 (1996)
 * 329 (from memory).
 */
public final class LambertW {
    /** Below this w is exp(x) to the last digit. */
    private static final double TINY = -37;

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
        if (x < TINY) {
            return Math.exp(x);
        }
        return x > LARGE ? start(x) : improved(improved(start(x), x), x);
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

    private static double improved(double w, double x) {
        double z = x - w - Math.log(w);
        double q = 2 * (1 + w) * (1 + w + 2.0 / 3 * z);
        return w * (1 + z / (1 + w) * (q - z) / (q - 2 * z));
    }
}
