package tallywell.trace;

import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The straight line through the finished part of one well. */
final class FinishedLine {
    /** Bound on the burst left at the start (in absorbance) above which a reaction is called incomplete. */
    private static final double MOST_BURST = 0.0005;

    /** Creep in absorbance per s that no side activity reaches: 10 mA/min, twice what is met in practice. */
    private static final double MOST_CREEP = 0.010 / 60;

    private static final double OUTLIER = 5.5;
    private static final int FEWEST_FOR_OUTLIERS = 10;
    private static final int FEWEST_FOR_BEND = 8;
    private static final double BENT_GAIN = 10.6;

    private final double[] t;
    private final double[] y;
    private final boolean @Nullable [] leftOut;
    private final int from;
    private final @Nullable BurstTail tail;
    private final LineFit fit;
    private final @Nullable Noise noise;

    private FinishedLine(double[] t, double[] y, boolean @Nullable [] leftOut, int from, @Nullable BurstTail tail) {
        this.t = t;
        this.y = y;
        this.leftOut = leftOut;
        this.from = from;
        this.tail = tail;
        int n = t.length;
        fit = LineFit.of(t, y, from, n, leftOut);
        if (fit.n() < 3 || !(fit.timeSquares() > 0)) {
            noise = null;
        } else if (tail == null || fit.n() >= Noise.FEWEST_FOR_CARRY) {
            noise = Noise.about(fit, t, y, from, n, leftOut);
        } else {
            noise = Noise.about(fit, tail.carry(), t, from, n, leftOut);
        }
    }

    /** The line from a start chosen from the data; from the first reading where there are fewer than five. */
    static FinishedLine chosen(double[] t, double[] y, double before) {
        boolean[] spikes = Spikes.in(y);
        BurstTail tail = t.length < BurstTail.FEWEST ? null : BurstTail.of(t, y, spikes, before);
        int start = tail == null ? 0 : FinishedStart.of(tail, t.length);
        return new FinishedLine(t, y, spikes, start, tail).withoutOutliers();
    }

    /** The line from a start that the analyst chose. */
    static FinishedLine from(int start, double[] t, double[] y) {
        return new FinishedLine(t, y, Spikes.in(y), start, null).withoutOutliers();
    }

    private FinishedLine withoutOutliers() {
        if (noise == null || fit.n() < FEWEST_FOR_OUTLIERS) {
            return this;
        }
        double limit = OUTLIER * Math.max(noise.sd(), BurstTail.LEAST_SCATTER);
        boolean[] out = leftOut == null ? new boolean[t.length] : leftOut.clone();
        boolean any = false;
        for (int i = from; i < t.length; i++) {
            if (!out[i] && Math.abs(y[i] - fit.at(t[i])) > limit) {
                out[i] = true;
                any = true;
            }
        }
        return any ? new FinishedLine(t, y, out, from, tail) : this;
    }

    /**
     * Whether what looks like creep is the reaction itself: a rise steeper than creep ever is, that by the last reading has
     * done more than the change found. A saturated enzyme that is still at it draws a straight line too.
     */
    static boolean isReaction(double creepPerS, double lastS, double change) {
        return Math.abs(creepPerS) > MOST_CREEP && Math.abs(creepPerS) * lastS > Math.abs(change);
    }

    /** Scatter about the line, or null under three readings. */
    @Nullable Noise noise() {
        return noise;
    }

    /** Standard uncertainty of the line at the trigger, the burst left included; empty under three readings. */
    OptionalDouble uncertainty() {
        if (noise == null) {
            return OptionalDouble.empty();
        }
        double scatter = noise.ofLineAt(0, fit, t, from, t.length, leftOut) * factor(noise);
        return OptionalDouble.of(tail == null ? scatter : Math.hypot(scatter, tail.errorRms(from)));
    }

    private static double factor(Noise noise) {
        return Coverage.factor(noise.degreesOfFreedom());
    }

    /** What is to be flagged. */
    Set<TraceFlag> flags(double before) {
        Set<TraceFlag> flags = EnumSet.noneOf(TraceFlag.class);
        if (leftOut != null && !Spikes.listed(leftOut).isEmpty()) {
            flags.add(TraceFlag.SPIKE);
        }
        if (noise == null) {
            flags.add(TraceFlag.CREEP_NOT_TESTED);
        }
        boolean burst = tail != null && tail.leftBound(from) > MOST_BURST;
        if (burst || isReaction(fit.slope(), t[t.length - 1], fit.at(0) - before)) {
            flags.add(TraceFlag.REACTION_INCOMPLETE);
        }
        boolean steps = Spikes.jumps(leftOut == null ? y : Spikes.kept(y, leftOut));
        if (steps || tail != null && tail.jumps()) {
            flags.add(TraceFlag.JUMP);
        }
        if (bends()) {
            flags.add(TraceFlag.CREEP_NOT_CONSTANT);
        }
        return flags;
    }

