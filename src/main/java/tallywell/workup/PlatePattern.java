package tallywell.workup;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import tallywell.numeric.SharedScatter;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Mark;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/**
 * Whether the pattern of the wells in one reading comes back in a later one, as it does on one plate: what a well reads before the
 * trigger is part of what it reads after it.
 *
 * <p>Only wells of one content are compared with each other ({@link SharedScatter}), by the last reading of each. Whether dark samples stay
 * dark is not asked: dark samples often hold more analyte, and a second plate of the same samples has the same colours.
 *
 * @param scatter how the two readings go together within contents
 * @param turned whether that is with the later reading turned by 180 degrees, since it fits far better so
 * @param noise bound for the standard deviation of a reading near the blanks, in absorbance
 */
public record PlatePattern(SharedScatter scatter, boolean turned, double noise) {
    /**
     * Log of the ratio of likelihoods from which either answer is found: one in twenty. Between two simple hypotheses one good plate in
     * twenty at most would go that far (Wald, Ann. Math. Stat. 16 (1945) 117-186, from memory); with the bound for noise fewer than one in a
     * thousand do (docs/verdicts.md).
     */
    private static final double LIKELY = Math.log(20);

    /**
     * Bound for how well a reading comes again after the plate was out of the reader, in absorbance and as a part of it. Readers
     * repeat to about 1 mA (common practice, no source); chosen by the study in docs/verdicts.md, in which 1.5 mA and less give no false alarm.
     */
    private static final double REPEAT = 0.0015;

    private static final double REPEAT_PART = 0.005;

    /** With fewer differences between replicates nothing is said (the study of error rates in docs/verdicts.md). */
    private static final int FEWEST = 30;

    /** Contents that scatter by more than so many standard deviations are left out; 6 in 100,000 do by chance. */
    private static final double BUBBLE = 4;

    /** Median of the square of a normal deviate (chi squared with one degree of freedom). */
    private static final double MEDIAN_SQUARE = 0.455;

    private static final int FEWEST_IN_SERIES = 3;

    /** What was found. */
    public enum Finding {
        /** The pattern comes back. */
        ONE_PLATE,
        /** The wells differ too little, or say neither. */
        OPEN,
        /** It does not come back. */
        OTHER_PLATE,
        /** It comes back if the later reading is turned by 180 degrees. */
        TURNED;

        /** Whether results of such readings must be looked at. */
        public boolean isWrong() {
            return this == OTHER_PLATE || this == TURNED;
        }
    }

    /** What the pattern says. */
    public Finding finding() {
        if (turned) {
            return Finding.TURNED;
        }
        double ratio = scatter.ratio();
        if (ratio < -LIKELY) {
            return Finding.OTHER_PLATE;
        }
        return ratio > LIKELY ? Finding.ONE_PLATE : Finding.OPEN;
    }

    /**
     * Compares two readings.
     *
     * @param layout what stands where
     * @param used whether a well counts
     * @param before the earlier reading
     * @param after the later one
     * @return nothing where too few wells have one content
     */
    public static Optional<PlatePattern> of(
            Layout layout, Predicate<Well> used, ReadingSeries before, ReadingSeries after) {
        double repeat = Math.max(REPEAT, Math.max(noise(before), noise(after)));
        List<SharedScatter.Group> groups = groups(layout, used, before, after, repeat);
        if (contrasts(groups) < FEWEST) {
            return Optional.empty();
        }
        Optional<SharedScatter> turned = turned(layout, used, before, after, repeat);
        if (turned.isPresent()) {
            return Optional.of(new PlatePattern(turned.get(), true, repeat));
        }
        List<SharedScatter.Group> kept = withoutBubbles(groups);
        return Optional.of(new PlatePattern(SharedScatter.of(contrasts(kept) < FEWEST ? groups : kept), false, repeat));
    }

    /** How the readings go together with the later one turned, if that explains them far better; by the wells read either way. */
    private static Optional<SharedScatter> turned(
            Layout layout, Predicate<Well> used, ReadingSeries before, ReadingSeries after, double repeat) {
        PlateFormat format = layout.format();
        if (!after.format().equals(format)) {
            return Optional.empty();
        }
        ReadingSeries round = after.moved(i -> format.well(format.wells() - 1 - i));
        Predicate<Well> either = used.and(
                well -> last(after, well).isPresent() && last(round, well).isPresent());
        List<SharedScatter.Group> groups = groups(layout, either, before, after, repeat);
        List<SharedScatter.Group> others = groups(layout, either, before, round, repeat);
        if (contrasts(groups) < FEWEST || !(scatterOfAfter(others) < scatterOfAfter(groups) + LIKELY)) {
            return Optional.empty();
        }
        SharedScatter straight = SharedScatter.of(groups);
        SharedScatter turned = SharedScatter.of(others);
        double better = turned.logOne() - Math.max(straight.logOne(), straight.logTwo());
        return better > LIKELY && turned.ratio() > LIKELY ? Optional.of(turned) : Optional.empty();
    }

