package tallywell.table;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.regex.Pattern;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/**
 * Cuts text whose cells are set apart by runs of blanks. An empty cell shows only by its position, so the lines of a
 * paragraph (no blank line between them) are laid one above the other: the longest line names the columns, and a piece
 * of a shorter line belongs to the column that it stands under. A shorter line that does not stand under the columns
 * keeps its pieces in their order.
 */
final class AlignedCells {
    /** Lines of a paragraph that are looked at together, so that a long file need not lie in memory twice. */
    private static final int SHEAF = 2048;

    private static final Pattern SIGN = Pattern.compile("([<>≤≥]) (?=[\\d.,])");
    private static final Pattern WELL = Pattern.compile("[A-Za-z]{1,2}\\d{1,3}");
    /** No row of readings is longer. */
    private static final int LONGEST_LINE = 1_000_000;

    private final Path file;
    private final CellCollector cells;
    private final Decoded text;
    private final Delimiter delimiter;
    private int at;
    /** The columns of the paragraph under way. */
    private List<Piece> columns = List.of();

    AlignedCells(Path file, Limits limits, Decoded text, Delimiter delimiter) {
        this.file = file;
        this.text = text;
        this.delimiter = delimiter;
        cells = new CellCollector(file, limits);
        at = text.from();
    }

    Table.Cells cut() throws InputException {
        List<List<Piece>> paragraph = new ArrayList<>();
        while (at < text.data().length) {
            List<Piece> line = line();
            if (!line.isEmpty()) {
                paragraph.add(line);
            }
            if (line.isEmpty() || paragraph.size() == SHEAF) {
                flush(paragraph);
            }
            if (line.isEmpty()) {
                columns = List.of();
                cells.endRow();
            }
        }
        flush(paragraph);
        return new Table.Cells(cells, new BitSet(0), text.endsWithLineEnd());
    }

    private List<Piece> line() throws InputException {
        byte[] data = text.data();
        int start = at;
        int end = start;
        while (end < data.length && data[end] != '\n' && data[end] != '\r') {
            end++;
        }
        at = end + (end + 1 < data.length && data[end] == '\r' && data[end + 1] == '\n' ? 2 : 1);
        if (end - start > LONGEST_LINE) {
            throw new InputException(
                    Place.file(file),
                    "found a line of more than " + LONGEST_LINE
                            + " characters; expected rows of readings, each on its line");
        }
        String line = new String(data, start, end - start, text.charset()).replace('\t', ' ');
        // The blank of > 3.5 parts no cells.
        line = SIGN.matcher(line).replaceAll("$1\u00a0");
        List<Piece> pieces = new ArrayList<>();
        int from = -1;
        int last = -1;
        boolean quoted = false;
        int gap = delimiter == Delimiter.BLANKS ? 1 : 2;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == ' ' && !quoted) {
                continue;
            }
            if (from >= 0 && i - last > gap) {
                pieces.add(new Piece(line.substring(from, last + 1).replace('\u00a0', ' '), from, last));
                from = -1;
            }
            from = from < 0 ? i : from;
            quoted ^= c == '"';
            last = i;
        }
        if (from >= 0) {
            pieces.add(new Piece(
                    line.substring(from, last + 1).replace('\u00a0', ' ').strip(), from, last));
        }
        return pieces;
    }

    private void flush(List<List<Piece>> lines) throws InputException {
        for (List<Piece> line : lines) {
            columns = line.size() > columns.size() && mostlyEntries(line) ? line : columns;
        }
        widen(lines);
        for (List<Piece> line : lines) {
            write(line);
        }
        lines.clear();
    }

    private static boolean mostlyEntries(List<Piece> line) {
        return line.stream().filter(Piece::isEntry).count() * 2 >= line.size();
    }

    /** Makes each column as wide as the widest of its cells in the lines that fill all columns. */
    private void widen(List<List<Piece>> lines) {
        List<Piece> spans = new ArrayList<>(columns);
        for (List<Piece> line : lines) {
            if (line.size() == spans.size() && mostlyEntries(line)) {
                for (int i = 0; i < spans.size(); i++) {
                    spans.set(i, spans.get(i).joined(line.get(i)));
                }
            }
        }
        columns = spans;
    }

    private void write(List<Piece> given) throws InputException {
        List<Piece> line =
                given.size() > columns.size() && columns.size() > 1 && !mostlyEntries(given) ? gathered(given) : given;
        int[] target = targets(line, columns);
        int column = 0;
        for (int i = 0; i < line.size(); i++) {
            for (; column < target[i]; column++) {
                cells.empty();
            }
            byte[] bytes = line.get(i).text.getBytes(StandardCharsets.UTF_8);
            cells.cell(bytes, 0, bytes.length);
            column++;
        }
        cells.endRow();
    }

    /** Words with single blanks between them, as in headings, belong together if they stand over one column. */
    private List<Piece> gathered(List<Piece> line) {
        List<Piece> gathered = new ArrayList<>();
        int last = -1;
        for (Piece piece : line) {
            int nearest = nearest(piece, Math.max(last, 0));
            if (nearest == last && piece.follows(gathered.get(gathered.size() - 1))) {
                Piece before = gathered.remove(gathered.size() - 1);
                gathered.add(new Piece(before.text + " " + piece.text, before.first, piece.last));
            } else {
                gathered.add(piece);
            }
            last = nearest;
        }
        return gathered;
    }

    private int nearest(Piece piece, int from) {
        int nearest = from;
        for (int i = from + 1; i < columns.size(); i++) {
            if (piece.distance(columns.get(i)) < piece.distance(columns.get(nearest))) {
                nearest = i;
            }
        }
        return nearest;
    }

    private static int[] targets(List<Piece> line, List<Piece> columns) {
        int[] inOrder = new int[line.size()];
        int[] placed = new int[line.size()];
        boolean fits = true;
        int from = 0;
        for (int i = 0; i < line.size(); i++) {
            inOrder[i] = i;
            int under = under(line.get(i), columns, from);
            fits &= under >= 0;
            placed[i] = under;
            from = under + 1;
        }
        return fits ? placed : inOrder;
    }

    /** The only column from the given one on that the piece stands under; -1 if there is none, or more than one. */
    private static int under(Piece piece, List<Piece> columns, int from) {
        int found = -1;
        for (int i = from; i < columns.size(); i++) {
            if (piece.overlaps(columns.get(i))) {
                if (found >= 0) {
                    return -1;
                }
                found = i;
            }
        }
        return found;
    }

    /** A stretch of a line without a gap in it; first and last position count from 0. */
    private record Piece(String text, int first, int last) {
        /** Whether it is a number or a well, as opposed to a word of a title. */
        boolean isEntry() {
            char c = text.charAt(0);
            return c >= '0' && c <= '9'
                    || text.length() > 1 && (c == '-' || c == '+' || c == '.')
                    || WELL.matcher(text).matches();
        }

        /** Whether it is one blank behind another piece, as words of one heading are. */
        boolean follows(Piece other) {
            return first - other.last == 2 && !isEntry() && !other.isEntry();
        }

        boolean overlaps(Piece other) {
            return first <= other.last && last >= other.first;
        }

        int distance(Piece other) {
            return Math.max(0, Math.max(first - other.last, other.first - last));
        }

        Piece joined(Piece other) {
            return new Piece(text, Math.min(first, other.first), Math.max(last, other.last));
        }
    }
}
