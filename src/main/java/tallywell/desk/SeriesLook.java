package tallywell.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.quantity.Quantity;

/**
 * A series of standards before it is put on the plate.
 *
 * @param layout the plate as it would be
 * @param lines which level goes into which wells, such as {@code 0.1 g/L: A1, B1}
 * @param homeless how many levels find no wells
 * @param free how many groups of wells get no level
 */
public record SeriesLook(Layout layout, List<String> lines, int homeless, int free) {
    /** Keeps copies that cannot change. */
    public SeriesLook {
        lines = List.copyOf(lines);
    }

    /** The levels in the selected wells, from the lowest. */
    public static SeriesLook of(
            Layout layout, Collection<Well> wells, List<Quantity> levels, String group, Filling filling, Shown shown) {
        List<List<Well>> groups = filling.groups(layout, wells);
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < Math.min(levels.size(), groups.size()); i++) {
            Quantity level = levels.get(i);
            lines.add(shown.plain(level.value()) + " " + level.unit() + ": "
                    + groups.get(i).stream().map(Well::toString).collect(Collectors.joining(", ")));
        }
        return new SeriesLook(
                LayoutEdits.fillStandards(layout, wells, levels, group, filling),
                lines,
                Math.max(0, levels.size() - groups.size()),
                Math.max(0, groups.size() - levels.size()));
    }
}
