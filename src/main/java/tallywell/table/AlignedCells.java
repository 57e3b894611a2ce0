package tallywell.table;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.regex.Pattern;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/**
 * Cuts text whose cells are set apart by runs of blanks. An empty cell shows only by its position, so the lines of a
 * table are laid one above the other, over blank lines between them, from its heading to the next: whatever stands one
 * above the other is one column. Where the cells do not stand in columns, the longest line names them, and a row that
 * has fewer cells and does not stand under them is refused.
 */
final class AlignedCells {
    /** Lines of a table that are looked at together, so that a long file need not lie in memory twice. */
    private static final int SHEAF = 2048;
    /** So many cells of a table are looked at together, however long its lines are. */
    private static final int SHEAF_CELLS = 100_000;

    /** A plate of 1536 wells with a thousand readings each has fewer. */
    private static final int MOST_CELLS = 2_000_000;

    private static final Pattern SIGN = Pattern.compile("([<>≤≥]) (?=[\\d.,])");
    /** No row of readings is longer. */
    private static final int LONGEST_LINE = 1_000_000;

    private final Path file;
    private final CellCollector cells;
    private final Decoded text;
    private final Delimiter delimiter;
    private int at;
    private int drawn;
    /** Cells in the paragraph and the table under way. */
    private int waiting;

    private AlignedTable table = new AlignedTable();

    AlignedCells(Path file, Limits limits, Decoded text, Delimiter delimiter) {
        this.file = file;
        this.text = text;
        this.delimiter = delimiter;
        cells = new CellCollector(file, limits);
        at = text.from();
    }

    Table.Cells cut() throws InputException {
        List<AlignedLine> paragraph = new ArrayList<>();
        while (at < text.data().length) {
            AlignedLine line = line();
            if (!line.isBlank()) {
                paragraph.add(line);
            }
            waiting += line.size();
            refuseMany(line.size());
            if (line.isBlank() || paragraph.size() == SHEAF || waiting > SHEAF_CELLS) {
                take(paragraph);
            }
            if (line.isBlank()) {
                table.add(line);
            }
        }
        take(paragraph);
        flush();
        return new Table.Cells(cells, new BitSet(0), text.endsWithLineEnd());
    }

    /** Laying lines one above the other takes its time, so that more than any reader writes is refused at once. */
    private void refuseMany(int more) throws InputException {
        drawn += more;
        if (drawn > MOST_CELLS) {
            throw new InputException(
                    Place.file(file),
                    "found more than " + MOST_CELLS
                            + " cells set apart by blanks; expected fewer, or cells set apart by"
                            + " tabs, commas or semicolons");
        }
    }

    /** Takes up a paragraph: it goes on with the table under way, or begins one. */
    private void take(List<AlignedLine> paragraph) throws InputException {
        if (!table.goesOnWith(paragraph)) {
            flush();
            table = new AlignedTable();
        }
        paragraph.forEach(table::add);
        paragraph.clear();
        if (table.size() >= SHEAF || waiting > SHEAF_CELLS) {
            flush();
            waiting = 0;
        }
    }

    private void flush() throws InputException {
        for (List<String> row : table.rows(row -> new InputException(
                Place.line(file, cells.rows() + row + 1),
                "found cells that do not stand under the columns of their table, and fewer of them than in the"
                        + " other rows; expected each cell under its heading, or cells set apart by tabs, commas"
                        + " or semicolons"))) {
            for (String cell : row) {
                cells.cell(cell);
            }
            cells.endRow();
        }
    }

    private AlignedLine line() throws InputException {
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
        List<AlignedLine.Piece> pieces = new ArrayList<>();
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
                add(pieces, line, from, last);
                from = -1;
            }
            from = from < 0 ? i : from;
            quoted ^= c == '"';
            last = i;
        }
        if (from >= 0) {
            add(pieces, line, from, last);
        }
        return new AlignedLine(pieces);
    }

    /** Takes up a stretch of a line, unless it holds nothing but blanks of other kinds. */
    private static void add(List<AlignedLine.Piece> pieces, String line, int from, int last) {
        String cell = line.substring(from, last + 1).replace('\u00a0', ' ').strip();
        if (!cell.isEmpty()) {
            pieces.add(new AlignedLine.Piece(cell, from, last));
        }
    }
}
