package tallywell.plate;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Lists of wells as people type them: {@code C5 D1-D3}, ranges as rectangles. */
public final class Wells {
    private Wells() {}

    /**
     * Reads wells and ranges separated by blanks or commas. A range spans the rectangle between its corners, so
     * {@code A1-A3} is three wells of a row and {@code A1-C1} three wells of a column.
     *
     * @param text as typed
     * @param format the plate
     * @throws IllegalArgumentException with a message for the user (found, then expected) if a word is no well of the
     *     plate, or there is no word at all
     */
    public static List<Well> parse(String text, PlateFormat format) {
        Set<Well> wells = new LinkedHashSet<>();
        for (String word : text.strip().split("[\\s,;]+")) {
            String[] corners = word.split("[-–]", 2);
            Well first = one(corners[0], word, format);
            Well last = corners.length == 1 ? first : one(corners[1], word, format);
            wells.addAll(rectangle(first, last));
        }
        return List.copyOf(wells);
    }

    /** The wells of the rectangle between two corners, in row order. */
    public static List<Well> rectangle(Well one, Well other) {
        List<Well> wells = new ArrayList<>();
        for (int row = Math.min(one.row(), other.row()); row <= Math.max(one.row(), other.row()); row++) {
            for (int column = Math.min(one.column(), other.column());
                    column <= Math.max(one.column(), other.column());
                    column++) {
                wells.add(new Well(row, column));
            }
        }
        return wells;
    }

    private static Well one(String corner, String word, PlateFormat format) {
        Optional<Well> well = Well.parse(corner);
        if (well.isEmpty()) {
            throw new IllegalArgumentException(
                    "found '" + word + "'; expected wells such as C5 or ranges such as D1-D3");
        }
        if (!format.holds(well.get())) {
            throw new IllegalArgumentException("found the well '" + corner + "' outside a plate of " + format.wells()
                    + "; expected A1 to " + format.last());
        }
        return well.get();
    }
}
