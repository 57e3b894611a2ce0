package tallywell.trace;

/**
 * How clearly a trace shows that anything reacted.
 *
 * <p>Where one straight line describes all readings after the trigger and meets the baseline there within three standard
 * deviations, as in most blanks, there is no burst to look for the end of: noise would put it anywhere, and ΔA with it. Where
 * it misses the baseline by no more than ten, the burst is too faint to see its course.
 */
enum SeenBurst {
    /** Nothing reacted. */
    NONE,
    /** Something reacted, and no reading shows its course. */
    FAINT,
    /** The course of the reaction can be looked at. */
    CLEAR;

    private static final double SEEN = 3;
    private static final double PLAIN = 10;

    /** What scatter about a line is at most, in units of that of neighbours, as noise carries over by half. */
    private static final double MOST_CARRIED = 1.6;

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
        if (off > PLAIN * u) {
            return CLEAR;
        }
        BentCreep bent = BentCreep.of(line, t, y, 0, null);
        return bent != null && bent.isSure() ? CLEAR : off > SEEN * u ? FAINT : NONE;
    }
}
