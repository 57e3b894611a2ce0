package tallywell.workup;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.numeric.Cochran;
import tallywell.numeric.OutlierTest;
import tallywell.numeric.Significance;
import tallywell.numeric.VarianceFunction;
import tallywell.plate.Content;

/**
 * The repeatability of ΔA, pooled within the slots of a plate.
 *
 * <pre>{@code
 * s²(net ΔA) = s0² + (s1 · net ΔA)²
 * }</pre>
 *
 * <p>Every set of used wells with one content is a slot: a sample, a control, a spike, a standard, the blanks of a group.
 * Two wells alone have one degree of freedom and say next to nothing; the slots of a plate together say a lot. Pooled
 * within slots it holds the random part of pipetting, reader and trace, so none of these is added again.
 *
 * <p>Before pooling, Cochran's test at 1 % runs over the slots with the most common number of wells, each variance
 * divided by what the function says at its mean. A slot beyond the limit is left out of the pool and named; its own
 * result is judged by its own scatter.
 *
 * @param function variance of ΔA over net ΔA
 * @param slots how many slots were pooled
 * @param degreesOfFreedom their sum
 * @param standardsIncluded whether standards are among them; they are where the other slots say too little
 * @param outliers slots that Cochran's test left out
 */
public record Repeatability(
        VarianceFunction function, int slots, double degreesOfFreedom, boolean standardsIncluded, List<Slot> outliers) {
    /** With fewer degrees of freedom outside the standards, these are pooled too. */
    private static final double ENOUGH = 6;

    /** Cochran's test is no use among fewer variances. */
    private static final int LEAST_FOR_COCHRAN = 3;

    /**
     * Wells with one content.
     *
     * @param key role and word, unique in the step
     * @param content what stands there
     * @param n how many wells count
     * @param mean of net ΔA; 0 for blanks
     * @param variance of ΔA
     */
    public record Slot(String key, Content content, int n, double mean, double variance) {
        /** Those of its variance. */
        public double degreesOfFreedom() {
            return n - 1;
        }
    }

    /** Keeps a copy that cannot change. */
    public Repeatability {
        outliers = List.copyOf(outliers);
    }

    /** What one well adds to its slot; without net ΔA where it has none of its own. */
    private record Replicate(Content content, String group, double deltaA, OptionalDouble net) {}

    /**
     * The repeatability of a step.
     *
     * @return nothing if no content stands in two wells that count, or all replicates agree exactly
     */
    public static Optional<Repeatability> of(StepAnalysis step) {
        return pooled(slots(step));
    }

    /** The repeatability before there is a calibration, whose weights may come from it. */
    static Optional<Repeatability> of(List<WellTrace> traces, NetChanges net) {
        return pooled(slots(traces.stream()
                .filter(trace -> trace.used() && trace.deltaA().isPresent())
                .map(trace -> new Replicate(
                        trace.content(),
                        trace.group(),
                        trace.deltaA().getAsDouble(),
                        net.net(trace, EnumSet.noneOf(Flag.class))))
                .toList()));
    }

    private static Optional<Repeatability> pooled(List<Slot> all) {
        List<Slot> others = all.stream()
                .filter(slot -> !(slot.content() instanceof Content.Standard))
                .toList();
        double free = others.stream().mapToDouble(Slot::degreesOfFreedom).sum();
        boolean tested = others.stream().anyMatch(slot -> !isBlank(slot.content()));
        boolean standards = !(free >= ENOUGH && tested) && others.size() < all.size();
        List<Slot> pool = new ArrayList<>(standards ? all : others);
        List<Slot> outliers = new ArrayList<>();
        Optional<VarianceFunction> function = fit(pool);
        while (function.isPresent()) {
            Optional<Slot> outlier = outlier(pool, function.get());
            if (outlier.isEmpty()) {
                double freedom =
                        pool.stream().mapToDouble(Slot::degreesOfFreedom).sum();
                return Optional.of(new Repeatability(function.get(), pool.size(), freedom, standards, outliers));
            }
            pool.remove(outlier.get());
            outliers.add(outlier.get());
            function = fit(pool);
        }
        return Optional.empty();
    }

    private static Optional<VarianceFunction> fit(List<Slot> pool) {
        if (pool.stream().noneMatch(slot -> slot.variance() > 0)) {
            return Optional.empty();
        }
        return Optional.of(VarianceFunction.fit(
                pool.stream().mapToDouble(Slot::mean).toArray(),
                pool.stream().mapToDouble(Slot::variance).toArray(),
                pool.stream().mapToDouble(Slot::degreesOfFreedom).toArray()));
    }

    private static Optional<Slot> outlier(List<Slot> pool, VarianceFunction function) {
        List<Slot> comparable = comparable(pool);
        if (comparable.size() < LEAST_FOR_COCHRAN) {
            return Optional.empty();
        }
        OutlierTest test = cochran(comparable, function, Significance.ONE_PERCENT);
        return test.beyond() ? Optional.of(comparable.get(test.index())) : Optional.empty();
    }

    private static OutlierTest cochran(List<Slot> comparable, VarianceFunction function, Significance significance) {
        double[] variances = comparable.stream()
                .mapToDouble(slot -> slot.variance() / function.at(slot.mean()))
                .toArray();
        return Cochran.test(variances, comparable.get(0).n(), significance);
    }

    /** The slots with the most common number of wells. */
    private static List<Slot> comparable(List<Slot> pool) {
        Map<Integer, List<Slot>> byCount = new LinkedHashMap<>();
        for (Slot slot : pool) {
            byCount.computeIfAbsent(slot.n(), n -> new ArrayList<>()).add(slot);
        }
        return byCount.values().stream()
                .max(Comparator.comparingInt(List::size))
                .orElse(List.of());
    }

    /** The slots of a step that have at least two wells, in the order of their first well. */
    public static List<Slot> slots(StepAnalysis step) {
        return slots(step.wells().stream()
                .filter(well -> well.used() && well.deltaA().isPresent())
                .map(well -> new Replicate(
                        well.content(), well.trace().group(), well.deltaA().getAsDouble(), well.netDeltaA()))
                .toList());
    }

    private static List<Slot> slots(List<Replicate> replicates) {
        Map<String, List<Replicate>> wells = new LinkedHashMap<>();
        for (Replicate each : replicates) {
            wells.computeIfAbsent(slotOf(each.content(), each.group()), key -> new ArrayList<>())
                    .add(each);
        }
        List<Slot> slots = new ArrayList<>();
        wells.forEach((key, members) -> {
            if (members.size() > 1) {
                slots.add(slot(key, members));
            }
        });
        return slots;
    }

    private static Slot slot(String key, List<Replicate> members) {
        double mean = members.stream().mapToDouble(Replicate::deltaA).average().orElseThrow();
        double squares = members.stream()
                .mapToDouble(each -> (each.deltaA() - mean) * (each.deltaA() - mean))
                .sum();
        Content content = members.get(0).content();
        double net = isBlank(content)
                ? 0
                : members.stream()
                        .map(Replicate::net)
                        .flatMapToDouble(OptionalDouble::stream)
                        .average()
                        .orElse(0);
        return new Slot(key, content, members.size(), net, squares / (members.size() - 1));
    }

    /** Role, word and, for blanks, the group: blanks of one group are one material whatever their word. */
    public static String slotOf(WellResult well) {
        return slotOf(well.content(), well.trace().group());
    }

    static String slotOf(Content content, String group) {
        if (content instanceof Content.Blank blank) {
            return (blank.triggered() ? "blank " : "blank without trigger ") + group;
        }
        return content instanceof Content.SampleBlank own
                ? "sample-blank of " + own.of()
                : content.role() + " " + content.word();
    }

    /** The net ΔA at which the scatter of a well is taken: 0 for blanks. */
    public static double netOf(WellResult well) {
        return isBlank(well.content()) ? 0 : well.netDeltaA().orElse(0);
    }

    /** Whether the net ΔA of a content is 0 by definition. */
    public static boolean isBlank(Content content) {
        return content instanceof Content.Blank || content instanceof Content.SampleBlank;
    }

    /** The slot of a well if Cochran's test left it out. */
    public Optional<Slot> outlierOf(WellResult well) {
        String key = slotOf(well);
        return outliers.stream().filter(slot -> slot.key().equals(key)).findFirst();
    }
}
