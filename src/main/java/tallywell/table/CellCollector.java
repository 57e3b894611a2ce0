package tallywell.table;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import tallywell.notice.InputException;

/** Collects cells one by one, left to right and top to bottom. */
final class CellCollector {
    private final Path file;
    private final Limits limits;
    private byte[] data = new byte[1 << 12];
    private int size;
    private int[] starts = new int[1 << 10];
    private int cells;
    private int[] firsts = new int[1 << 6];
    private int rows;

    CellCollector(Path file, Limits limits) {
        this.file = file;
        this.limits = limits.forCopies();
    }

    /** How many cells the row under way has so far. */
    int width() {
        return cells - firsts[rows];
    }

    /** The index that the next cell will have. */
    int next() {
        return cells;
    }

    /** How many rows are complete. */
    int rows() {
        return rows;
    }

    void cell(String text) throws InputException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        cell(bytes, 0, bytes.length);
    }

    void cell(byte[] bytes, int from, int to) throws InputException {
        int length = to - from;
        limits.checkBytes(file, (long) size + length + 1);
        limits.checkCells(file, cells + 2L);
        if (size + length + 1 > data.length) {
            data = Arrays.copyOf(data, grown(size + length + 1));
        }
        addStart();
        System.arraycopy(bytes, from, data, size, length);
        size += length;
        data[size++] = '\n';
    }

    void empty() throws InputException {
        cell(data, 0, 0);
    }

    void endRow() throws InputException {
        limits.checkCells(file, cells + 1L);
        addStart();
        if (rows + 2 > firsts.length) {
            firsts = Arrays.copyOf(firsts, grown(rows + 2));
        }
        firsts[++rows] = cells;
    }

    private void addStart() {
        if (cells == starts.length) {
            starts = Arrays.copyOf(starts, grown(cells + 1));
        }
        starts[cells++] = size;
    }

    private static int grown(int least) {
        return (int) Math.min(Integer.MAX_VALUE - 8L, least + (least >> 1) + 16L);
    }

    byte[] data() {
        return data;
    }

    int[] starts() {
        return starts;
    }

    int[] firsts() {
        return Arrays.copyOf(firsts, rows + 1);
    }
}
