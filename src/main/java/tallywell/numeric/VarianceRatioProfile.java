package tallywell.numeric;

import java.util.Arrays;

/**
 * The likelihood of a variance function over the ratio of its parts alone.
 *
 * <pre>{@code
 * s²ᵢ = c · gᵢ,  gᵢ = 1 + r · y²ᵢ              r from 0 (constant) to ∞ (proportional)
 * c(r) = sum of νᵢ vᵢ / gᵢ  over  sum of νᵢ    the constant part that suits the ratio best
 * −2 log L(r) = N log c(r) + sum of νᵢ log gᵢ  + a constant,  N = sum of νᵢ
 * }</pre>
 *
 * <p>What is left is a curve over one number. It may have several minima, so all are found: its derivative is followed
 * over a grid in log r, each change of sign from falling to rising is halved down, and the lowest minimum is taken,
 * edges included.
 *
 * <p>The edge r = ∞ counts only where every mean is off 0. A group with a mean of 0 whose values differ rules it out by
 * itself. One whose values are all the same, as rounded readings of blanks can be, makes the likelihood grow without
 * bound there; since equal readings do not show that nothing scatters, the best maximum short of the edge is taken, or r = 0.
 */
final class VarianceRatioProfile {
    /**
     * Step of the grid in log r. The derivative changes over a unit of log r at the least, since every term of it is a
     * function of r y² / (1 + r y²).
     */
    private static final double STEP = 0.125;

    /** How far beyond the ratios at which the smallest and largest mean matter the grid reaches, in log r. */
    private static final double MARGIN = 14;

    private final double[] squares;
    private final double[] variances;
    private final double[] freedom;
    private final double total;

    VarianceRatioProfile(double[] squares, double[] variances, double[] freedom) {
        this.squares = squares;
        this.variances = variances;
        this.freedom = freedom;
        this.total = Arrays.stream(freedom).sum();
    }

    /** The ratio of highest likelihood, proportional over constant part; 0 or infinite at the edges. */
    double best() {
        double largest = Arrays.stream(squares).max().orElseThrow();
        if (Arrays.stream(squares).distinct().count() < 2) {
            return 0;
        }
        double smallest = Arrays.stream(squares).filter(each -> each > 0).min().orElseThrow();
        double best = 0;
        double least = deviance(0);
        double end = MARGIN - Math.log(smallest);
        double from = -MARGIN - Math.log(largest);
        double before = slope(Math.exp(from));
        for (double to = from + STEP; to <= end; from = to, to += STEP) {
            double after = slope(Math.exp(to));
            if (before < 0 && after >= 0) {
                double ratio = Math.exp(halved(from, to));
                double deviance = deviance(ratio);
                if (deviance < least) {
                    best = ratio;
                    least = deviance;
                }
            }
            before = after;
        }
        boolean awayFromZero = Arrays.stream(squares).allMatch(each -> each > 0);
        return awayFromZero && proportionalDeviance() < least ? Double.POSITIVE_INFINITY : best;
    }

    /** The constant part that suits a ratio best. */
    double constant(double ratio) {
        double sum = 0;
        for (int i = 0; i < squares.length; i++) {
            sum += freedom[i] * variances[i] / (1 + ratio * squares[i]);
        }
        return sum / total;
    }

    /** The proportional part where there is no other; every mean is off 0. */
    double proportionalAlone() {
        double sum = 0;
        for (int i = 0; i < squares.length; i++) {
            sum += freedom[i] * variances[i] / squares[i];
        }
        return sum / total;
    }

    private double deviance(double ratio) {
        double sum = total * Math.log(constant(ratio));
        for (int i = 0; i < squares.length; i++) {
            sum += freedom[i] * Math.log1p(ratio * squares[i]);
        }
        return sum;
    }

    private double proportionalDeviance() {
        double sum = total * Math.log(proportionalAlone());
        for (int i = 0; i < squares.length; i++) {
            sum += freedom[i] * Math.log(squares[i]);
        }
        return sum;
    }

    /** The derivative of the deviance with respect to the ratio. */
    private double slope(double ratio) {
        double turn = 0;
        double growth = 0;
        for (int i = 0; i < squares.length; i++) {
            double size = 1 + ratio * squares[i];
            turn += freedom[i] * variances[i] * squares[i] / (size * size);
            growth += freedom[i] * squares[i] / size;
        }
        return growth - turn / constant(ratio);
    }

    private double halved(double falling, double rising) {
        double low = falling;
        double high = rising;
        while (true) {
            double middle = low + (high - low) / 2;
            if (!(middle > low && middle < high)) {
                return low;
            }
            if (slope(Math.exp(middle)) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
    }
}
