package tallywell.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What the residuals of all wells of a plate have in common: a lamp that drifts, a door that was opened, creep that dies
 * away in all of them.
 *
 * <pre>{@code
 * Z[j] = sum over wells of residual[w][j] / scatter[w], divided by the root of how many wells
 * ratio = mean over passes of Z[j]²
 * effect = what creep that dies away, fitted to the mean residual, does to a line at the trigger
 * }</pre>
 *
 * <p>One well cannot tell a slow drift of a few tenths of mA from noise that carries over; ninety-six together can, since
 * their noise averages out and the drift does not. Where wells are independent the ratio is near 1, and Z does not bend
 * ({@link BentCreep}). Only readings at which the burst is over count, so that a law which describes the burst of every well a
 * little wrong is no drift.
 *
 * @param ratio mean square of the standardised common residual
 * @param bends whether the standardised common residual bends beyond doubt
 * @param size root mean square of the common residual, in absorbance
 * @param effect what the bend may do to ΔA, in absorbance; 0 where there is no more than noise
 * @param baselineEffect what the slope that the baselines have in common does to their mean at the trigger, in absorbance; 0
 *     where there is none beyond doubt
 * @param wells how many wells it rests on
 */
public record CommonDrift(double ratio, boolean bends, double size, double effect, double baselineEffect, int wells) {
    /** Fewest wells, and fewest readings, that say anything. */
    public static final int FEWEST = 8;

    private static final double SEEN = 3;

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

    /** Burst left (in absorbance) under which a reading belongs to the finished part of a progress curve. */
    private static final double FINISHED = 0.0003;

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
     * @return empty if fewer than eight wells have a line or a curve through eight finished readings or more in common
     */
    public static Optional<CommonDrift> of(List<Followed> wells) {
        int passes = wells.stream()
                        .flatMap(well -> well.passes().stream())
                        .mapToInt(pass -> pass)
                        .max()
                        .orElse(-1)
                + 1;
        Sums sums = new Sums(passes);
        wells.forEach(sums::add);
        return sums.result(baselineEffect(wells));
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
        return Math.abs(mean) > SURE_SLOPE * u * Coverage.factor(n - 1) ? Math.abs(mean) * reach / n : 0;
    }

    /** Whether the wells drift together. */
    public boolean isSeen() {
        return ratio > SEEN || bends || baselineEffect > 0;
    }

    /** How far ΔA may be off for it, in absorbance; 0 where nothing is seen. */
    public double moves() {
        double after = ratio > SEEN || bends ? Math.max(effect, TAKEN_OFF * size) : 0;
        return Math.max(after, baselineEffect);
    }

    /** Whether that may matter to a ΔA of this standard uncertainty. */
    public boolean mattersTo(double uDeltaA) {
        return moves() > Math.max(LEAST, uDeltaA);
    }

    /** Sums over wells, pass by pass. */
    private static final class Sums {
        private final double[] standardised;
        private final double[] plain;
        private final double[] times;
        private final int[] count;
        private int wells;

        Sums(int passes) {
            standardised = new double[passes];
            plain = new double[passes];
            times = new double[passes];
            count = new int[passes];
        }

        void add(Followed well) {
            Residuals residuals = Residuals.of(well);
            double scatter = residuals.scatter();
            if (residuals.reading.size() < FEWEST || !(scatter > 0)) {
                return;
            }
            wells++;
            for (int k = 0; k < residuals.reading.size(); k++) {
                int pass = well.passes().get(residuals.reading.get(k));
                standardised[pass] += residuals.value.get(k) / scatter;
                plain[pass] += residuals.value.get(k);
                times[pass] += well.after().timeS(residuals.reading.get(k));
                count[pass]++;
            }
        }

        Optional<CommonDrift> result(double baselineEffect) {
            int[] shared = IntStream.range(0, count.length)
                    .filter(pass -> count[pass] >= FEWEST)
                    .toArray();
            if (shared.length < FEWEST) {
                return Optional.empty();
            }
            double[] t = Arrays.stream(shared)
                    .mapToDouble(pass -> times[pass] / count[pass])
                    .toArray();
            double[] z = Arrays.stream(shared)
                    .mapToDouble(pass -> standardised[pass] / Math.sqrt(count[pass]))
                    .toArray();
            double[] mean = Arrays.stream(shared)
                    .mapToDouble(pass -> plain[pass] / count[pass])
                    .toArray();
            BentCreep ofZ = bent(t, z);
            BentCreep ofMean = bent(t, mean);
            return Optional.of(new CommonDrift(
                    meanSquare(z),
                    ofZ != null && ofZ.isSure(),
                    Math.sqrt(meanSquare(mean)),
                    ofMean == null ? 0 : Math.sqrt(ofMean.allowance()),
                    baselineEffect,
                    wells));
        }

        private static @Nullable BentCreep bent(double[] t, double[] y) {
            return BentCreep.of(LineFit.of(t, y, 0, t.length, null), t, y, 0, null);
        }

        private static double meanSquare(double[] values) {
            return Arrays.stream(values).map(each -> each * each).average().orElse(0);
        }
    }

    /** Residuals of one well in its finished part. */
    private record Residuals(List<Integer> reading, List<Double> value) {
        static Residuals of(Followed well) {
            Residuals residuals = new Residuals(new ArrayList<>(), new ArrayList<>());
            Series after = well.after();
            well.change().finished().ifPresent(part -> {
                for (int j = part.from(); j < part.to(); j++) {
                    if (part.uses(j)) {
                        residuals.add(j, after.absorbance(j) - part.at(after.timeS(j)));
                    }
                }
            });
            well.change().curve().ifPresent(curve -> residuals.addAll(curve, after));
            return residuals;
        }

        private void addAll(FittedCurve curve, Series after) {
            double[] fitted = curve.at(after.times());
            double[] left = curve.burstLeft(after.times());
            for (int j = 0; j < fitted.length; j++) {
                if (Math.abs(left[j]) < FINISHED && !curve.leftOut().contains(j)) {
                    add(j, after.absorbance(j) - fitted[j]);
                }
            }
        }

        private void add(int at, double residual) {
            reading.add(at);
            value.add(residual);
        }

        double scatter() {
            return Math.sqrt(
                    value.stream().mapToDouble(each -> each * each).average().orElse(0));
        }
    }
}
