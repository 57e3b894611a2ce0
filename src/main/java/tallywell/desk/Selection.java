package tallywell.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.plate.Wells;

/**
 * The selected wells: the same in the plate, the trace and the results. For the event thread only.
 *
 * <p>The anchor is where a rectangle began, the cursor is where the keyboard stands.
 */
public final class Selection {
    private final List<Runnable> listeners = new ArrayList<>();
    private PlateFormat format;
    private Set<Well> wells = new TreeSet<>();
    private Set<Well> base = new TreeSet<>();
    private Well anchor = new Well(0, 0);
    private Well cursor = new Well(0, 0);

    /** Nothing selected on a plate. */
    public Selection(PlateFormat format) {
        this.format = format;
    }

    /** Calls back after every change. */
    public void onChange(Runnable listener) {
        listeners.add(listener);
    }

    /** Goes on with another plate, keeping what it has of the selection. */
    public void format(PlateFormat other) {
        if (!other.equals(format)) {
            format = other;
            wells.removeIf(well -> !other.holds(well));
            anchor = new Well(0, 0);
            cursor = anchor;
            base = new TreeSet<>();
            tell();
        }
    }

    /** The selected wells in row order. */
    public Set<Well> wells() {
        return Collections.unmodifiableSet(new TreeSet<>(wells));
    }

    /** Whether a well is selected. */
    public boolean has(Well well) {
        return wells.contains(well);
    }

    /** Where the keyboard stands. */
    public Well cursor() {
        return cursor;
    }

    /** Selects these wells only. */
    public void only(Collection<Well> some) {
        wells = new TreeSet<>(some);
        wells.removeIf(well -> !format.holds(well));
        base = new TreeSet<>();
        wells.stream().findFirst().ifPresent(first -> {
            anchor = first;
            cursor = first;
        });
        tell();
    }

    /** Selects nothing. */
    public void none() {
        only(List.of());
    }

    /** Selects every well. */
    public void all() {
        only(format.all());
    }

    /** Begins at a well: alone, or in addition to what is selected. */
    public void start(Well well, boolean add) {
        boolean off = add && wells.contains(well);
        if (!add) {
            wells = new TreeSet<>();
        }
        if (off) {
            wells.remove(well);
        } else {
            wells.add(well);
        }
        base = new TreeSet<>(wells);
        anchor = well;
        cursor = well;
        tell();
    }

    /** Goes on from the anchor to a well: all of the rectangle between them. */
    public void extend(Well well) {
        TreeSet<Well> reached = new TreeSet<>(base);
        reached.addAll(Wells.rectangle(anchor, well));
        wells = reached;
        cursor = well;
        tell();
    }

    /** Selects the rows from one to another, counted from 0. */
    public void rows(int from, int to, boolean add) {
        lines(new Well(Math.min(from, to), 0), new Well(Math.max(from, to), format.columns() - 1), add);
    }

    /** Selects the columns from one to another, counted from 0. */
    public void columns(int from, int to, boolean add) {
        lines(new Well(0, Math.min(from, to)), new Well(format.rows() - 1, Math.max(from, to)), add);
    }

    private void lines(Well first, Well last, boolean add) {
        TreeSet<Well> all = add ? new TreeSet<>(wells) : new TreeSet<>();
        all.addAll(Wells.rectangle(first, last));
        wells = all;
        base = add ? new TreeSet<>(wells) : new TreeSet<>();
        anchor = first;
        cursor = first;
        tell();
    }

    /** Moves the keyboard: alone, or stretching the rectangle. */
    public void move(int rows, int columns, boolean stretch) {
        Well to = inside(rows, columns);
        if (stretch) {
            extend(to);
        } else {
            start(to, false);
        }
    }

    /** Moves the keyboard without changing what is selected. */
    public void go(int rows, int columns) {
        cursor = inside(rows, columns);
        anchor = cursor;
        base = new TreeSet<>(wells);
        tell();
    }

    private Well inside(int rows, int columns) {
        return new Well(
                Math.max(0, Math.min(format.rows() - 1, cursor.row() + rows)),
                Math.max(0, Math.min(format.columns() - 1, cursor.column() + columns)));
    }

    /** Selects the whole rows of what is selected, or of where the keyboard stands. */
    public void wholeRows() {
        whole(well -> row(well.row()));
    }

    /** Selects the whole columns of what is selected, or of where the keyboard stands. */
    public void wholeColumns() {
        whole(well -> column(well.column()));
    }

    private void whole(Function<Well, List<Well>> line) {
        Set<Well> from = wells.isEmpty() ? Set.of(cursor) : wells;
        TreeSet<Well> all = new TreeSet<>();
        from.forEach(well -> all.addAll(line.apply(well)));
        wells = all;
        base = new TreeSet<>();
        tell();
    }

    private List<Well> row(int row) {
        return Wells.rectangle(new Well(row, 0), new Well(row, format.columns() - 1));
    }

    private List<Well> column(int column) {
        return Wells.rectangle(new Well(0, column), new Well(format.rows() - 1, column));
    }

    /**
     * The selection in words, such as {@code E4, F4}, {@code 12 wells, E10 to H12}, or block by block {@code 12 wells: E1 to H1,
     * A2 to H2}.
     */
    public String words() {
        return WellBlocks.words(wells);
    }

    private void tell() {
        List.copyOf(listeners).forEach(Runnable::run);
    }
}
