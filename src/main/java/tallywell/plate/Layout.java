package tallywell.plate;

import java.util.List;
import java.util.TreeSet;
import java.util.function.Predicate;

/**
 * What stands where on a plate; drawn once, used for every run.
 *
 * @param name as reports print it
 * @param wells content of each well
 */
public record Layout(String name, WellMap<Content> wells) {
    /** The plate. */
    public PlateFormat format() {
        return wells.format();
    }

    /** What a well holds. */
    public Content at(Well well) {
        return wells.get(well);
    }

    /** The wells whose content passes, in row order. */
    public List<Well> where(Predicate<Content> test) {
        return format().all().stream().filter(well -> test.test(at(well))).toList();
    }

    /** The sample slots in ascending order. */
    public List<Integer> slots() {
        TreeSet<Integer> slots = new TreeSet<>();
        wells.forEach((well, content) -> {
            if (content instanceof Content.Sample sample) {
                slots.add(sample.slot());
            }
        });
        return List.copyOf(slots);
    }
}
