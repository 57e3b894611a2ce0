package tallywell.table;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tallywell.notice.Place;

/**
 * Rows of text cells: a delimited text file, or one sheet of a workbook. Rows need not be equally long; asking beyond
 * the end of a row gives an empty cell. Blank lines are rows without content.
 *
 * <p>All cells lie in one array of bytes and are made into text only when asked for, so that a file of a hundred
 * megabytes needs little more memory than its own size.
 */
public final class Table {
    /** No cell of interest is longer; what is longer is cut when it is made into text. */
    private static final int LONGEST = 32_768;

    private final Path file;
    private final String sheet;
    private final Optional<TextForm> form;
    private final Charset charset;
    private final byte[] data;
    /** For each row the starts of its cells, then one more as if another cell followed. */
    private final int[] starts;
    /** For each row the index of its first cell in starts, and one more at the end. */
    private final int[] firsts;
    /** By index in starts: cells that the workbook holds as numbers. */
    private final BitSet numbers;
    /** The line each row starts on, where that is not its own number. */
    private final int @Nullable [] lines;

    private final boolean ended;
    private final List<String> hidden;

    Table(Path file, TextForm form, Cells cells) {
        this(file, "", Optional.of(form), cells, List.of());
    }

    Table(Path file, String sheet, Cells cells, List<String> hidden) {
        this(file, sheet, Optional.empty(), cells, hidden);
    }

    private Table(Path file, String sheet, Optional<TextForm> form, Cells cells, List<String> hidden) {
        this.hidden = List.copyOf(hidden);
        this.file = file;
        this.sheet = sheet;
        this.form = form;
        charset = cells.charset;
        data = cells.data;
        starts = cells.starts;
        firsts = cells.firsts;
        numbers = cells.numbers;
        lines = cells.lines;
        ended = cells.ended;
    }

    /** The file the table came from. */
    public Path file() {
        return file;
    }

    /** The name of the sheet; empty for a text file. */
    public String sheet() {
        return sheet;
    }

    /** What a workbook hides of the sheet from whoever looks at it, in the words of a message. */
    public List<String> hidden() {
        return hidden;
    }

    /** How the text is written; empty for a sheet of a workbook. */
    public Optional<TextForm> form() {
        return form;
    }

    /** How many rows there are, blank ones included. */
    public int rows() {
        return firsts.length - 1;
    }

    /** How many cells the row has, empty ones included; 0 beyond the last row. */
    public int width(int row) {
        return row < 0 || row >= rows() ? 0 : firsts[row + 1] - firsts[row] - 1;
    }

    /** How many places {@link #index} gives, all of them below this number. */
    public int places() {
        return firsts[firsts.length - 1];
    }

    /**
     * A number of its own for each cell, for those who keep something beside each.
     *
     * @param row a row of the table
     * @param column from 0 to the width of the row, that one excluded
     */
    public int index(int row, int column) {
        return firsts[row] + column;
    }

    /** Whether a text file ends without a line end, as files do that were cut off. */
    public boolean endsOpen() {
        return form.isPresent() && !ended;
    }

    /** The text of a cell without blanks around it; empty if there is no such cell. */
    public String text(int row, int column) {
        return new Cell(this).at(row, column).toString();
    }

    /** Whether a cell holds nothing but blanks, or does not exist. */
    public boolean isEmpty(int row, int column) {
        return new Cell(this).at(row, column).length() == 0;
    }

    /** Whether a row has no content at all. */
    public boolean isBlank(int row) {
        Cell cell = new Cell(this);
        for (int column = 0; column < width(row); column++) {
            if (cell.at(row, column).length() > 0) {
                return false;
            }
        }
        return true;
    }

    /** Whether a workbook holds the cell as a number, so that its text has a decimal point whatever the language. */
    public boolean isNumber(int row, int column) {
        return column >= 0 && column < width(row) && numbers.get(firsts[row] + column);
    }

    /** Whether no row has content. */
    public boolean isBlank() {
        for (int row = 0; row < rows(); row++) {
            if (!isBlank(row)) {
                return false;
            }
        }
        return true;
    }

    /** The row in the words of a message, such as {@code line 7} or {@code sheet 'Run', row 7}. */
    public String where(int row) {
        return form.isPresent() ? "line " + line(row) : "sheet '" + sheet + "', row " + (row + 1);
    }

