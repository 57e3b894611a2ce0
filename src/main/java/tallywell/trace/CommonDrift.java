package tallywell.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the residuals of all wells of a plate have in common: a lamp that drifts, a door that was opened, creep that dies
 * away in all of them.
 *
 * <pre>{@code
 * Z[j] = sum over wells of residual[w][j] / scatter[w], divided by the root of how many wells
 * ratio = mean over passes of Z[j]²
 * }</pre>
 *
 * <p>One well cannot tell a slow drift of a few tenths of mA from noise that carries over; ninety-six together can, since
 * their noise averages out and the drift does not. Where wells are independent the ratio is near 1. Only readings at which
 * the burst is over count, so that a law which describes the burst of every well a little wrong is no drift.
 *
 * @param ratio mean square of the standardised common residual
 * @param size root mean square of the common residual, in absorbance
 * @param wells how many wells it rests on
 */
public record CommonDrift(double ratio, double size, int wells) {
    /** Fewest wells, and fewest readings, that say anything. */
    public static final int FEWEST = 8;

    private static final double SEEN = 3;

    /** A common residual of this part of u(ΔA) stands for a drift that matters: what a line takes off a drift is larger. */
    private static final double MATTERS = 0.5;

    /** Burst left (in absorbance) under which a reading belongs to the finished part of a progress curve. */
    private static final double FINISHED = 0.0003;

    /**
     * One well as it was read.
     *
     * @param after the series after the trigger
     * @param change what was made of it
     * @param passes in which pass over the plate each of its readings was taken, counted from 0
     */
    public record Followed(Series after, Change change, List<Integer> passes) {
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
        return sums.result();
    }

    /** Whether the wells drift together. */
    public boolean isSeen() {
        return ratio > SEEN;
    }

    /** Whether that may matter to a ΔA of this standard uncertainty. */
    public boolean mattersTo(double uDeltaA) {
        return isSeen() && size > MATTERS * uDeltaA;
    }

    /** Sums over wells, pass by pass. */
    private static final class Sums {
        private final double[] standardised;
        private final double[] plain;
        private final int[] count;
        private int wells;

        Sums(int passes) {
            standardised = new double[passes];
            plain = new double[passes];
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
                count[pass]++;
            }
        }

        Optional<CommonDrift> result() {
            double squares = 0;
            double sizes = 0;
            int readings = 0;
            for (int j = 0; j < count.length; j++) {
                if (count[j] >= FEWEST) {
                    squares += standardised[j] * standardised[j] / count[j];
                    sizes += plain[j] / count[j] * (plain[j] / count[j]);
                    readings++;
                }
            }
            return readings < FEWEST
                    ? Optional.empty()
                    : Optional.of(new CommonDrift(squares / readings, Math.sqrt(sizes / readings), wells));
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