    /** Tests the line for a bend, the noise being judged from what remains once it may bend. */
    private boolean bends() {
        int n = fit.n();
        if (n < FEWEST_FOR_BEND) {
            return false;
        }
        double limit = BENT_GAIN * (1 + 8.0 / (n - 4));
        double floor = BurstTail.LEAST_SCATTER * BurstTail.LEAST_SCATTER;
        Bend bend = new Bend();
        double remains = Math.max(0, fit.squares() - bend.both);
        double variance = Math.max(floor, remains / (n - 4));
        if (bend.gain() <= limit * variance) {
            return false;
        }
        double carry = n < Noise.FEWEST_FOR_CARRY || remains <= 0 ? 0 : Noise.unbiased(bend.products() / remains, n, 4);
        return bend.gain() > limit * variance * (1 + carry) / (1 - carry);
    }

    /** What t² and t³ beside the line would gain, by sums of powers of the time about its mean. */
    private final class Bend {
        private final double scale = 1 / (t[t.length - 1] - t[from]);
        private final double third;
        private final double square;
        private final double cube;
        private final double[] sums = new double[7];
        private final double ofSquare;
        private final double both;

        Bend() {
            double bySquare = 0;
            double byCube = 0;
            for (int i = from; i < t.length; i++) {
                if (leftOut == null || !leftOut[i]) {
                    double x = (t[i] - fit.timeMean()) * scale;
                    double r = y[i] - fit.at(t[i]);
                    bySquare += r * x * x;
                    byCube += r * x * x * x;
                    double power = 1;
                    for (int k = 0; k < sums.length; k++) {
                        sums[k] += power;
                        power *= x;
                    }
                }
            }
            double[] s = sums;
            double normOfSquare = s[4] - s[3] * s[3] / s[2] - s[2] * s[2] / s[0];
            third = (s[5] - s[3] / s[2] * s[4] - s[2] / s[0] * s[3]) / normOfSquare;
            double normOfCube = s[6] - s[4] * s[4] / s[2] - s[3] * s[3] / s[0] - third * third * normOfSquare;
            square = bySquare / normOfSquare;
            cube = normOfCube > 0 ? (byCube - third * bySquare) / normOfCube : 0;
            ofSquare = square * bySquare;
            both = ofSquare + cube * cube * normOfCube;
        }

        double gain() {
            return Math.max(both, 1.34 * ofSquare);
        }

        /** Sum of products of neighbouring residuals of the bent line. */
        double products() {
            double products = 0;
            double before = 0;
            for (int i = from; i < t.length; i++) {
                if (leftOut == null || !leftOut[i]) {
                    double x = (t[i] - fit.timeMean()) * scale;
                    double ofSquareAt = x * x - sums[3] / sums[2] * x - sums[2] / sums[0];
                    double ofCubeAt = x * x * x - sums[4] / sums[2] * x - sums[3] / sums[0] - third * ofSquareAt;
                    double r = y[i] - fit.at(t[i]) - square * ofSquareAt - cube * ofCubeAt;
                    products += r * before;
                    before = r;
                }
            }
            return products;
        }
    }

    /** The finished part for the result. */
    FinishedPart part() {
        int n = t.length;
        List<Integer> out = leftOut == null
                ? List.of()
                : Spikes.listed(leftOut).stream().filter(each -> each >= from).toList();
        return new FinishedPart(
                from,
                n,
                out,
                fit.at(0),
                fit.slope(),
                noise == null ? OptionalDouble.empty() : OptionalDouble.of(noise.sd()),
                noise == null ? 0 : noise.carry(),
                fit.timeMean(),
                noise == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(factor(noise) * noise.ofLineAt(fit.timeMean(), fit, t, from, n, leftOut)),
                noise == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(factor(noise) * noise.ofSlope(fit, t, from, n, leftOut)),
                tail == null ? OptionalDouble.empty() : OptionalDouble.of(tail.left(from)),
                tail == null ? OptionalDouble.empty() : OptionalDouble.of(tail.leftBound(from)));
    }
}
