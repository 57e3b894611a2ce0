package tallywell.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What the residuals of all wells of a plate have in common: a lamp that drifts, a door that was opened, creep that dies
 * away in all of them.
 *
 * <pre>{@code
 * Z[j] = sum over wells of residual[w][j] / scatter[w], divided by the root of how many wells
 * ratio = mean over passes of Z[j]²
 * share = share of the wells whose residuals go along with those of the others
 * effect = what creep that dies away, fitted to the mean residual, does to a line at the trigger
 * }</pre>
 *
 * <p>One well cannot tell a slow drift of a few tenths of mA from noise that carries over; ninety-six together can, since
 * their noise averages out and the drift does not. Where wells are independent the ratio is near 1, and Z does not bend
 * ({@link BentCreep}). Only readings at which the burst is over count, so that a law which describes the burst of every well a
 * little wrong is no drift. Nor is what some wells do and others do not, such as reactions that are not over or creep that dies
 * away in some samples: wells with a flag of their own do not count, unless nothing is seen without them, and most of the wells
 * must go along. Most of the baselines, too, must slope the same way.
 *
 * @param ratio mean square of the standardised common residual
 * @param wanders whether the ratio is too large or the standardised common residual bends beyond doubt, and most wells go along
 * @param size root mean square of the common residual, in absorbance
 * @param effect what the bend may do to ΔA, in absorbance; 0 where there is no more than noise
 * @param baselineEffect what the slope that the baselines have in common does to their mean at the trigger, in absorbance; 0
 *     where there is none beyond doubt
 * @param wells how many wells it rests on
 */
public record CommonDrift(double ratio, boolean wanders, double size, double effect, double baselineEffect, int wells) {
    /** Fewest wells, and fewest readings, that say anything. */
    public static final int FEWEST = 8;

    private static final double SEEN = 3;

    /**
     * Share of the wells, each by what it can tell, that must go along with the others. Half do by chance, and 0.7 where four in
     * ten bend; of wells that each bend by their standard uncertainty five sixths do. With three quarters, plates are missed
     * whose wells bend by less and whose ΔA is off by more, since their lines begin late.
     */
    private static final double MOST_WELLS = 0.7;

    /** The same of baselines, which all begin alike. */
    private static final double MOST_BASELINES = 0.75;

    /** Baseline readings that show a slope. */
    private static final int FEWEST_BEFORE = 4;

    /** Standard uncertainties from 0 beyond which the common slope of the baselines is sure. */
    private static final double SURE_SLOPE = 3.5;

    /**
     * What a line makes of a drift at the trigger, over what it leaves of it in the residuals: a whole wave over the trace comes
     * to three to six.
     */
    private static final double TAKEN_OFF = 4;

    /** A drift that moves ΔA by less matters to nobody. */
    private static final double LEAST = 0.0005;

    /**
     * One well as it was read.
     *
     * @param baseline the series before the trigger, with times; empty in a later step
     * @param after the series after the trigger
     * @param change what was made of it
     * @param passes in which pass over the plate each of its readings was taken, counted from 0
     */
    public record Followed(Optional<Series> baseline, Series after, Change change, List<Integer> passes) {
        /** Refuses lists that do not go together. */
        public Followed {
            passes = List.copyOf(passes);
            if (passes.size() != after.size()) {
                throw new IllegalArgumentException(
                        "passes must be as many as after (" + after.size() + ") but was " + passes.size());
            }
        }
    }

    /**
     * Looks at the wells of one plate and step, read together.
     *
     * @return empty if fewer than eight wells have a line or a curve through eight finished readings or more in common, and
     *     their baselines nothing
     */
    public static Optional<CommonDrift> of(List<Followed> wells) {
        List<FinishedResiduals> over = wells.stream()
                .filter(well -> !well.change().flags().contains(TraceFlag.REACTION_INCOMPLETE))
                .map(FinishedResiduals::of)
                .filter(FinishedResiduals::areEnough)
                .toList();
        List<FinishedResiduals> plain =
                over.stream().filter(FinishedResiduals::arePlain).toList();
        double baselineEffect = baselineEffect(wells);
        Optional<CommonDrift> ofPlain = of(plain, baselineEffect);
        // A drift may put most wells off their lines, so that those left are few, or not a fair draw.
        return ofPlain.filter(drift -> drift.wanders)
                .or(() -> of(over, baselineEffect).filter(drift -> drift.wanders || ofPlain.isEmpty()))
                .or(() -> ofPlain);
    }