    /** The cell in the words of a message, such as {@code line 7, column 3} or {@code sheet 'Run', cell C7}. */
    public String where(int row, int column) {
        return form.isPresent()
                ? "line " + line(row) + ", column " + (column + 1)
                : "sheet '" + sheet + "', cell " + columnName(column) + (row + 1);
    }

    /** The row as a place. */
    public Place place(int row) {
        return Place.in(file, where(row));
    }

    /** The cell as a place. */
    public Place place(int row, int column) {
        return Place.in(file, where(row, column));
    }

    /** The whole table as a place. */
    public Place place() {
        return form.isPresent() ? Place.file(file) : Place.in(file, "sheet '" + sheet + "'");
    }

    private int line(int row) {
        return lines == null ? row + 1 : lines[row];
    }

    /** The letters of a column counted from 0, as spreadsheets name it. */
    static String columnName(int column) {
        StringBuilder name = new StringBuilder();
        for (int left = column + 1; left > 0; left = (left - 1) / 26) {
            name.insert(0, (char) ('A' + (left - 1) % 26));
        }
        return name.toString();
    }

    /**
     * A window on one cell of a table at a time, moved from cell to cell without making text. A byte that is no ASCII
     * character shows as U+FFFD here; {@link #toString()} gives the true text.
     */
    public static final class Cell implements CharSequence {
        private final Table table;
        private int start;
        private int end;
        private boolean quoted;

        /** A window on the cells of a table; it shows an empty cell until it is moved. */
        public Cell(Table table) {
            this.table = table;
        }

        /** Moves the window to a cell; it shows an empty one if the table has no such cell. */
        public Cell at(int row, int column) {
            quoted = false;
            if (row < 0 || row >= table.firsts.length - 1 || column < 0) {
                end = start;
                return this;
            }
            int index = table.firsts[row] + column;
            if (index >= table.firsts[row + 1] - 1) {
                end = start;
                return this;
            }
            start = table.starts[index];
            end = table.starts[index + 1] - 1;
            trim();
            if (end - start >= 2 && table.data[start] == '"' && table.data[end - 1] == '"') {
                quoted = true;
                start++;
                end--;
                trim();
            }
            return this;
        }

        private void trim() {
            byte[] data = table.data;
            while (start < end && (data[start] >= 0 && data[start] <= ' ')) {
                start++;
            }
            while (end > start && (data[end - 1] >= 0 && data[end - 1] <= ' ')) {
                end--;
            }
        }

        @Override
        public int length() {
            return end - start;
        }

        @Override
        public char charAt(int index) {
            byte at = table.data[start + index];
            return at >= 0 ? (char) at : '�';
        }

        /** Whether every character of the cell shows truly in this window. */
        public boolean isAscii() {
            for (int i = start; i < end; i++) {
                if (table.data[i] < 0) {
                    return false;
                }
            }
            return true;
        }

        @Override
        public CharSequence subSequence(int from, int to) {
            return toString().substring(from, to);
        }

        /** The text of the cell without quotes and blanks around it. */
        @Override
        public String toString() {
            int length = Math.min(end - start, LONGEST);
            String text = new String(table.data, start, length, table.charset).strip();
            return quoted ? text.replace("\"\"", "\"") : text;
        }
    }

    /** What a reader of files hands over: where each cell lies in the bytes. */
    static final class Cells {
        private final Charset charset;
        private final byte[] data;
        private final int[] starts;
        private final int[] firsts;
        private final BitSet numbers;
        private final int @Nullable [] lines;
        private final boolean ended;

        /** Cells that lie in the text itself. */
        Cells(Decoded text, int[] starts, int[] firsts, int @Nullable [] lines) {
            charset = text.charset();
            data = text.data();
            ended = text.endsWithLineEnd();
            this.starts = starts;
            this.firsts = firsts;
            this.lines = lines;
            numbers = new BitSet(0);
        }

        /** Cells that were collected one by one, as UTF-8. */
        Cells(CellCollector collector, BitSet numbers, boolean ended) {
            this.ended = ended;
            charset = StandardCharsets.UTF_8;
            data = collector.data();
            starts = collector.starts();
            firsts = collector.firsts();
            lines = null;
            this.numbers = numbers;
        }

        @Override
        public String toString() {
            return firsts.length - 1 + " rows, " + Arrays.stream(firsts).max().orElse(0) + " cells";
        }
    }
}
