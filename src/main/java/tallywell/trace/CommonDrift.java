package tallywell.trace;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the residuals of all wells of a plate have in common: a lamp that drifts, a door that was opened.
 *
 * <pre>{@code
 * Z[j] = sum over wells of residual[w][j] / scatter[w], divided by the root of how many wells
 * ratio = mean over readings of Z[j]²
 * }</pre>
 *
 * <p>One well cannot tell a slow drift of a few tenths of mA from noise that carries over; ninety-six together can, since
 * their noise averages out and the drift does not. Where wells are independent the ratio is near 1.
 *
 * @param ratio mean square of the standardised common residual
 * @param size root mean square of the common residual, in absorbance
 * @param wells how many wells it rests on
 */
public record CommonDrift(double ratio, double size, int wells) {
    /** Fewest wells, and fewest readings, that say anything. */
    public static final int FEWEST = 8;

    private static final double SEEN = 3;

    /**
     * Looks at the wells of one plate and step, read together.
     *
     * @param after the series after the trigger; reading j of each was taken in one pass over the plate
     * @param changes what was made of each, in the same order
     * @return empty if fewer than eight wells have a line or a curve through eight readings or more in common
     */
    public static Optional<CommonDrift> of(List<Series> after, List<Change> changes) {
        if (after.size() != changes.size()) {
            throw new IllegalArgumentException(
                    "changes must be as many as after (" + after.size() + ") but was " + changes.size());
        }
        int longest = after.stream().mapToInt(Series::size).max().orElse(0);
        Sums sums = new Sums(longest);
        for (int w = 0; w < after.size(); w++) {
            sums.add(after.get(w), changes.get(w));
        }
        return sums.result();
    }

    /** Whether the wells drift together. */
    public boolean isSeen() {
        return ratio > SEEN;
    }

    /** Sums over wells, reading by reading. */
    private static final class Sums {
        private final double[] standardised;
        private final double[] plain;
        private final int[] count;
        private int wells;

        Sums(int readings) {
            standardised = new double[readings];
            plain = new double[readings];
            count = new int[readings];
        }

        void add(Series after, Change change) {
            double squares = 0;
            int n = 0;
            for (int j = 0; j < after.size(); j++) {
                OptionalDouble residual = change.residual(after, j);
                if (residual.isPresent()) {
                    squares += residual.getAsDouble() * residual.getAsDouble();
                    n++;
                }
            }
            if (n < FEWEST || !(squares > 0)) {
                return;
            }
            double scatter = Math.sqrt(squares / n);
            wells++;
            for (int j = 0; j < after.size(); j++) {
                OptionalDouble residual = change.residual(after, j);
                if (residual.isPresent()) {
                    standardised[j] += residual.getAsDouble() / scatter;
                    plain[j] += residual.getAsDouble();
                    count[j]++;
                }
            }
        }

        Optional<CommonDrift> result() {
            double squares = 0;
            double sizes = 0;
            int readings = 0;
            for (int j = 0; j < count.length; j++) {
                if (count[j] >= FEWEST) {
                    squares += standardised[j] * standardised[j] / count[j];
                    sizes += plain[j] / count[j] * (plain[j] / count[j]);
                    readings++;
                }
            }
            return readings < FEWEST
                    ? Optional.empty()
                    : Optional.of(new CommonDrift(squares / readings, Math.sqrt(sizes / readings), wells));
        }
    }
}
