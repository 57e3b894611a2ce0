package tallywell.desk;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Rows of text cells that are typed into, pasted and filled as in a spreadsheet, with undo. The first columns may be fixed:
 * nothing changes them. For the event thread only.
 */
public final class Cells {
    private static final Pattern NUMBER_AT_END = Pattern.compile("(.*?)(\\d+)");

    private final History<List<List<String>>> history;
    private final int fixed;
    private final Set<Integer> counted;

    /**
     * A rectangle of cells, each edge counted from 0 and inside.
     *
     * @param top first row
     * @param left first column
     * @param bottom last row
     * @param right last column
     */
    public record Block(int top, int left, int bottom, int right) {
        /** Refuses a rectangle without cells. */
        public Block {
            if (!(top >= 0 && left >= 0 && bottom >= top && right >= left)) {
                throw new IllegalArgumentException("block must have cells but was rows " + top + " to " + bottom
                        + ", columns " + left + " to " + right);
            }
        }

        private int rows() {
            return bottom - top + 1;
        }

        private int columns() {
            return right - left + 1;
        }
    }

    /**
     * Rows of the same length, the first columns fixed.
     *
     * @param counted columns in which filling down counts up a number at the end, as names of samples do
     */
    public Cells(List<List<String>> rows, int fixed, Set<Integer> counted) {
        history = new History<>(copy(rows));
        this.fixed = fixed;
        this.counted = Set.copyOf(counted);
    }

    private static List<List<String>> copy(List<List<String>> rows) {
        return rows.stream().map(List::copyOf).toList();
    }

    /** The rows now. */
    public List<List<String>> rows() {
        return history.now();
    }

    /** The edits, for undo and redo. */
    public History<List<List<String>>> history() {
        return history;
    }

    /** Whether cells of a column can be changed. */
    public boolean isOpen(int column) {
        return column >= fixed;
    }

    /** Types into one cell. */
    public void set(int row, int column, String text) {
        edit(rows -> put(rows, row, column, text.strip()));
    }

    /** Empties cells. */
    public void clear(Block block) {
        edit(rows -> each(block, (row, column) -> put(rows, row, column, "")));
    }

    /**
     * Puts cells of a spreadsheet where a selection begins. Where the selection is a whole number of times as large, they are
     * repeated, so that one value fills all selected cells. What falls outside is left out.
     */
    public void paste(Block at, String text) {
        List<String[]> lines = text.replaceFirst("\\R$", "")
                .lines()
                .map(line -> line.split("\t", -1))
                .toList();
        if (lines.isEmpty()) {
            return;
        }
        int wide = lines.stream().mapToInt(line -> line.length).max().orElse(1);
        int down = times(at.rows(), lines.size());
        int across = times(at.columns(), wide);
        edit(rows -> {
            for (int i = 0; i < down * lines.size(); i++) {
                String[] line = lines.get(i % lines.size());
                for (int j = 0; j < across * wide; j++) {
                    if (j % wide < line.length) {
                        put(rows, at.top() + i, at.left() + j, line[j % wide].strip());
                    }
                }
            }
        });
    }

    private static int times(int selected, int pasted) {
        return selected % pasted == 0 ? selected / pasted : 1;
    }

    /**
     * Gives all selected rows what stands in the first; a single row gets what stands above it. In columns that count, a
     * number at the end goes on: {@code Tank 9}, {@code Tank 10}.
     */
    public void fillDown(Block block) {
        int from = block.rows() > 1 ? block.top() : block.top() - 1;
        if (from >= 0) {
            List<String> source = rows().get(from);
            edit(rows -> each(
                    block, (row, column) -> put(rows, row, column, filled(source.get(column), column, row - from))));
        }
    }

    private String filled(String text, int column, int further) {
        Matcher number = NUMBER_AT_END.matcher(text);
        if (further == 0 || !counted.contains(column) || !number.matches()) {
            return text;
        }
        String digits = number.group(2);
        String next = new BigInteger(digits).add(BigInteger.valueOf(further)).toString();
        return number.group(1) + "0".repeat(Math.max(0, digits.length() - next.length())) + next;
    }

    /** How many rows hold anything. */
    public int held() {
        return (int) rows().stream().filter(this::holds).count();
    }

    /**
     * Gives a column the same text.
     *
     * @param everywhere in all rows; else in those that hold anything
     */
    public void same(int column, String text, boolean everywhere) {
        edit(rows -> {
            for (int row = 0; row < rows.size(); row++) {
                if (everywhere || holds(rows.get(row))) {
                    put(rows, row, column, text.strip());
                }
            }
        });
    }

    private boolean holds(List<String> row) {
        return row.subList(fixed, row.size()).stream().anyMatch(cell -> !cell.isBlank());
    }

    /** Cells as a spreadsheet takes them: tabs between, one line a row. */
    public String copy(Block block) {
        return rows().subList(block.top(), Math.min(rows().size(), block.bottom() + 1)).stream()
                .map(row ->
                        String.join("\t", row.subList(block.left(), Math.min(row.size(), block.right() + 1))) + "\n")
                .reduce("", String::concat);
    }

    private void edit(Consumer<List<List<String>>> change) {
        List<List<String>> rows = new ArrayList<>();
        rows().forEach(row -> rows.add(new ArrayList<>(row)));
        change.accept(rows);
        history.edit(copy(rows), "");
    }

    /** Something done to a cell. */
    private interface At {
        void cell(int row, int column);
    }

    private static void each(Block block, At action) {
        for (int row = block.top(); row <= block.bottom(); row++) {
            for (int column = block.left(); column <= block.right(); column++) {
                action.cell(row, column);
            }
        }
    }

    private void put(List<List<String>> rows, int row, int column, String text) {
        if (row < rows.size() && column < rows.get(row).size() && isOpen(column)) {
            rows.get(row).set(column, text);
        }
    }
}
