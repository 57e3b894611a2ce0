package tallywell.trace;

import java.util.Arrays;

/** What the end of a trace shows beside its burst and line: a jump, creep that dies away, a second reaction. */
final class TailFaults {
    private static final double JUMP_GAIN = 14;
    private static final int FEWEST_FOR_JUMP = 10;

    /** Gain, in variances, of an exponential that is there beyond doubt. */
    private static final double SURE_GAIN = 16;
    /**
     * Part of the burst to which its end comes when traced back to the trigger: 1 in first order, more with saturation or a
     * lag, down to a half where the product inhibits as strongly as the substrate binds.
     */
    private static final double LEAST_TRACED_BACK = 0.4;

    private final RateSearch search;
    private final double[] level;
    private final double[] rest;
    private final boolean jumps;
    private boolean bends;
    private final double dyingSquare;

    /**
     * Looks at the window of a search.
     *
     * @param search what was found of burst and line
     * @param dyingAway creep that dies away ({@link BentCreep}), over the window
     * @param startS time of the first reading of the window in s from the trigger
     * @param burst the whole burst in absorbance
     */
    TailFaults(RateSearch search, double[] dyingAway, double startS, double burst) {
        this.search = search;
        int m = search.x().length;
        level = new double[m];
        Arrays.fill(level, 1);
        rest = search.residual().clone();
        Span span = new Span(3);
        span.add(level);
        span.add(search.x());
        span.add(search.decay());
        span.takeOff(rest);
        jumps = findJump(span);
        dyingSquare = findDying(span, dyingAway);
        bends |= isSecondPhase(startS, burst);
    }

    /** Whether the trace jumps at one of the readings of the window. */
    boolean jumps() {
        return jumps;
    }

    /** Whether there is more than one burst and a line. */
    boolean bends() {
        return bends;
    }

    /** Square of the size of creep that dies away; 0 where there is no more than noise. */
    double dyingSquare() {
        return dyingSquare;
    }

    /**
     * What a jump leaves in the residuals looks like noise that carries over, and would hide it; so the noise is judged
     * from what remains once there may be one.
     */
    private boolean findJump(Span span) {
        Span.Jump jump = span.jump(level, level, rest, 0);
        double left = variance(Span.dot(rest, rest) - jump.gain());
        if (jump.gain() <= JUMP_GAIN * left || level.length < FEWEST_FOR_JUMP) {
            return false;
        }
        double carried = carried(span.without(jump, level, level, rest));
        double most = Noise.gain(JUMP_GAIN, level.length, 5, carried);
        return jump.gain() > most * left * Noise.inflation(carried);
    }

    private double findDying(Span span, double[] dyingAway) {
        if (level.length < BentCreep.FEWEST) {
            return 0;
        }
        double norm = span.freed(dyingAway);
        double product = Span.dot(dyingAway, rest);
        double gain = norm > 0 ? product * product / norm : 0;
        double left = variance(Span.dot(rest, rest) - gain);
        if (gain <= left) {
            return 0;
        }
        double[] without = rest.clone();
        for (int i = 0; i < without.length; i++) {
            without[i] -= product / norm * dyingAway[i];
        }
        double carried = carried(without);
        double inflation = Noise.inflation(carried);
        bends = gain > BentCreep.sureGain(level.length, carried) * left * inflation;
        return gain > left * inflation ? gain / norm : 0;
    }

    /**
     * Whether what dies away is no end of the burst: traced back to the trigger along its own exponential it comes to far
     * less than the burst, as that of no single reaction does.
     */
    private boolean isSecondPhase(double startS, double burst) {
        double most = Math.abs(search.size()) + 2 * search.deviation();
        return level.length >= BentCreep.FEWEST
                && search.gain() > Noise.gain(SURE_GAIN, level.length, 4, search.carry()) * search.inflated()
                && most * Math.exp(search.rate() * startS) < LEAST_TRACED_BACK * Math.abs(burst);
    }

    private double variance(double squares) {
        return Math.max(
                BurstTail.LEAST_SCATTER * BurstTail.LEAST_SCATTER,
                Math.max(0, squares) / Math.max(1, level.length - 5));
    }

    private double carried(double[] without) {
        return Noise.carry(Span.neighbours(without), Span.dot(without, without), level.length, 5);
    }
}
