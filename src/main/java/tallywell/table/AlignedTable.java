package tallywell.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntFunction;
import tallywell.notice.InputException;

/** The lines of one table drawn with blanks, and the columns that they stand in. */
final class AlignedTable {
    /** So many lines show well enough what the columns are. */
    private static final int SAMPLE = 64;

    private final List<AlignedLine> lines = new ArrayList<>();
    /** What earlier lines, written out already, have shown of the columns. */
    private List<AlignedLine.Piece> known = List.of();

    private Optional<AlignedLine> heading = Optional.empty();
    private Optional<AlignedLine.Kind> kind = Optional.empty();

    void add(AlignedLine line) {
        lines.add(line);
        if (line.isHeading()) {
            heading = heading.or(() -> Optional.of(line));
        } else if (line.isRow()) {
            kind = Optional.of(line.kind());
        }
    }

    int size() {
        return lines.size();
    }

    /** Whether a paragraph continues this table rather than beginning another. */
    boolean goesOnWith(List<AlignedLine> paragraph) {
        Optional<AlignedLine> row =
                paragraph.stream().filter(AlignedLine::isRow).findFirst();
        if (row.isEmpty()) {
            return true;
        }
        if (row.get().isHeading()) {
            return false;
        }
        boolean first = row.get().equals(paragraph.get(0));
        if (heading.isPresent() && first && kind.map(row.get().kind()::equals).orElse(true)) {
            return true;
        }
        List<AlignedLine> sample = lines.subList(0, Math.min(SAMPLE, lines.size()));
        List<AlignedLine> both = new ArrayList<>(sample);
        both.addAll(paragraph);
        Optional<List<AlignedLine.Piece>> before = columns(sample);
        return kind.equals(Optional.of(row.get().kind()))
                && before.isPresent()
                && columns(both)
                        .filter(columns -> columns.size() == before.get().size())
                        .isPresent();
    }

