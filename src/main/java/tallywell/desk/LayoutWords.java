package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;

/** A layout in one line, such as {@code 96 wells: 4 standards, 2 controls, 36 samples in duplicate}. */
public final class LayoutWords {
    private LayoutWords() {}

    /** The line; standards and controls are counted once each, however many wells they have. */
    public static String of(Layout layout) {
        return layout.format().wells() + " wells: " + held(layout);
    }

    /** What the plate holds, without its size. */
    public static String held(Layout layout) {
        List<String> parts = new ArrayList<>();
        counted(parts, different(layout, Content.Standard.class), "standard");
        counted(parts, different(layout, Content.Control.class), "control");
        counted(parts, different(layout, Content.Spike.class), "spike");
        samples(parts, layout);
        return parts.isEmpty() ? "nothing yet" : String.join(", ", parts);
    }

    private static int different(Layout layout, Class<? extends Content> kind) {
        return (int) layout.where(kind::isInstance).stream()
                .map(well -> layout.at(well).word())
                .distinct()
                .count();
    }

    private static void counted(List<String> parts, int count, String one) {
        if (count > 0) {
            parts.add(count + " " + one + (count == 1 ? "" : "s"));
        }
    }

    private static void samples(List<String> parts, Layout layout) {
        Map<String, Integer> wells = new TreeMap<>();
        for (Well well : layout.where(Content.Sample.class::isInstance)) {
            wells.merge(layout.at(well).word(), 1, Integer::sum);
        }
        if (wells.isEmpty()) {
            return;
        }
        int least = wells.values().stream().mapToInt(Integer::intValue).min().orElseThrow();
        int most = wells.values().stream().mapToInt(Integer::intValue).max().orElseThrow();
        String samples = wells.size() + (wells.size() == 1 ? " sample" : " samples");
        parts.add(samples + (least == most ? each(most) : " in " + least + " to " + most + " wells each"));
    }

    private static String each(int wells) {
        return switch (wells) {
            case 1 -> " in single wells";
            case 2 -> " in duplicate";
            case 3 -> " in triplicate";
            default -> " in " + wells + " wells each";
        };
    }
}
