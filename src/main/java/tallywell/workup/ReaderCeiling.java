package tallywell.workup;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tallywell.numeric.FisherF;
import tallywell.plate.Content;
import tallywell.plate.Well;

/**
 * Whether the reader stops at a value without a mark.
 *
 * <p>Two signs, each at a level of one plate in a thousand. <em>Equal ends:</em> wells of different content end nearer to one
 * highest value than replicates are to each other. For N wells of one true value and standard deviation s the k highest lie
 * within d by chance with probability (1 − exp(−a d))^(k − 1), a = √(2 ln N) / s (spacings of extremes, Rényi); wells of different true
 * values lie closer more seldom. <em>A flat end:</em> at the plate's highest level a trace scatters far less than the other
 * wells, where noise grows with absorbance. What digits hide of scatter is allowed for.
 */
final class ReaderCeiling {
    /** No photometer in use ends below (our own choice). */
    private static final double LEAST_LEVEL = 1;

    private static final double LEVEL = 0.001;
    private static final int FEWEST_EQUAL = 3;
    private static final int FEWEST_WELLS = 6;
    private static final int FEWEST_FREEDOM = 4;
    private static final int FEWEST_FLAT = 6;

    /** Readings that differ by less are the same number. */
    private static final double LEAST_DIGIT = 1e-6;

    /** Readings of a trace within so many standard deviations of its last one are its end. */
    private static final double NEAR = 4;

    /** Squared differences of neighbours of n readings tell as much of a variance as 2 n / 3 independent ones. */
    private static final double FREEDOM_OF_NEIGHBOURS = 2.0 / 3;

    private static final double MANY = 1e6;

    private final List<End> ends;
    private final double digit;

    /** The last readings of a well. */
    private record End(WellTrace trace, List<Double> values) {
        double last() {
            return values.get(values.size() - 1);
        }

        String content() {
            return trace.content() + " " + trace.group();
        }
    }

    private ReaderCeiling(List<End> ends) {
        this.ends = ends;
        this.digit = digit(ends);
    }

    /** The same wells, those at a ceiling marked; blanks never. */
    static List<WellTrace> marked(List<WellTrace> traces) {
        List<End> ends = traces.stream()
                .filter(ReaderCeiling::tells)
                .map(trace -> new End(trace, values(highest(trace))))
                .sorted(Comparator.comparingDouble(End::last).reversed())
                .toList();
        if (ends.size() < FEWEST_WELLS || !(ends.get(0).last() >= LEAST_LEVEL)) {
            return traces;
        }
        ReaderCeiling plate = new ReaderCeiling(ends);
        Set<Well> stopped = plate.equal();
        stopped.addAll(plate.flat());
        return traces.stream()
                .map(trace -> stopped.contains(trace.well()) ? trace.with(Flag.READER_CEILING) : trace)
                .toList();
    }

    private static boolean tells(WellTrace trace) {
        return trace.used()
                && !(trace.content() instanceof Content.Blank)
                && !(trace.content() instanceof Content.SampleBlank)
                && !highest(trace).isEmpty();
    }

    /** The readings on the higher side of the reaction. */
    private static List<WellReadings.Point> highest(WellTrace trace) {
        List<WellReadings.Point> before = trace.readings().baseline();
        List<WellReadings.Point> after = trace.readings().after();
        boolean falls = !before.isEmpty()
                && !after.isEmpty()
                && before.get(before.size() - 1).absorbance()
                        > after.get(after.size() - 1).absorbance();
        return falls ? before : after;
    }

    private static List<Double> values(List<WellReadings.Point> points) {
        return points.stream().map(WellReadings.Point::absorbance).toList();
    }

