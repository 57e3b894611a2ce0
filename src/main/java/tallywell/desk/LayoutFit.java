package tallywell.desk;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.quantity.Quantity;

/**
 * How well the change of each well agrees with a layout, to guess whether the layout belongs to the plate.
 *
 * <pre>{@code
 * standards  = SD of blanks and standards about the rising step line through them, by level / SD of all wells in use
 * replicates = SD of wells of one content about their mean / SD of all wells in use
 * }</pre>
 *
 * <p>Both are near 0 where the layout is right and near 1 where the wells were read under another one. Where all wells
 * changed alike nothing can be told. The rising step line is found by pooling neighbours that go down (Ayer, Brunk, Ewing,
 * Reid and Silverman (1955), Ann. Math. Statist. 26, 641–647). The bounds are our own choice, tried on the sample runs with
 * every layout that comes with the program, as it is and turned.
 *
 * @param standards how far blanks and standards are from rising with their level; empty for fewer than {@value #LEAST_FREE}
 *     wells more than levels
 * @param replicates how far replicates are from agreeing; empty for fewer than {@value #LEAST_FREE} degrees of freedom
 * @param unread wells that the layout uses and that were not read
 * @param reacting wells that the layout does not use, and that changed by more than half the middle of those it uses
 */
record LayoutFit(OptionalDouble standards, OptionalDouble replicates, List<Well> unread, List<Well> reacting) {
    private static final int LEAST_FREE = 3;

    /** Below this SD in absorbance a plate shows no pattern that a layout could be told by. */
    private static final double PATTERN = 0.03;

    /** From here on a part of the fit speaks against a layout. */
    static final double WRONG = 0.4;

    private static final double RIGHT = 0.2;
    private static final double CLEARLY = 0.4;

    /** Keeps copies that cannot change. */
    LayoutFit {
        unread = List.copyOf(unread);
        reacting = List.copyOf(reacting);
    }

    static LayoutFit of(Layout layout, Map<Well, Double> changes) {
        List<Well> used = layout.where(content -> !(content instanceof Content.Unused));
        List<Well> read = used.stream().filter(changes::containsKey).toList();
        List<Well> unread =
                used.stream().filter(well -> !changes.containsKey(well)).toList();
        double[] values = read.stream().mapToDouble(changes::get).toArray();
        double scatter = Math.sqrt(squares(values) / Math.max(1, values.length - 1));
        boolean tells = scatter >= PATTERN;
        return new LayoutFit(
                tells ? standards(layout, read, changes, scatter) : OptionalDouble.empty(),
                tells ? replicates(layout, read, changes, scatter) : OptionalDouble.empty(),
                unread,
                reacting(layout, values, changes));
    }

    /** The layout with every well where it comes to lie when the plate is turned by half a turn. */
    static Layout turned(Layout layout, String name) {
        int rows = layout.format().rows();
        int columns = layout.format().columns();
        return new Layout(
                name,
                WellMap.of(
                        layout.format(),
                        well -> layout.at(new Well(rows - 1 - well.row(), columns - 1 - well.column()))));
    }

    /** 0 for a perfect fit, about 1 for none; empty if nothing can be told. */
    OptionalDouble misfit() {
        if (standards.isEmpty() && replicates.isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Math.max(standards.orElse(0), replicates.orElse(0)));
    }

    /** Whether the layout is probably not that of the plate. */
    boolean isWrong() {
        return misfit().orElse(0) >= WRONG || manyUnread() || reacting.size() >= LEAST_FREE;
    }

    private boolean manyUnread() {
        return unread.size() >= LEAST_FREE;
    }

    /** Whether this layout agrees with the plate, and clearly better than another. */
    boolean curesMisfitOf(LayoutFit other) {
        if (misfit().isEmpty() || isWrong() || misfit().getAsDouble() > RIGHT) {
            return false;
        }
        boolean closer = misfit().getAsDouble() <= CLEARLY * other.misfit().orElse(0);
        boolean covers = other.manyUnread() || other.reacting.size() >= LEAST_FREE;
        return other.isWrong() && (closer || covers);
    }

    private static OptionalDouble standards(Layout layout, List<Well> read, Map<Well, Double> changes, double scatter) {
        TreeMap<Double, List<Double>> byLevel = new TreeMap<>();
        int wells = 0;
        for (Well well : read) {
            OptionalDouble level = level(layout.at(well));
            if (level.isPresent()) {
                byLevel.computeIfAbsent(level.getAsDouble(), key -> new ArrayList<>())
                        .add(changes.getOrDefault(well, 0.0));
                wells++;
            }
        }
        if (wells - byLevel.size() < LEAST_FREE) {
            return OptionalDouble.empty();
        }
        double sum = 0;
        for (List<Double> pool : rising(byLevel)) {
            sum += squares(pool.stream().mapToDouble(Double::doubleValue).toArray());
        }
        return OptionalDouble.of(Math.sqrt(sum / (wells - byLevel.size())) / scatter);
    }

    /** Neighbouring levels whose means go down are pooled until the means rise. */
    private static List<List<Double>> rising(TreeMap<Double, List<Double>> byLevel) {
        List<List<Double>> pools = new ArrayList<>();
        for (List<Double> level : byLevel.values()) {
            List<Double> pool = new ArrayList<>(level);
            while (!pools.isEmpty() && mean(pools.get(pools.size() - 1)) > mean(pool)) {
                pool.addAll(pools.remove(pools.size() - 1));
            }
            pools.add(pool);
        }
        return pools;
    }

    /** Levels are compared with each other only; of several analytes in one well they add up. */
    private static OptionalDouble level(Content content) {
        if (content instanceof Content.Blank) {
            return OptionalDouble.of(0);
        }
        return content instanceof Content.Standard standard
                ? OptionalDouble.of(standard.level().quantities().stream()
                        .mapToDouble(Quantity::base)
                        .sum())
                : OptionalDouble.empty();
    }

    private static OptionalDouble replicates(
            Layout layout, List<Well> read, Map<Well, Double> changes, double scatter) {
        Map<String, List<Double>> byWord = new HashMap<>();
        for (Well well : read) {
            byWord.computeIfAbsent(layout.at(well).word(), word -> new ArrayList<>())
                    .add(changes.getOrDefault(well, 0.0));
        }
        double sum = 0;
        int free = 0;
        for (List<Double> group : byWord.values()) {
            sum += squares(group.stream().mapToDouble(Double::doubleValue).toArray());
            free += group.size() - 1;
        }
        return free < LEAST_FREE ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(sum / free) / scatter);
    }

    private static List<Well> reacting(Layout layout, double[] used, Map<Well, Double> changes) {
        double[] sorted = java.util.Arrays.stream(used).sorted().toArray();
        double middle = sorted.length == 0 ? 0 : sorted[sorted.length / 2];
        double bound = Math.max(PATTERN, middle / 2);
        return layout.where(Content.Unused.class::isInstance).stream()
                .filter(well -> changes.getOrDefault(well, 0.0) > bound)
                .toList();
    }

    private static double squares(double[] values) {
        double mean = java.util.Arrays.stream(values).average().orElse(0);
        double sum = 0;
        for (double value : values) {
            sum += (value - mean) * (value - mean);
        }
        return sum;
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).average().orElse(0);
    }
}
