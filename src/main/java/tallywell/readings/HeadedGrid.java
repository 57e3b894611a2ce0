package tallywell.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/**
 * A plate drawn as a grid with numbers over its columns and letters beside its rows, or transposed. Several may stand
 * side by side; several may follow each other under one row of numbers; a row of the plate may take several lines, one
 * for each wavelength or kind of value.
 */
final class HeadedGrid implements Form {
    private final boolean transposed;

    HeadedGrid(boolean transposed) {
        this.transposed = transposed;
    }

    private int head(Sheet sheet, int row, int column) {
        return transposed ? sheet.plateRow(row, column) : sheet.plateColumn(row, column);
    }

    boolean isTransposed() {
        return transposed;
    }

    int side(Sheet sheet, int row, int column) {
        return transposed ? sheet.plateColumn(row, column) : sheet.plateRow(row, column);
    }

    Well well(int head, int side) {
        return transposed ? new Well(head, side) : new Well(side, head);
    }

    @Override
    public Optional<Finding> find(Sheet sheet, int row) throws InputException {
        List<Piece> pieces = new ArrayList<>();
        List<Notice> notes = new ArrayList<>();
        int last = row;
        int from = 0;
        OptionalInt shared = OptionalInt.empty();
        List<Heads> runs = runs(sheet, row);
        for (int i = 0; i < runs.size(); i++) {
            Heads heads = runs.get(i);
            int limit = i + 1 < runs.size() ? runs.get(i + 1).first() : Integer.MAX_VALUE;
            Optional<Frame> frame = frame(sheet, row, heads, from, limit, shared);
            if (frame.isEmpty()) {
                continue;
            }
            GridGroups groups = new GridGroups(this, sheet, row, frame.get(), limit);
            groups.collect();
            pieces.addAll(groups.pieces);
            notes.addAll(groups.notes);
            last = Math.max(last, groups.last);
            shared = OptionalInt.of(frame.get().side());
            from = heads.last() + 1;
        }
        return last == row ? Optional.empty() : Optional.of(new Finding(pieces, row, last, notes));
    }

    /** Runs of neighbouring cells that name ascending columns. */
    List<Heads> runs(Sheet sheet, int row) {
        List<Heads> runs = new ArrayList<>();
        int column = 0;
        while (column < sheet.width(row)) {
            int value = head(sheet, row, column);
            if (value < 0) {
                column++;
                continue;
            }
            List<Integer> values = new ArrayList<>();
            int first = column;
            while (value >= 0 && (values.isEmpty() || continues(values, value))) {
                values.add(value);
                column++;
                value = head(sheet, row, column);
            }
            runs.add(new Heads(first, values));
        }
        return runs;
    }

    private boolean continues(List<Integer> values, int value) {
        int last = values.get(values.size() - 1);
        boolean complete = values.get(0) == 0 && last == values.size() - 1 && isComplete(values.size(), !transposed);
        return value == last + 1 || value > last && !complete;
    }

    /** Finds the column that names the rows: left of the numbers, or right of them. */
    private Optional<Frame> frame(Sheet sheet, int row, Heads heads, int from, int limit, OptionalInt shared)
            throws InputException {
        Optional<Frame> found = unchecked(sheet, row, heads, from, limit, shared);
        if (found.isPresent()
                && !transposed
                && sheet.text(row, heads.first() - 1).matches("0{1,2}")) {
            throw sheet.fault(row, heads.first() - 1, "columns counted from", "columns counted from 1");
        }
        return found;
    }

    private Optional<Frame> unchecked(Sheet sheet, int row, Heads heads, int from, int limit, OptionalInt shared)
            throws InputException {
        int next = sheet.nextFilled(row + 1);
        if (next >= sheet.rows() || next > row + 3) {
            return Optional.empty();
        }
        if (!hasReading(sheet, next, heads.first(), heads.last() + 1)) {
            // A line of units may stand between.
            next = sheet.nextFilled(next + 1);
        }
        for (int column = from; column < heads.first(); column++) {
            if (Words.in(sheet.text(row, column)).contains(Meaning.COLUMN) && side(sheet, next, column) < 0
                    || sheet.plateColumn(next, column) >= 0
                            && Words.in(sheet.text(row, column)).contains(Meaning.COLUMN)
                            && !transposed) {
                // Wells named in two columns, with headings of numbers behind them.
                return Optional.empty();
            }
        }
        OptionalInt left = new GridSide(sheet, row, next, this::side).in(from, heads.first());
        if (left.isPresent()) {
            return Optional.of(new Frame(heads, left.getAsInt(), 0, next));
        }
        boolean withoutCorner = side(sheet, next, heads.first()) >= 0
                && sheet.look(row, heads.last() + 1) == Look.EMPTY
                && sheet.filled(next).size() == heads.count() + 1
                && !transposed;
        if (withoutCorner) {
            return Optional.of(new Frame(heads, heads.first(), 1, next));
        }
        for (int column = heads.last() + 1; column < Math.min(limit, sheet.width(next)); column++) {
            if (side(sheet, next, column) >= 0 && !transposed) {
                return Optional.of(new Frame(heads, column, 0, next));
            }
        }
        if (shared.isPresent() && side(sheet, next, shared.getAsInt()) >= 0) {
            return Optional.of(new Frame(heads, shared.getAsInt(), 0, next));
        }
        return Optional.empty();
    }

    /** Whether a known plate ends here: a name that is not the next one then names something else. */
    static boolean isComplete(int count, boolean columns) {
        return PlateFormat.KNOWN.stream().anyMatch(format -> (columns ? format.columns() : format.rows()) == count);
    }

    static boolean hasReading(Sheet sheet, int row, int from, int to) {
        return IntStream.range(from, to)
                .anyMatch(column -> sheet.look(row, column).isReading());
    }

    /** Neighbouring cells that name columns, from {@code first} on. */
    record Heads(int first, List<Integer> values) {
        int last() {
            return first + values.size() - 1;
        }

        int count() {
            return values.size();
        }
    }

    /**
     * A grid's headings.
     *
     * @param shift how far the readings stand right of their headings: 1 where the corner is left out
     * @param next the first row below the headings
     */
    record Frame(Heads heads, int side, int shift, int next) {}
}
