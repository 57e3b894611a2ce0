package tallywell.table;

import java.nio.file.Path;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import tallywell.notice.InputException;
import tallywell.notice.Place;

/**
 * Cuts text into cells at a delimiter, by the rules of RFC 4180: a cell may stand in double quotes and then holds
 * delimiters, line ends and doubled quotes. Lines may end with LF, CR LF or CR.
 */
final class DelimitedCells {
    private final Path file;
    private final Limits limits;
    private final Decoded text;
    private final byte[] data;
    private final byte delimiter;
    private int[] starts = new int[0];
    private int[] firsts = new int[0];
    private int @Nullable [] lines;
    private int cells;
    private int rows;
    private int line = 1;

    DelimitedCells(Path file, Limits limits, Decoded text, byte delimiter) {
        this.file = file;
        this.limits = limits;
        this.text = text;
        this.delimiter = delimiter;
        data = text.data();
    }

    Table.Cells cut() throws InputException {
        allocate();
        int at = text.from();
        while (at < data.length) {
            at = row(at);
        }
        return new Table.Cells(text, starts, Arrays.copyOf(firsts, rows + 1), lines);
    }

    /** Counts first: growing arrays of this size would need twice the memory. */
    private void allocate() throws InputException {
        long delimiters = 0;
        long ends = 1;
        for (int i = text.from(); i < data.length; i++) {
            byte at = data[i];
            if (at == delimiter) {
                delimiters++;
            } else if (at == '\n' || at == '\r' && !(i + 1 < data.length && data[i + 1] == '\n')) {
                ends++;
            }
        }
        limits.checkCells(file, delimiters + 2 * ends);
        starts = new int[(int) (delimiters + 2 * ends)];
        firsts = new int[(int) ends + 1];
    }

    private int row(int from) throws InputException {
        int rowLine = line;
        int at = from;
        while (true) {
            starts[cells++] = at;
            if (at < data.length && data[at] == '"') {
                at = behindQuotes(at);
            }
            at = endOfCell(at);
            if (at >= data.length || data[at] != delimiter) {
                break;
            }
            at++;
        }
        starts[cells++] = at + 1;
        if (lines == null && rowLine != rows + 1) {
            lines = new int[firsts.length];
            Arrays.setAll(lines, i -> i + 1);
        }
        if (lines != null) {
            lines[rows] = rowLine;
        }
        firsts[++rows] = cells;
        line++;
        return at + (at + 1 < data.length && data[at] == '\r' && data[at + 1] == '\n' ? 2 : 1);
    }

    private int endOfCell(int from) {
        int at = from;
        while (at < data.length) {
            byte b = data[at];
            if (b == delimiter || b == '\n' || b == '\r') {
                break;
            }
            at++;
        }
        return at;
    }

    private int behindQuotes(int from) throws InputException {
        int opened = line;
        for (int at = from + 1; at < data.length; at++) {
            if (data[at] == '\n') {
                line++;
            } else if (data[at] == '"') {
                if (at + 1 < data.length && data[at + 1] == '"') {
                    at++;
                } else {
                    return at + 1;
                }
            }
        }
        throw new InputException(
                Place.line(file, opened),
                "found a quotation mark that is never closed; expected another one; the file may be cut off");
    }
}
