package tallywell.task;

/**
 * How the uncertainties of a plate are simulated beside their budgets.
 *
 * @param trials how many draws, from {@value #LEAST} to {@value #MOST}
 * @param seed any number; the same one gives the same draws
 */
public record Draws(int trials, long seed) {
    /** With fewer draws the ends of a 95 % interval rest on too little (JCGM 101:2008, 7.2.2 NOTE 1, from memory). */
    public static final int LEAST = 1000;

    /** More say nothing that could matter and would only take time. */
    public static final int MOST = 1_000_000;

    /** The seed where none is given. */
    public static final long SEED = 1;

    /** Refuses too few and too many. */
    public Draws {
        if (!(trials >= LEAST && trials <= MOST)) {
            throw new IllegalArgumentException("trials must be from " + LEAST + " to " + MOST + " but was " + trials);
        }
    }

    /** What was asked for in words, as reports state it. */
    String words() {
        return "Monte Carlo with " + trials + " draws, seed " + seed;
    }
}
