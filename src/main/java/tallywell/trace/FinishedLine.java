package tallywell.trace;

import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The straight line through the finished part of one well. */
final class FinishedLine {
    /** Creep in absorbance per s that no side activity reaches: 10 mA/min, twice what is met in practice. */
    private static final double MOST_CREEP = 0.010 / 60;

    /** Bound on the burst left (in absorbance) above which a few end points are called incomplete whatever their scatter. */
    private static final double MOST_OF_FEW = 0.003;

    /**
     * What a few end points may leave open of the burst, in standard deviations of their line at the trigger: where all was over
     * it comes to 2 to 11 of them (docs/creep.md), where a slow reaction is not excluded to far more.
     */
    private static final double MOST_OPEN = 12;

    /** The same as a part of the change, so that it is no more than what U is for. */
    private static final double MOST_OF_CHANGE = 0.1;

    private static final double OUTLIER = 5.5;
    private static final int FEWEST_FOR_OUTLIERS = 10;

    private final double[] t;
    private final double[] y;
    private final boolean[] leftOut;
    private final int from;
    private final Start start;
    private final @Nullable Tail tail;
    private final LineFit fit;
    private final @Nullable Noise noise;
    private final @Nullable BentCreep bent;

    /**
     * Where the line begins.
     *
     * @param reading first reading
     * @param tail what is known of the end of the burst
     * @param inTail the first reading as the tail counts, which knows of no spikes
     * @param slow whether it may all be a slow reaction; of a few end points, whether any of their runs shows the burst
     * @param few what a few end points leave open, or null of a series
     * @param plate scatter of readings by the plate, or null
     */
    private record Start(
            int reading,
            @Nullable Tail tail,
            int inTail,
            boolean slow,
            @Nullable EndPointBurst few,
            @Nullable ReadingScatter plate) {
        /** A line that rests on nothing but its readings. */
        static Start at(int reading) {
            return new Start(reading, null, reading, false, null, null);
        }
    }

    private FinishedLine(double[] t, double[] y, boolean[] leftOut, Start start) {
        this.t = t;
        this.y = y;
        this.leftOut = leftOut;
        this.start = start;
        from = start.reading();
        tail = start.tail();
        int n = t.length;
        fit = LineFit.of(t, y, from, n, leftOut);
        bent = BentCreep.of(fit, t, y, from, leftOut);
        if (fit.n() < 3 || !(fit.timeSquares() > 0)) {
            noise = null;
        } else if (start.few() != null && start.plate() != null) {
            noise = new Noise(start.plate().sd(), 0, start.plate().degreesOfFreedom());
        } else if (tail == null || fit.n() >= Noise.FEWEST_FOR_CARRY) {
            noise = Noise.about(fit, t, y, from, n, leftOut);
        } else {
            noise = Noise.about(fit, tail.carry(), t, from, n, leftOut);
        }
    }

    /** The line from a start chosen from the data; from the first reading where there are fewer than five. */
    static FinishedLine chosen(double[] t, double[] y, BaselineRule baseline, @Nullable ReadingScatter plate) {
        boolean[] spikes = Spikes.in(y);
        double[] kept = Spikes.kept(t, spikes);
        double[] keptY = Spikes.kept(y, spikes);
        if (kept.length < SeenBurst.FEWEST_FOR_COURSE) {
            return ofFew(t, y, spikes, baseline, plate);
        }
        SeenBurst seen = SeenBurst.in(kept, keptY, baseline);
        Tail tail = BurstTail.of(kept, keptY, baseline, seen);
        if (tail == null) {
            return new FinishedLine(t, y, spikes, Start.at(0)).withoutOutliers();
        }
        int start = FinishedStart.of(tail, kept.length);
        if (FinishedStart.isPoor(tail, start)) {
            // The end alone does not tell well enough what is left; the burst as a whole may.
            Tail byLaw = CurveTail.of(kept, keptY, baseline, tail.bends());
            int other = byLaw == null ? start : FinishedStart.of(byLaw, kept.length);
            if (byLaw != null && FinishedStart.isBetter(byLaw, other, tail, start)) {
                tail = byLaw;
                start = other;
            }
        }
        if (seen == SeenBurst.STRAIGHT && tail.leftBound(start) > FinishedStart.MOST_BURST) {
            // Creep, or a slow reaction: it is flagged, but a line from somewhere in its noise would be worth nothing.
            return new FinishedLine(t, y, spikes, new Start(0, null, 0, true, null, null)).withoutOutliers();
        }
        int reading = Spikes.readingOfKept(start, spikes);
        return new FinishedLine(t, y, spikes, new Start(reading, tail, start, false, null, null)).withoutOutliers();
    }

