package tallywell.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tallywell.notice.InputException;
import tallywell.notice.Place;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PerAnalyte;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** What can be done to a layout; each edit gives a new layout. */
public final class LayoutEdits {
    private static final int MOST_SLOTS = 1536;
    private static final Content UNUSED = new Content.Unused();

    private LayoutEdits() {}

    /** A plate on which nothing stands yet. */
    public static Layout empty(String name, PlateFormat format) {
        return new Layout(name, WellMap.of(format, well -> UNUSED));
    }

    /** The same under another name. */
    public static Layout rename(Layout layout, String name) {
        return new Layout(name, layout.wells());
    }

    /** Puts one content into wells; its legend word is found or made up here. */
    public static Layout paint(Layout layout, Collection<Well> wells, Content content) {
        Content worded = LegendWords.fit(layout, content);
        Map<Well, Content> changes = new HashMap<>();
        wells.forEach(well -> changes.put(well, worded));
        return with(layout, changes);
    }

    /** Empties wells. */
    public static Layout clear(Layout layout, Collection<Well> wells) {
        return paint(layout, wells, UNUSED);
    }

    /**
     * Fills wells with samples, slot after slot.
     *
     * @param firstSlot number of the first
     */
    public static Layout fillSamples(Layout layout, Collection<Well> wells, int firstSlot, Filling filling) {
        Map<Well, Content> changes = new HashMap<>();
        int slot = firstSlot;
        for (List<Well> group : filling.groups(layout, wells)) {
            if (slot <= MOST_SLOTS) {
                Content sample = new Content.Sample(slot++);
                group.forEach(well -> changes.put(well, sample));
            }
        }
        return with(layout, changes);
    }

    /** Fills wells with standards, level after level; levels that find no wells are left out. */
    public static Layout fillStandards(Layout layout, Collection<Well> wells, List<Quantity> levels, Filling filling) {
        Layout filled = layout;
        List<List<Well>> groups = filling.groups(layout, wells);
        for (int i = 0; i < Math.min(levels.size(), groups.size()); i++) {
            filled = paint(filled, groups.get(i), new Content.Standard("", "", PerAnalyte.single(levels.get(i))));
        }
        return filled;
    }

    /** Numbers the slots from 1 without gaps, in their present order. */
    public static Layout renumber(Layout layout) {
        Map<Integer, Integer> numbers = new HashMap<>();
        layout.slots().forEach(slot -> numbers.put(slot, numbers.size() + 1));
        return new Layout(layout.name(), layout.wells().map(content -> renumbered(content, numbers)));
    }

    private static Content renumbered(Content content, Map<Integer, Integer> numbers) {
        if (content instanceof Content.Sample sample) {
            return new Content.Sample(numbers.getOrDefault(sample.slot(), sample.slot()));
        }
        if (content instanceof Content.SampleBlank blank) {
            return new Content.SampleBlank(blank.word(), blank.group(), numbers.getOrDefault(blank.of(), blank.of()));
        }
        if (content instanceof Content.Spike spike) {
            return new Content.Spike(
                    spike.word(),
                    spike.group(),
                    numbers.getOrDefault(spike.of(), spike.of()),
                    spike.added(),
                    spike.fraction());
        }
        return content;
    }

    /** The rectangle round the wells as a spreadsheet takes it: words of the layout, tabs between, one line a row. */
    public static String copy(Layout layout, Collection<Well> wells) {
        if (wells.isEmpty()) {
            return "";
        }
        Set<Well> inside = new HashSet<>(wells);
        int top = wells.stream().mapToInt(Well::row).min().orElseThrow();
        int bottom = wells.stream().mapToInt(Well::row).max().orElseThrow();
        int left = wells.stream().mapToInt(Well::column).min().orElseThrow();
        int right = wells.stream().mapToInt(Well::column).max().orElseThrow();
        StringBuilder text = new StringBuilder();
        for (int row = top; row <= bottom; row++) {
            for (int column = left; column <= right; column++) {
                Well well = new Well(row, column);
                text.append(column == left ? "" : "\t")
                        .append(inside.contains(well) ? layout.at(well).word() : "");
            }
            text.append('\n');
        }
        return text.toString();
    }

