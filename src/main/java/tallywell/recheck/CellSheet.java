package tallywell.recheck;

import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** The cells of one sheet; rows and columns count from 0. */
final class CellSheet {
    private final TreeMap<Integer, TreeMap<Integer, Cell>> rows = new TreeMap<>();

    private final SortedSet<String> covers = new TreeSet<>();

    /** Notes something that lies over the cells, such as cells merged into one. */
    void cover(String what) {
        covers.add(what);
    }

    /** What lies over the cells. */
    SortedSet<String> covers() {
        return new TreeSet<>(covers);
    }

    /** Keeps a cell; an empty one need not be kept. */
    void put(int row, int column, Cell cell) {
        if (!cell.isEmpty()) {
            rows.computeIfAbsent(row, each -> new TreeMap<>()).put(column, cell);
        }
    }

    Cell at(int row, int column) {
        return cells(row).getOrDefault(column, Cell.EMPTY);
    }

    String text(int row, int column) {
        return at(row, column).text();
    }

    /** The rows that hold anything. */
    SortedSet<Integer> rows() {
        return new TreeSet<>(rows.keySet());
    }

    /** The columns of a row that hold anything. */
    SortedSet<Integer> columns(int row) {
        return new TreeSet<>(cells(row).keySet());
    }

    private Map<Integer, Cell> cells(int row) {
        TreeMap<Integer, Cell> cells = rows.get(row);
        return cells == null ? Map.of() : cells;
    }

    /** The address of a cell, such as {@code B7}. */
    static String address(int row, int column) {
        StringBuilder letters = new StringBuilder();
        for (int rest = column + 1; rest > 0; rest = (rest - 1) / 26) {
            letters.insert(0, (char) ('A' + (rest - 1) % 26));
        }
        return letters.toString() + (row + 1);
    }
}
