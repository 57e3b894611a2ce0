package tallywell.desk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.AssayMethod;
import tallywell.method.Direction;
import tallywell.method.Step;

/**
 * Puts exports into the order in which they were probably taken: where a signal rises, the mean of the plate rises from
 * read to read; where it falls, it falls. It is a guess, shown to the user, who can change it.
 */
final class ReadingOrder {
    private ReadingOrder() {}

    /** Without a method the signal is taken to rise, as most do. */
    static List<Intake> arranged(List<Intake> readings, Optional<AssayMethod> method) {
        List<Intake> ordered = new ArrayList<>(readings);
        boolean rises = goes(method, Direction.RISES);
        boolean falls = method.isPresent() && goes(method, Direction.FALLS);
        boolean all = ordered.stream().allMatch(each -> each.mean().isPresent());
        if (all && (rises || falls)) {
            Comparator<Intake> byMean =
                    Comparator.comparingDouble(each -> each.mean().orElseThrow());
            ordered.sort(rises ? byMean : byMean.reversed());
        }
        return marked(ordered, method.map(each -> each.steps().size()).orElse(1));
    }

    private static boolean goes(Optional<AssayMethod> method, Direction direction) {
        return method.stream()
                .flatMap(each -> each.steps().stream())
                .map(Step::signal)
                .allMatch(signal -> signal.direction() == direction);
    }

    /** The first before the trigger, the next after it; with several steps each after a trigger of its own. */
    static List<Intake> marked(List<Intake> ordered, int steps) {
        if (ordered.size() == 1) {
            return List.of(ordered.get(0).after(false));
        }
        List<Intake> marked = new ArrayList<>();
        for (int i = 0; i < ordered.size(); i++) {
            marked.add(ordered.get(i).after(i == 1 || i > 1 && i <= steps));
        }
        return marked;
    }

    /** A first guess at the trigger inside a single series; empty for end points. */
    static List<Double> triggers(Intake single, int steps) {
        OptionalDouble at = Readings.steepest(single.block().series());
        return steps == 1 && at.isPresent() ? List.of(at.getAsDouble()) : List.of();
    }
}
