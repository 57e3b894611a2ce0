package tallywell.recheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Says in words what a cell of one of our sheets is about, from the heads and names beside it. */
final class SheetWords {
    /** Columns that name a row, by their heads. */
    private static final List<String> NAMING = List.of("well", "sample", "analyte", "step");

    private final String sheet;
    private final CellSheet cells;
    private final boolean isTable;
    private final Map<Integer, String> naming = new TreeMap<>();
    private final int readingsHead;

    /** Words for a sheet as we write it. */
    SheetWords(String sheet, CellSheet cells) {
        this.sheet = sheet;
        this.cells = cells;
        this.isTable = cells.text(0, 0).equals("run");
        this.readingsHead = readingsHead();
        if (isTable) {
            for (int column : cells.columns(0)) {
                String head = cells.text(0, column);
                if (NAMING.contains(head)) {
                    naming.put(column, head);
                }
            }
        }
    }

    private int readingsHead() {
        for (int row : cells.rows()) {
            if (cells.text(row, 0).equals("Well")) {
                return row;
            }
        }
        return Integer.MAX_VALUE;
    }

    String sheet() {
        return sheet;
    }

    /** Whether a cell of the sheet Readings is one of the readings. */
    boolean isReading(int row, int column) {
        return row > readingsHead && column >= 2;
    }

    /** Sheet and cell, and what it is about, with a colon behind. */
    String place(int row, int column) {
        String about = about(row, column);
        return sheet + "!" + CellSheet.address(row, column) + (about.isEmpty() ? "" : " (" + about + ")") + ": ";
    }

    private String about(int row, int column) {
        List<String> words = new ArrayList<>();
        if (isTable && row > 0) {
            naming.forEach((at, head) -> {
                Cell cell = cells.at(row, at);
                if (!cell.isEmpty() && at != column) {
                    words.add(head + " " + (cell.isNumber() ? cell.shown() : cell.text()));
                }
            });
            words.add(cells.text(0, column));
        } else if (row > readingsHead && column > 0 && !cells.text(row, 0).isEmpty()) {
            words.add("well " + cells.text(row, 0));
        } else if (column > 0 && !cells.text(row, 0).isEmpty()) {
            words.add(cells.text(row, 0));
        }
        words.removeIf(String::isEmpty);
        return String.join(", ", words);
    }
}
