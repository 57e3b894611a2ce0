package tallywell.numeric;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Whether two readings of many wells share what makes the wells differ, so that they are of the same wells: by the likelihood of
 * the scatter within groups of wells of one content.
 *
 * <pre>{@code
 * one plate:    var(b) = P + N + b²(V + U)     var(a) = P + E + a²(V + W)     cov(a, b) = P + a b V
 * two plates:   var(b) = P + b² U              var(a) = E + a² W              cov(a, b) = 0
 * }</pre>
 *
 * <p>P is what a well itself adds to every reading; N noise of the earlier reading, which is bounded; E what the later one adds; V the
 * volume of sample; U and W what else grows with colour and signal, such as turbidity that settles. b and a are how far a group
 * reads above the blanks. Without a bound for N, noise alone would look like another plate; where P is no larger than the bound,
 * the ratio is near 0 and says nothing. Deviations follow a multivariate t distribution with {@value #TAIL} degrees of freedom, so that a bubble
 * counts little (K. L. Lange, R. J. A. Little and J. M. G. Taylor, J. Am. Stat. Assoc. 84 (1989) 881-896, from memory).
 *
 * @param logOne largest log-likelihood of one plate
 * @param logTwo largest log-likelihood of two plates; both leave out the same constant
 * @param wells standard deviation of the earlier reading from well to well, in the unit of the readings
 */
public record SharedScatter(double logOne, double logTwo, double wells) {
    private static final int TAIL = 4;
    /** No volume or turbidity scatters more among replicates, as a part of itself; without a bound it could stand for the wells themselves. */
    private static final double LARGEST_PART = 0.2;

    private static final double TOLERANCE = 1e-3;
    /** Of a reading to four decimals; keeps the likelihood finite where all readings are alike. */
    private static final double LEAST_VARIANCE = 1e-9;

    /**
     * Wells of one content.
     *
     * @param n how many, at least 2
     * @param before sum of the squared deviations of the earlier reading from the group's mean
     * @param after the same of the later reading
     * @param both sum of the products of the deviations
     * @param aboveBefore how far the earlier reading stands above that of the blanks
     * @param aboveAfter the same of the later reading
     * @param noise bound for the variance of the earlier reading's own noise
     */
    public record Group(
            int n, double before, double after, double both, double aboveBefore, double aboveAfter, double noise) {
        /** Refuses what is no scatter. */
        public Group {
            if (n < 2 || !(before >= 0 && after >= 0 && noise >= 0 && before + after + noise <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException("expected at least 2 wells with finite squares but found " + n + ", "
                        + before + ", " + after + ", " + noise);
            }
        }
    }

    /** Compares the two explanations. */
    public static SharedScatter of(List<Group> groups) {
        double before = typical(groups, Group::before);
        double after = typical(groups, Group::after);
        NelderMead.Corner two =
                new NelderMead(p -> two(groups, p), TOLERANCE).from(new double[] {before, 0.05, after, 0.05});
        NelderMead one = new NelderMead(p -> one(groups, p), TOLERANCE);
        double own = Math.abs(two.at()[0]);
        NelderMead.Corner shared = one.from(new double[] {own, 0.5, own / 2, 0.05, 0.05, 0.05});
        NelderMead.Corner apart = one.from(new double[] {own / 4, 1.5, after, 0.05, 0.05, 0.05});
        return new SharedScatter(Math.max(shared.value(), apart.value()), two.value(), own);
    }

    /** A standard deviation to start from, by the median, which a group with a bubble does not move. */
    private static double typical(List<Group> groups, ToDoubleFunction<Group> squares) {
        double[] variances = groups.stream()
                .mapToDouble(group -> squares.applyAsDouble(group) / (group.n() - 1))
                .sorted()
                .toArray();
        return Math.sqrt(LEAST_VARIANCE + 2 * variances[variances.length / 2]);
    }

    /** Log-likelihood of one plate over that of two: above 0 speaks for one. */
    public double ratio() {
        return logOne - logTwo;
    }

    private static double two(List<Group> groups, double[] p) {
        double sum = 0;
        for (Group group : groups) {
            sum += likelihood(
                    group,
                    LEAST_VARIANCE + square(p[0]) + square(group.aboveBefore()) * part(p[1]),
                    LEAST_VARIANCE + square(p[2]) + square(group.aboveAfter()) * part(p[3]),
                    0);
        }
        return sum;
    }

    /** P, the part of N that there is, E, V, U, W; squared, and the second as a sine, which keeps them where they can be. */
    private static double one(List<Group> groups, double[] p) {
        double shared = square(p[0]);
        double part = square(Math.sin(p[1]));
        double volume = part(p[3]);
        double sum = 0;
        for (Group group : groups) {
            double b = group.aboveBefore();
            double a = group.aboveAfter();
            sum += likelihood(
                    group,
                    LEAST_VARIANCE + shared + part * group.noise() + b * b * (volume + part(p[4])),
                    LEAST_VARIANCE + shared + square(p[2]) + a * a * (volume + part(p[5])),
                    shared + a * b * volume);
        }
        return sum;
    }

    private static double likelihood(Group group, double before, double after, double both) {
        double determinant = before * after - both * both;
        double distance = (after * group.before() + before * group.after() - 2 * both * group.both()) / determinant;
        double contrasts = group.n() - 1;
        return -contrasts / 2 * Math.log(determinant) - (TAIL + 2 * contrasts) / 2 * Math.log1p(distance / TAIL);
    }

    private static double part(double x) {
        return square(LARGEST_PART * Math.sin(x));
    }

    private static double square(double x) {
        return x * x;
    }
}
