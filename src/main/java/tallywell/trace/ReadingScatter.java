package tallywell.trace;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How much single readings of a plate scatter, where wells were read a few times: pooled over the wells, since three or four
 * readings of one well cannot tell scatter from the end of a burst.
 *
 * <p>The end of a burst bends a trace one way only: the change slows down. So wells that bend the other way, and blanks either
 * way, show scatter and nothing else, however many of the other wells were read too early.
 *
 * @param sd standard deviation of one reading, in absorbance
 * @param degreesOfFreedom what it rests on, at least 1
 */
public record ReadingScatter(double sd, double degreesOfFreedom) {
    /** Refuses what is no scatter. */
    public ReadingScatter {
        if (!(sd > 0 && sd <= Double.MAX_VALUE) || !(degreesOfFreedom >= 1)) {
            throw new IllegalArgumentException(
                    "sd must be over 0 with a degree of freedom but was " + sd + ", " + degreesOfFreedom);
        }
    }

    /**
     * The readings of one well after the trigger.
     *
     * @param after with times
     * @param burst 1 where a burst raises the absorbance, -1 where it lowers it, 0 in a blank
     */
    public record Followed(Series after, int burst) {}

    /** The scatter of some wells; null where none of them shows it. */
    public static @Nullable ReadingScatter of(List<Followed> wells) {
        double squares = 0;
        int freedom = 0;
        for (Followed well : wells) {
            int n = well.after().size();
            if (n < 3 || n >= SeenBurst.FEWEST_FOR_COURSE || !well.after().isTimed()) {
                continue;
            }
            double[] t = well.after().times();
            double[] y = well.after().values();
            LineFit line = LineFit.of(t, y, 0, n, null);
            if (line.timeSquares() > 0 && line.squares() > 0 && !(well.burst() * bend(line, t, y) < 0)) {
                squares += line.squares();
                freedom += line.degreesOfFreedom();
            }
        }
        return freedom == 0
                ? null
                : new ReadingScatter(Math.max(BurstTail.LEAST_SCATTER, Math.sqrt(squares / freedom)), freedom);
    }

    /** Positive where the readings at both ends lie above the line, as at a change that speeds up. */
    private static double bend(LineFit line, double[] t, double[] y) {
        double bend = 0;
        for (int i = 0; i < t.length; i++) {
            double dt = t[i] - line.timeMean();
            bend += dt * dt * (y[i] - line.at(t[i]));
        }
        return bend;
    }
}
