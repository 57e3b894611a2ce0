package tallywell.trace;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * How many end points, and how far apart, tell a finished reaction from one that is not over, for a plate that scatters so
 * much. Found by the law that judges the wells themselves: finished traces of a short list of schedules are drawn and worked.
 *
 * @param count readings after the trigger
 * @param everyS time between them in s
 */
public record EndPointSchedule(int count, double everyS) {
    private static final double MINUTE = 60;
    /** Number, and minutes between; fewest first (our own list, of what people read by hand). */
    private static final int[][] LIST = {{3, 5}, {4, 5}, {5, 5}, {6, 5}, {6, 10}, {8, 5}, {8, 10}, {9, 10}};

    private static final int DRAWS = 40;
    /** At least so many of the traces must pass: 19 of 20. */
    private static final int LEAST_PASS = 38;

    /** Creep of the traces, as in docs/creep.md: 1 mA/min. */
    private static final double CREEP_PER_S = 0.001 / MINUTE;

    private static final long SEED = 1;

    /**
     * The first of the list that decides; empty where none does.
     *
     * @param scatter of readings of the plate
     * @param change smallest ΔA that it must hold for, in absorbance
     * @param firstS time of the first reading in s from the trigger
     */
    public static Optional<EndPointSchedule> of(ReadingScatter scatter, double change, double firstS) {
        for (int[] each : LIST) {
            EndPointSchedule schedule = new EndPointSchedule(each[0], each[1] * MINUTE);
            if (schedule.decides(scatter, change, firstS)) {
                return Optional.of(schedule);
            }
        }
        return Optional.empty();
    }

    private boolean decides(ReadingScatter scatter, double change, double firstS) {
        SplittableRandom random = new SplittableRandom(SEED);
        // Such a plate will know its scatter as well as one of many wells does.
        ReadingScatter known = new ReadingScatter(scatter.sd(), Math.max(DRAWS, scatter.degreesOfFreedom()));
        int passes = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            double[] t = new double[count];
            double[] y = new double[count];
            for (int i = 0; i < count; i++) {
                t[i] = firstS + i * everyS;
                y[i] = change + CREEP_PER_S * t[i] + scatter.sd() * random.nextGaussian();
            }
            Change found = DeltaA.of(
                    new Baseline.Given(0, scatter.sd()),
                    Series.of(t, y),
                    new AfterRule.Extrapolate(OptionalDouble.empty()),
                    known);
            boolean open = found.flags().contains(TraceFlag.CREEP_NOT_TESTED)
                    || found.flags().contains(TraceFlag.REACTION_INCOMPLETE);
            passes += open ? 0 : 1;
        }
        return passes >= LEAST_PASS;
    }
}
