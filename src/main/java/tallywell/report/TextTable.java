package tallywell.report;

import java.util.ArrayList;
import java.util.List;

/** Rows of text in columns that stand under one another, for a terminal. */
final class TextTable {
    private final List<List<String>> rows = new ArrayList<>();
    private final boolean[] right;

    /**
     * Starts a table.
     *
     * @param right which columns hold numbers, which end under one another
     * @param titles one a column
     */
    TextTable(boolean[] right, List<String> titles) {
        this.right = right.clone();
        rows.add(List.copyOf(titles));
    }

    void row(List<String> cells) {
        if (cells.size() != right.length) {
            throw new IllegalArgumentException("cells must be " + right.length + " but were " + cells.size());
        }
        rows.add(List.copyOf(cells));
    }

    /** The table, a line each row, without blanks at the ends. */
    String text() {
        int[] widths = new int[right.length];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], length(row.get(i)));
            }
        }
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String cell = oneLine(row.get(i));
                String room = " ".repeat(widths[i] - length(cell));
                line.append(right[i] ? room + cell : cell + room).append("  ");
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }

    private static String oneLine(String cell) {
        return cell.replaceAll("[\\p{Cntrl}]+", " ");
    }

    private static int length(String cell) {
        String plain = oneLine(cell);
        return plain.codePointCount(0, plain.length());
    }
}