    /**
     * The line through a few end points. Each start is judged by the readings from it on alone; taken is the one with the least
     * expected square error at the trigger, scatter and what is left open together.
     */
    private static FinishedLine ofFew(
            double[] t, double[] y, boolean[] spikes, BaselineRule baseline, @Nullable ReadingScatter plate) {
        double[] kept = Spikes.kept(t, spikes);
        double[] keptY = Spikes.kept(y, spikes);
        int n = kept.length;
        EndPointBurst best = null;
        boolean seen = false;
        int at = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int j = 0; n - j >= Math.min(n, FinishedStart.FEWEST) && n - j >= 3; j++) {
            if (!(kept[n - 1] > kept[j])) {
                break;
            }
            EndPointBurst here = EndPointBurst.of(kept, keptY, j, baseline, plate);
            double cost = here.ofScatter() * here.ofScatter() + here.most() * here.most();
            seen |= here.isSure();
            if (best == null || cost < least - FinishedStart.WORTH_IT) {
                least = cost;
                best = here;
                at = j;
            }
        }
        int reading = best == null ? 0 : Spikes.readingOfKept(at, spikes);
        return new FinishedLine(t, y, spikes, new Start(reading, null, at, seen, best, plate));
    }

    /** The line from a start that the analyst chose. */
    static FinishedLine from(int start, double[] t, double[] y) {
        return new FinishedLine(t, y, Spikes.in(y), Start.at(start)).withoutOutliers();
    }

    private FinishedLine withoutOutliers() {
        if (noise == null || fit.n() < FEWEST_FOR_OUTLIERS) {
            return this;
        }
        double limit = OUTLIER * Math.max(noise.sd(), BurstTail.LEAST_SCATTER);
        boolean[] out = leftOut.clone();
        boolean any = false;
        for (int i = from; i < t.length; i++) {
            if (!out[i] && Math.abs(y[i] - fit.at(t[i])) > limit) {
                out[i] = true;
                any = true;
            }
        }
        return any ? new FinishedLine(t, y, out, start) : this;
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

    /**
     * Standard uncertainty of the line at the trigger, burst left and bend included; empty under three readings.
     *
     * @param ofCourse what {@link #ofCourse} gives
     */
    OptionalDouble uncertainty(double ofCourse) {
        return noise == null ? OptionalDouble.empty() : OptionalDouble.of(Math.hypot(ofScatter(noise), ofCourse));
    }

    /** The part of it that the course of the trace leaves open: burst left and bend; 0 under three readings. */
    double ofCourse() {
        if (noise == null) {
            return 0;
        }
        if (start.few() != null) {
            return start.few().u();
        }
        double burst = tail == null ? 0 : tail.errorRms(start.inTail());
        return Math.sqrt(burst * burst + ofBend(noise, Math.hypot(ofScatter(noise), burst)));
    }

    private double ofScatter(Noise noise) {
        return noise.ofLineAt(0, fit, t, from, t.length, leftOut) * factor(noise);
    }

    /** Variance of the line at the trigger from creep that dies away, by what of it the readings show. */
    private double ofBend(Noise noise, double known) {
        double own = bent == null ? 0 : bent.allowance();
        double byTail = 0;
        if (tail != null && tail.dyingSquare() > 0) {
            double[] shape = BentCreep.dyingAway(t, from, t.length);
            double lever = LineFit.of(t, shape, from, t.length, leftOut).at(0) - 1;
            byTail = lever * lever * tail.dyingSquare();
        }
        double allowance = Math.max(own, byTail);
        if (allowance == 0) {
            return 0;
        }
        double creep = Math.abs(fit.slope()) + 2 * noise.ofSlope(fit, t, from, t.length, leftOut);
        return BentCreep.limited(allowance, known, creep * t[t.length - 1]);
    }

    private static double factor(Noise noise) {
        return Coverage.factor(noise.degreesOfFreedom());
    }

    /** What is to be flagged. */
    Set<TraceFlag> flags(double before) {
        Set<TraceFlag> flags = EnumSet.noneOf(TraceFlag.class);
        if (!Spikes.listed(leftOut).isEmpty()) {
            flags.add(TraceFlag.SPIKE);
        }
        if (noise == null || isOpen()) {
            flags.add(TraceFlag.CREEP_NOT_TESTED);
        }
        if (mayHaveBurstLeft() || isReaction(fit.slope(), t[t.length - 1], fit.at(0) - before)) {
            flags.add(TraceFlag.REACTION_INCOMPLETE);
        }
        int untilTail = tail == null ? t.length : tail.from() + 10;
        boolean steps = Spikes.jumps(Spikes.kept(t, leftOut), Spikes.kept(y, leftOut), untilTail);
        if (steps || tail != null && tail.jumps()) {
            flags.add(TraceFlag.JUMP);
        }
        boolean against = start.few() != null && start.few().isAgainst();
        if (against || bent != null && bent.isSure() || tail != null && tail.bends()) {
            flags.add(TraceFlag.CREEP_NOT_CONSTANT);
        }
        return flags;
    }

    /** Whether too much of the burst may be left; of a few end points, whether they bend as the end of a burst does. */
    private boolean mayHaveBurstLeft() {
        EndPointBurst few = start.few();
        if (few != null) {
            // A burst seen by all readings that those of the line alone do not exclude is one, too.
            return few.most() > MOST_OF_FEW && (few.isSure() || start.slow() && isWide(few));
        }
        return tail == null ? start.slow() : tail.leftBound(start.inTail()) > FinishedStart.MOST_BURST;
    }

    /** Whether a few end points leave more open than what makes them useful, and do not say that the burst is still on. */
    private boolean isOpen() {
        return start.few() != null && !mayHaveBurstLeft() && isWide(start.few());
    }

    private static boolean isWide(EndPointBurst few) {
        double useful = Math.max(MOST_OPEN * few.ofScatter(), MOST_OF_CHANGE * few.change());
        return !(few.most() <= Math.max(MOST_OF_FEW, useful));
    }

    /** The finished part for the result. */
    FinishedPart part() {
        int n = t.length;
        List<Integer> out =
                Spikes.listed(leftOut).stream().filter(each -> each >= from).toList();
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
                tail == null ? OptionalDouble.empty() : OptionalDouble.of(tail.left(start.inTail())),
                tail == null ? OptionalDouble.empty() : OptionalDouble.of(tail.leftBound(start.inTail())));
    }
}