    /**
     * Writes the lines out as rows of cells, and forgets them.
     *
     * @param fault makes the refusal of a row by its number among these
     * @throws InputException if a row has too few cells, and their positions do not show which
     */
    List<List<String>> rows(IntFunction<InputException> fault) throws InputException {
        List<AlignedLine.Piece> columns = columns(lines).orElseGet(this::longest);
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            AlignedLine line = lines.get(i);
            List<AlignedLine.Piece> pieces = line.pieces();
            if (line.size() > columns.size() && columns.size() > 1 && !line.isMostlyEntries()) {
                pieces = gathered(pieces, columns);
            }
            Optional<int[]> placed = placed(pieces, columns);
            boolean loose = placed.isEmpty() || !line.isRow() && line.size() < columns.size() && isLoose(i);
            if (loose && isShortRow(line, columns)) {
                throw fault.apply(rows.size());
            }
            rows.add(loose ? pieces.stream().map(AlignedLine.Piece::text).toList() : spread(pieces, placed.get()));
        }
        known = columns;
        lines.clear();
        return rows;
    }

    /** Whether words stand in a paragraph without rows: a title, no row of marks. */
    private boolean isLoose(int at) {
        if (lines.get(at).isBlank() || lines.get(at).kind() != AlignedLine.Kind.WORD) {
            return false;
        }
        return !besideRow(at, 1) && !besideRow(at, -1);
    }

    private boolean besideRow(int at, int step) {
        for (int i = at + step; i >= 0 && i < lines.size() && !lines.get(i).isBlank(); i += step) {
            if (lines.get(i).isRow()) {
                return true;
            }
        }
        return false;
    }

    private boolean isShortRow(AlignedLine line, List<AlignedLine.Piece> columns) {
        return heading.isPresent()
                && !line.isBlank()
                && kind.equals(Optional.of(line.kind()))
                && line.size() < columns.size()
                && line.size() > 2;
    }

    private static List<String> spread(List<AlignedLine.Piece> pieces, int[] columns) {
        List<String> row = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            while (row.size() < columns[i]) {
                row.add("");
            }
            row.add(pieces.get(i).text());
        }
        return row;
    }

    /**
     * What stands one above the other in the rows, taken together.
     *
     * @return empty if that puts two cells of one row into one column, or makes more columns than headings name
     */
    private Optional<List<AlignedLine.Piece>> columns(List<AlignedLine> given) {
        List<AlignedLine> rows = given.stream().filter(AlignedLine::isRow).toList();
        List<AlignedLine.Piece> all = new ArrayList<>(known);
        rows.forEach(row -> all.addAll(row.pieces()));
        all.sort(Comparator.comparingInt(AlignedLine.Piece::first));
        List<AlignedLine.Piece> columns = new ArrayList<>();
        for (AlignedLine.Piece piece : all) {
            int last = columns.size() - 1;
            if (last >= 0 && columns.get(last).overlaps(piece)) {
                columns.set(last, columns.get(last).joined(piece));
            } else {
                columns.add(piece);
            }
        }
        int most = rows.stream().mapToInt(AlignedLine::size).max().orElse(0);
        int headings = heading.map(AlignedLine::size).orElse(0);
        boolean named =
                columns.size() == Math.max(most, known.size()) || headings > 0 && columns.size() <= headings + 1;
        boolean distinct =
                rows.stream().allMatch(row -> placed(row.pieces(), columns).isPresent())
                        && (known.isEmpty() || placed(known, columns).isPresent());
        return named && distinct ? Optional.of(columns) : Optional.empty();
    }

    /** The longest row, each of its pieces as wide as the widest in the rows as long. */
    private List<AlignedLine.Piece> longest() {
        List<AlignedLine.Piece> longest = known;
        for (AlignedLine line : lines) {
            if (line.size() > longest.size() && line.isMostlyEntries()) {
                longest = line.pieces();
            }
        }
        List<AlignedLine.Piece> columns = new ArrayList<>(longest);
        for (AlignedLine line : lines) {
            if (line.size() == columns.size() && line.isMostlyEntries()) {
                for (int i = 0; i < columns.size(); i++) {
                    columns.set(i, columns.get(i).joined(line.pieces().get(i)));
                }
            }
        }
        return columns;
    }

    /** Words with single blanks between them, as in headings, belong together if they stand over one column. */
    private static List<AlignedLine.Piece> gathered(List<AlignedLine.Piece> line, List<AlignedLine.Piece> columns) {
        List<AlignedLine.Piece> gathered = new ArrayList<>();
        int last = -1;
        for (AlignedLine.Piece piece : line) {
            int nearest = nearest(piece, columns, Math.max(last, 0));
            if (nearest == last && piece.follows(gathered.get(gathered.size() - 1))) {
                AlignedLine.Piece before = gathered.remove(gathered.size() - 1);
                gathered.add(new AlignedLine.Piece(before.text() + " " + piece.text(), before.first(), piece.last()));
            } else {
                gathered.add(piece);
            }
            last = nearest;
        }
        return gathered;
    }

    private static int nearest(AlignedLine.Piece piece, List<AlignedLine.Piece> columns, int from) {
        int nearest = from;
        for (int i = from + 1; i < columns.size(); i++) {
            if (piece.distance(columns.get(i)) < piece.distance(columns.get(nearest))) {
                nearest = i;
            }
        }
        return nearest;
    }

    /** The column of each piece, if each stands under just one. */
    private static Optional<int[]> placed(List<AlignedLine.Piece> line, List<AlignedLine.Piece> columns) {
        int[] placed = new int[line.size()];
        int from = 0;
        for (int i = 0; i < placed.length; i++) {
            OptionalInt under = under(line.get(i), columns, from);
            if (under.isEmpty()) {
                return Optional.empty();
            }
            placed[i] = under.getAsInt();
            from = placed[i] + 1;
        }
        return Optional.of(placed);
    }

    /** The only column from the given one on that the piece stands under. */
    private static OptionalInt under(AlignedLine.Piece piece, List<AlignedLine.Piece> columns, int from) {
        OptionalInt found = OptionalInt.empty();
        for (int i = from; i < columns.size(); i++) {
            if (columns.get(i).first() > piece.last()) {
                return found;
            }
            if (piece.overlaps(columns.get(i))) {
                if (found.isPresent()) {
                    return OptionalInt.empty();
                }
                found = OptionalInt.of(i);
            }
        }
        return found;
    }
}