    private static Optional<CommonDrift> of(List<FinishedResiduals> residuals, double baselineEffect) {
        CommonTrace common = CommonTrace.of(residuals);
        if (common.passes() < FEWEST) {
            return baselineEffect > 0
                    ? Optional.of(new CommonDrift(0, false, 0, 0, baselineEffect, common.wells()))
                    : Optional.empty();
        }
        return Optional.of(of(common, baselineEffect));
    }

    private static CommonDrift of(CommonTrace common, double baselineEffect) {
        BentCreep ofZ = bent(common.times(), common.standardised());
        BentCreep ofMean = bent(common.times(), common.mean());
        double ratio = meanSquare(common.standardised());
        boolean wanders = ratio > SEEN && common.shareOfWells() >= MOST_WELLS;
        boolean bends = ofZ != null && ofZ.isSure() && common.shareOfWellsThatBend() >= MOST_WELLS;
        return new CommonDrift(
                ratio,
                wanders || bends,
                Math.sqrt(meanSquare(common.mean())),
                ofMean == null ? 0 : Math.sqrt(ofMean.allowance()),
                baselineEffect,
                common.wells());
    }

    private static @Nullable BentCreep bent(double[] t, double[] y) {
        return BentCreep.of(LineFit.of(t, y, 0, t.length, null), t, y, 0, null);
    }

    private static double meanSquare(double[] values) {
        return Arrays.stream(values).map(each -> each * each).average().orElse(0);
    }

    /** Whether the baselines slope in common, by how their slopes differ from well to well; no matter what carries over. */
    private static double baselineEffect(List<Followed> wells) {
        List<LineFit> lines = new ArrayList<>();
        double reach = 0;
        for (Followed well : wells) {
            boolean mean = well.change().baseline().slopePerS() == 0
                    && well.change().baseline().leftOut().isEmpty();
            if (mean && well.baseline().isPresent() && well.baseline().get().isTimed()) {
                Series read = well.baseline().get();
                LineFit line = LineFit.of(read.times(), read.values(), 0, read.size(), null);
                if (line.n() >= FEWEST_BEFORE && line.timeSquares() > 0) {
                    lines.add(line);
                    reach += Math.abs(line.timeMean());
                }
            }
        }
        int n = lines.size();
        if (n < FEWEST) {
            return 0;
        }
        double mean = lines.stream().mapToDouble(LineFit::slope).average().orElse(0);
        double squares = lines.stream()
                .mapToDouble(line -> (line.slope() - mean) * (line.slope() - mean))
                .sum();
        double u = Math.sqrt(squares / (n - 1) / n);
        boolean sure = Math.abs(mean) > SURE_SLOPE * u * Coverage.factor(n - 1);
        return sure && shareOf(lines, mean) >= MOST_BASELINES ? Math.abs(mean) * reach / n : 0;
    }

    /** Share of the lines that slope the same way as their mean. */
    private static double shareOf(List<LineFit> lines, double mean) {
        Votes votes = new Votes();
        for (LineFit line : lines) {
            double variance = line.squares() / line.degreesOfFreedom();
            double scatter = Math.max(BurstTail.LEAST_SCATTER, Math.sqrt(variance));
            votes.add(mean * line.slope(), Math.sqrt(line.timeSquares()) / scatter);
        }
        return votes.share();
    }

    /** Whether the wells drift together. */
    public boolean isSeen() {
        return wanders || baselineEffect > 0;
    }

    /** How far ΔA may be off for it, in absorbance; 0 where nothing is seen. */
    public double moves() {
        double after = wanders ? Math.max(effect, TAKEN_OFF * size) : 0;
        return Math.max(after, baselineEffect);
    }

    /** Whether that may matter to a ΔA of this standard uncertainty. */
    public boolean mattersTo(double uDeltaA) {
        return moves() > Math.max(LEAST, uDeltaA);
    }
}