    private static double digit(List<End> ends) {
        double[] all = ends.stream()
                .flatMapToDouble(end -> end.values().stream().mapToDouble(Double::doubleValue))
                .sorted()
                .toArray();
        double least = Double.MAX_VALUE;
        for (int i = 1; i < all.length; i++) {
            double step = all[i] - all[i - 1];
            if (step > LEAST_DIGIT / 2) {
                least = Math.min(least, step);
            }
        }
        return Math.max(LEAST_DIGIT, least);
    }

    /** Wells whose last readings are nearer to each other than chance explains. */
    private Set<Well> equal() {
        double best = LEVEL;
        int most = 0;
        Set<String> contents = new HashSet<>();
        for (int k = 1; k <= ends.size(); k++) {
            contents.add(ends.get(k - 1).content());
            double chance = k < FEWEST_EQUAL || contents.size() < 2 ? 1 : chanceOfEqual(k);
            if (chance < best) {
                best = chance;
                most = k;
            }
        }
        Set<Well> wells = new HashSet<>();
        ends.subList(0, most).forEach(end -> wells.add(end.trace().well()));
        return wells;
    }

    private double chanceOfEqual(int k) {
        double s = scatterBelow(k);
        double within = ends.get(0).last() - ends.get(k - 1).last() + digit;
        double steep = Math.sqrt(2 * Math.log(ends.size())) / s;
        // Without scatter, or where nothing shows it, all are near by chance.
        return s > 0 ? Math.pow(-Math.expm1(-steep * within), k - 1) : 1;
    }

    /** Pooled standard deviation within contents of the wells below the k highest; 0 where too few tell. */
    private double scatterBelow(int k) {
        Map<String, List<Double>> groups = new HashMap<>();
        for (End end : ends.subList(k, ends.size())) {
            groups.computeIfAbsent(end.content(), key -> new ArrayList<>()).add(end.last());
        }
        double squares = 0;
        int freedom = 0;
        for (List<Double> group : groups.values()) {
            double mean =
                    group.stream().mapToDouble(Double::doubleValue).average().orElse(0);
            squares += group.stream()
                    .mapToDouble(each -> (each - mean) * (each - mean))
                    .sum();
            freedom += group.size() - 1;
        }
        return freedom < FEWEST_FREEDOM ? 0 : Math.sqrt(squares / freedom);
    }

    /** Wells at the highest level whose ends scatter far less than those of the others. */
    private Set<Well> flat() {
        Set<Well> wells = new HashSet<>();
        double[] usual = ends.stream()
                .filter(end -> end.values().size() >= FEWEST_FLAT)
                .mapToDouble(end -> variance(end, end.values().size() / 2))
                .sorted()
                .toArray();
        if (usual.length < FEWEST_WELLS || !(usual[usual.length / 2] > 0)) {
            return wells;
        }
        double variance = usual[usual.length / 2];
        double near = NEAR * Math.sqrt(variance) + digit;
        for (End end : ends) {
            if (end.last() >= ends.get(0).last() - near && isFlat(end, near, variance)) {
                wells.add(end.trace().well());
            }
        }
        return wells;
    }

    private boolean isFlat(End end, double near, double usual) {
        int from = end.values().size();
        while (from > 0 && Math.abs(end.values().get(from - 1) - end.last()) <= near) {
            from--;
        }
        int n = end.values().size() - from;
        if (n < FEWEST_FLAT) {
            return false;
        }
        double own = Math.max(variance(end, from), digit * digit / 12);
        double freedom = FREEDOM_OF_NEIGHBOURS * (n - 1);
        return 1 - FisherF.tail(own / usual, freedom, MANY) < LEVEL / ends.size();
    }

    /** Variance of a reading from the differences of neighbours, which creep hardly enters. */
    private static double variance(End end, int from) {
        double squares = 0;
        double[] y = end.values().stream().mapToDouble(Double::doubleValue).toArray();
        for (int i = from + 1; i < y.length; i++) {
            squares += (y[i] - y[i - 1]) * (y[i] - y[i - 1]);
        }
        return squares / 2 / (y.length - from - 1);
    }
}