    /**
     * Puts cells of a spreadsheet into the plate. A cell is a slot number, a word of this layout, {@code blank}, the level
     * of a standard with its unit, or {@code .} for a well that is not used; an empty cell leaves its well as it is.
     *
     * @param at where the upper left cell goes
     * @throws InputException naming the first cell that is none of these, or that falls off the plate
     */
    public static Layout paste(Layout layout, Well at, String text) throws InputException {
        Layout pasted = layout;
        List<String> lines = text.stripTrailing().lines().toList();
        for (int row = 0; row < lines.size(); row++) {
            String[] cells = lines.get(row).split("\t", -1);
            for (int column = 0; column < cells.length; column++) {
                String cell = cells[column].strip();
                if (cell.isEmpty()) {
                    continue;
                }
                Well well = new Well(at.row() + row, at.column() + column);
                if (!layout.format().holds(well)) {
                    throw new InputException(
                            Place.nowhere(),
                            "found '" + cell + "' for " + well + ", which is not on a plate of "
                                    + layout.format().wells() + "; paste further up or to the left");
                }
                pasted = paint(pasted, List.of(well), cell(layout, well, cell));
            }
        }
        return pasted;
    }

    private static Content cell(Layout layout, Well well, String cell) throws InputException {
        if (cell.equals(".")) {
            return UNUSED;
        }
        if (cell.matches("\\d{1,4}") && Integer.parseInt(cell) >= 1 && Integer.parseInt(cell) <= MOST_SLOTS) {
            return new Content.Sample(Integer.parseInt(cell));
        }
        Map<String, Content> known = LegendWords.of(layout);
        Content content = known.get(cell);
        if (content != null) {
            return content;
        }
        if (cell.equalsIgnoreCase("blank")) {
            return new Content.Blank("", "", true);
        }
        try {
            Quantity level = Quantity.parse(cell, Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT);
            if (level.value() >= 0) {
                return new Content.Standard("", "", PerAnalyte.single(level));
            }
        } catch (IllegalArgumentException e) {
            throw new InputException(Place.well(well.toString()), unknown(cell), e);
        }
        throw new InputException(Place.well(well.toString()), unknown(cell));
    }

    private static String unknown(String cell) {
        return "found '" + cell + "'; expected a sample number, a word of this layout, blank, a level such as 0.2 g/L,"
                + " or . for unused";
    }

    private static Layout with(Layout layout, Map<Well, Content> changes) {
        return new Layout(
                layout.name(), WellMap.of(layout.format(), well -> changes.getOrDefault(well, layout.at(well))));
    }

    /** A blank. */
    public static Content blank() {
        return new Content.Blank("", "", true);
    }

    /** A control without an assigned value. */
    public static Content control(String name) {
        return new Content.Control("", "", name, PerAnalyte.none(), java.util.Optional.empty(), Dilution.NONE);
    }

    /** The next slot that no well holds yet. */
    public static int nextSlot(Layout layout) {
        return layout.slots().stream().mapToInt(Integer::intValue).max().orElse(0) + 1;
    }

    /**
     * Reads levels typed in one line, such as {@code 0.05 0.1 0.2 g/L}; each number may carry its own unit, else the last
     * one's counts.
     *
     * @throws InputException if a word is no number, or there is no unit
     */
    public static List<Quantity> levels(String text) throws InputException {
        String unit = text.matches(".*[\\p{L}%µ].*")
                ? text.replaceFirst("^.*?([\\p{L}%µ].*)$", "$1").strip()
                : "";
        String numbers = text.replaceFirst("[\\p{L}%µ].*$", "").strip();
        List<Quantity> levels = new ArrayList<>();
        for (String number : numbers.split("[\\s;]+")) {
            try {
                levels.add(Quantity.parse(
                        number + " " + unit, Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT));
            } catch (IllegalArgumentException e) {
                throw new InputException(Place.nowhere(), String.valueOf(e.getMessage()), e);
            }
        }
        return levels;
    }

    /**
     * Levels that go down from the highest, listed from the lowest.
     *
     * @param factor each level is the next higher one over this; even steps down to the first if 1
     */
    public static List<Quantity> series(Quantity highest, int count, double factor) {
        if (!(count >= 1 && factor >= 1)) {
            throw new IllegalArgumentException(
                    "count and factor must be at least 1 but were " + count + " and " + factor);
        }
        Map<Integer, Quantity> levels = new TreeMap<>();
        for (int i = 0; i < count; i++) {
            double part = factor == 1 ? (i + 1.0) / count : Math.pow(factor, i + 1.0 - count);
            double rounded = Double.parseDouble(tallywell.quantity.Numbers.rounded(highest.value() * part, 4));
            levels.put(i, Quantity.of(rounded, highest.unit()));
        }
        return List.copyOf(levels.values());
    }
}