    /**
     * Sum of the logarithms of the scatter of the later reading: turned back the right way, replicates scatter less, or as much
     * on a layout that looks the same turned, where turning only swaps them.
     */
    private static double scatterOfAfter(List<SharedScatter.Group> groups) {
        return groups.stream()
                .mapToDouble(group -> (group.n() - 1) * Math.log(REPEAT * REPEAT + group.after() / (group.n() - 1)))
                .sum();
    }

    private static int contrasts(List<SharedScatter.Group> groups) {
        return groups.stream().mapToInt(group -> group.n() - 1).sum();
    }

    private static List<SharedScatter.Group> groups(
            Layout layout, Predicate<Well> used, ReadingSeries before, ReadingSeries after, double repeat) {
        Map<String, List<double[]>> pairs = new LinkedHashMap<>();
        List<double[]> blanks = new ArrayList<>();
        for (Well well : layout.where(content -> !(content instanceof Content.Unused))) {
            OptionalDouble b = last(before, well);
            OptionalDouble a = last(after, well);
            if (used.test(well) && b.isPresent() && a.isPresent()) {
                Content content = layout.at(well);
                double[] pair = {b.getAsDouble(), a.getAsDouble()};
                pairs.computeIfAbsent(Repeatability.slotOf(content, content.group()), key -> new ArrayList<>())
                        .add(pair);
                if (content instanceof Content.Blank) {
                    blanks.add(pair);
                }
            }
        }
        List<double[]> among =
                blanks.isEmpty() ? pairs.values().stream().flatMap(List::stream).toList() : blanks;
        double blankBefore = median(among, 0);
        double blankAfter = median(among, 1);
        return pairs.values().stream()
                .filter(each -> each.size() > 1)
                .map(each -> group(each, blankBefore, blankAfter, repeat))
                .toList();
    }

    /** Leaves out whole contents, by each reading for itself, so that it does not depend on how the readings go together. */
    private static List<SharedScatter.Group> withoutBubbles(List<SharedScatter.Group> groups) {
        double before = limit(groups, SharedScatter.Group::before);
        double after = limit(groups, SharedScatter.Group::after);
        return groups.stream()
                .filter(group -> group.before() <= before * (group.n() - 1) && group.after() <= after * (group.n() - 1))
                .toList();
    }

    private static double limit(List<SharedScatter.Group> groups, ToDoubleFunction<SharedScatter.Group> squares) {
        return BUBBLE
                * BUBBLE
                / MEDIAN_SQUARE
                * median(groups.stream()
                        .mapToDouble(group -> squares.applyAsDouble(group) / (group.n() - 1))
                        .toArray());
    }

    private static SharedScatter.Group group(
            List<double[]> pairs, double blankBefore, double blankAfter, double repeat) {
        double b = pairs.stream().mapToDouble(pair -> pair[0]).average().orElseThrow();
        double a = pairs.stream().mapToDouble(pair -> pair[1]).average().orElseThrow();
        double bb = 0;
        double aa = 0;
        double ab = 0;
        for (double[] pair : pairs) {
            bb += (pair[0] - b) * (pair[0] - b);
            aa += (pair[1] - a) * (pair[1] - a);
            ab += (pair[0] - b) * (pair[1] - a);
        }
        double noise = repeat * repeat + REPEAT_PART * REPEAT_PART * b * b;
        return new SharedScatter.Group(pairs.size(), bb, aa, ab, b - blankBefore, a - blankAfter, noise);
    }

    private static double median(List<double[]> pairs, int of) {
        return median(pairs.stream().mapToDouble(pair -> pair[of]).toArray());
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        int n = values.length;
        return n == 0 ? 0 : (values[(n - 1) / 2] + values[n / 2]) / 2;
    }

    private static OptionalDouble last(ReadingSeries series, Well well) {
        int last = series.size(well) - 1;
        return last >= 0 && series.mark(well, last) == Mark.NONE
                ? OptionalDouble.of(series.absorbance(well, last))
                : OptionalDouble.empty();
    }

    /** Standard deviation of a reading from second differences at the end of each series, which a straight course leaves 0; 0 for end points. */
    private static double noise(ReadingSeries series) {
        double[] variances = series.wells().stream()
                .filter(well -> series.size(well) >= FEWEST_IN_SERIES)
                .flatMapToDouble(well -> bend(series, well).stream())
                // A second difference of independent readings has six times their variance.
                .map(bend -> bend * bend / 6)
                .toArray();
        return Math.sqrt(median(variances) / MEDIAN_SQUARE);
    }

    private static OptionalDouble bend(ReadingSeries series, Well well) {
        int last = series.size(well) - 1;
        for (int i = last - 2; i <= last; i++) {
            if (series.mark(well, i) != Mark.NONE) {
                return OptionalDouble.empty();
            }
        }
        return OptionalDouble.of(series.absorbance(well, last)
                - 2 * series.absorbance(well, last - 1)
                + series.absorbance(well, last - 2));
    }
}
