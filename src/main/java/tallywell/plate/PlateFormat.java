package tallywell.plate;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Rows and columns of a plate, named after ANSI/SLAS 4-2004 (R2012): rows by letters from the top, columns by numbers
 * from the left.
 *
 * @param rows 1 to 32
 * @param columns 1 to 48
 */
public record PlateFormat(int rows, int columns) {
    /** The plates that files may name, by number of wells. */
    public static final List<PlateFormat> KNOWN = List.of(
            new PlateFormat(2, 3),
            new PlateFormat(3, 4),
            new PlateFormat(4, 6),
            new PlateFormat(6, 8),
            new PlateFormat(8, 12),
            new PlateFormat(16, 24),
            new PlateFormat(32, 48));

    /** The plate with 96 wells. */
    public static final PlateFormat P96 = new PlateFormat(8, 12);

    /** Refuses grids that no plate has. */
    public PlateFormat {
        if (!(rows >= 1 && rows <= 32)) {
            throw new IllegalArgumentException("rows must be 1 to 32 but was " + rows);
        }
        if (!(columns >= 1 && columns <= 48)) {
            throw new IllegalArgumentException("columns must be 1 to 48 but was " + columns);
        }
    }

    /** The plate with that number of wells, if there is one. */
    public static Optional<PlateFormat> ofWells(int wells) {
        return KNOWN.stream().filter(format -> format.wells() == wells).findFirst();
    }

    /** The numbers of wells that files may name, such as {@code 6, 12, 24}. */
    public static String knownSizes() {
        return KNOWN.stream().map(format -> Integer.toString(format.wells())).collect(Collectors.joining(", "));
    }

    /** The smallest known plate that holds the well. */
    public static Optional<PlateFormat> smallestWith(Well well) {
        return KNOWN.stream().filter(format -> format.holds(well)).findFirst();
    }

    /** How many wells the plate has. */
    public int wells() {
        return rows * columns;
    }

    /** Whether the plate has this well. */
    public boolean holds(Well well) {
        return well.row() < rows && well.column() < columns;
    }

    /**
     * Position of the well in row order, from 0.
     *
     * @throws IllegalArgumentException if the plate has no such well
     */
    public int indexOf(Well well) {
        if (!holds(well)) {
            throw new IllegalArgumentException("well must be on a plate of " + wells() + " but was " + well);
        }
        return well.row() * columns + well.column();
    }

    /** The well at a position in row order, from 0. */
    public Well well(int index) {
        return new Well(index / columns, index % columns);
    }

    /** All wells in row order. */
    public List<Well> all() {
        Well[] wells = new Well[wells()];
        Arrays.setAll(wells, this::well);
        return List.of(wells);
    }

    /** The last well, such as {@code H12}. */
    public Well last() {
        return new Well(rows - 1, columns - 1);
    }

    @Override
    public String toString() {
        return wells() + " wells (" + rows + " × " + columns + ")";
    }
}
