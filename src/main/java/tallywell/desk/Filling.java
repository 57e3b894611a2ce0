package tallywell.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;

/**
 * How wells are filled in turn.
 *
 * @param order along rows or down columns
 * @param count wells of each, at least 1
 * @param place where the further wells stand
 * @param keep whether wells that are in use already stay as they are
 */
public record Filling(Order order, int count, Replicates place, boolean keep) {
    /** In which order wells are taken. */
    public enum Order {
        /** A1, A2, A3 … */
        ROWS,
        /** A1, B1, C1 … */
        COLUMNS
    }

    /** Refuses less than one well each. */
    public Filling {
        if (!(count >= 1 && (count <= 2 || place != Replicates.MIRRORED))) {
            throw new IllegalArgumentException("count must be at least 1, and at most 2 if mirrored, but was " + count);
        }
    }

    /**
     * The wells of each in turn. Replicates stand within the selection, but those mirrored may stand in the other half.
     */
    List<List<Well>> groups(Layout layout, Collection<Well> selected) {
        Predicate<Well> free = well -> !keep || layout.at(well) instanceof Content.Unused;
        Set<Well> taken = new HashSet<>();
        Set<Well> inside = Set.copyOf(selected);
        List<List<Well>> groups = new ArrayList<>();
        for (Well first : ordered(selected)) {
            List<Well> group = place.from(first, count, layout.format());
            boolean fits = group.size() == count
                    && group.stream()
                            .allMatch(well -> free.test(well)
                                    && !taken.contains(well)
                                    && (place == Replicates.MIRRORED || inside.contains(well)));
            if (fits) {
                taken.addAll(group);
                groups.add(group);
            }
        }
        return groups;
    }

    /** How many find their wells in a selection. */
    public int room(Layout layout, Collection<Well> selected) {
        return groups(layout, selected).size();
    }

    private Collection<Well> ordered(Collection<Well> wells) {
        TreeSet<Well> ordered = new TreeSet<>(
                order == Order.ROWS
                        ? java.util.Comparator.<Well>naturalOrder()
                        : java.util.Comparator.comparingInt(Well::column).thenComparingInt(Well::row));
        ordered.addAll(wells);
        return ordered;
    }
}
