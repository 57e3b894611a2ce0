package tallywell.trace;

/**
 * How clearly a trace shows that anything reacted.
 *
 * <p>Where one straight line describes all readings after the trigger, meets the baseline there within three standard
 * deviations and stays within 6 mA of it to the end, as in most blanks, there is no burst to look for the end of: noise would
 * put it anywhere, and ΔA with it. Where it misses the baseline by no more than ten, the burst is too faint to see its
 * course. A line that meets the baseline and leaves it by more may be a slow reaction as well as creep.
 */
enum SeenBurst {
    /** Nothing reacted. */
    NONE,
    /** Something reacted, and no reading shows its course. */
    FAINT,
    /** Creep, or a reaction so slow that it looks like creep. */
    STRAIGHT,
    /** The course of the reaction can be looked at. */
    CLEAR;

    private static final double SEEN = 3;
    private static final double PLAIN = 10;

    /** What may hide in a straight line is no more than its whole change, in absorbance. */
    private static final double QUIET = 0.006;

    /** Fewer readings show no course anyway. */
    static final int FEWEST_FOR_COURSE = 10;

    /** What scatter about a line is at most, in units of that of neighbours, as noise carries over by half. */
    private static final double MOST_CARRIED = 1.6;

    /** Whether readings may show how it goes on. */
    boolean mayShowItsCourse() {
        return this == STRAIGHT || this == CLEAR;
    }

    /**
     * Looks at a well.
     *
     * @param t times in s from the trigger
     * @param y absorbances, spikes taken out
     * @param baseline what was there before the trigger
     * @return what is seen; clear where there are too few readings to say, three at two times being the fewest
     */
    static SeenBurst in(double[] t, double[] y, BaselineRule baseline) {
        int n = t.length;
        LineFit line = n < 3 ? null : LineFit.of(t, y, 0, n, null);
        if (line == null || !(line.timeSquares() > 0)) {
            return CLEAR;
        }
        Noise found = Noise.about(line, t, y, 0, n, null);
        double sd =
                Math.max(BurstTail.LEAST_SCATTER, Math.min(found.sd(), MOST_CARRIED * Noise.ofNeighbours(y, 0, null)));
        Noise noise = new Noise(sd, found.carry(), found.degreesOfFreedom());
        double u = Math.hypot(
                noise.ofLineAt(0, line, t, 0, n, null),
                baseline.uncertainty(sd, noise.carry()).orElse(0));
        double off = Math.abs(line.at(0) - baseline.value());
        boolean quiet = n < FEWEST_FOR_COURSE || Math.abs(line.at(t[n - 1]) - baseline.value()) < QUIET;
        if (off > (quiet ? PLAIN : SEEN) * u) {
            return CLEAR;
        }
        BentCreep bent = BentCreep.of(line, t, y, 0, null);
        if (bent != null && bent.isSure()) {
            return CLEAR;
        }
        return !quiet ? STRAIGHT : off > SEEN * u ? FAINT : NONE;
    }
}
