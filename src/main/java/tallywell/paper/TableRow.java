package tallywell.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;

/** A row of a table, its texts broken to the widths of the columns. */
final class TableRow {
    private static final double SIZE = 7.3;
    private static final double LEADING = 8.7;
    private static final double PAD = 1.45;
    private static final double SIDE = 2.5;
    private static final double RISE = 6.7;

    /** Longer texts stand in full in the workbook. */
    private static final int MOST_LINES = 6;

    private final List<Column> columns;
    private final List<Cell> cells;
    private final List<TextBlock> blocks;
    private final Letters letters;
    private final boolean isHead;
    private final double height;

    private TableRow(Letters letters, List<Column> columns, List<Cell> cells, boolean isHead) throws IOException {
        if (cells.size() != columns.size()) {
            throw new IllegalArgumentException("cells must be " + columns.size() + " but was " + cells.size());
        }
        this.columns = columns;
        this.cells = cells;
        this.letters = letters;
        this.isHead = isHead;
        List<TextBlock> broken = new ArrayList<>();
        int lines = 1;
        for (int i = 0; i < cells.size(); i++) {
            double width = columns.get(i).width() - 2 * SIDE;
            TextBlock block =
                    TextBlock.of(letters, cells.get(i).text(), cells.get(i).face(), SIZE, width, MOST_LINES);
            lines = Math.max(lines, block.lines().size());
            broken.add(block);
        }
        this.blocks = broken;
        this.height = lines * LEADING + 2 * PAD;
    }

    static TableRow of(Letters letters, List<Column> columns, List<Cell> cells) throws IOException {
        return new TableRow(letters, columns, cells, false);
    }

    static TableRow head(Letters letters, List<Column> columns) throws IOException {
        List<Cell> cells =
                columns.stream().map(column -> Cell.bold(column.title())).toList();
        return new TableRow(letters, columns, cells, true);
    }

    double height() {
        return height;
    }

    void draw(Page page, PDStructureElement row, double left, double top) throws IOException {
        ground(page, left, top);
        double x = left;
        for (int i = 0; i < cells.size(); i++) {
            PDStructureElement cell = Tags.child(row, isHead ? "TH" : "TD");
            if (isHead) {
                Tags.headsColumn(cell);
            }
            PDStructureElement holder = blocks.get(i).holder(cell);
            double y = top + PAD + RISE;
            for (String line : blocks.get(i).lines()) {
                if (!line.isEmpty()) {
                    page.text(
                            holder,
                            line,
                            cells.get(i).face(),
                            SIZE,
                            cells.get(i).ink(),
                            at(i, x, line),
                            y);
                }
                y += LEADING;
            }
            x += columns.get(i).width();
        }
    }

    /** Draws the heading once more on a further page, where it is furniture. */
    void repeat(Page page, double left, double top) throws IOException {
        ground(page, left, top);
        double x = left;
        for (int i = 0; i < cells.size(); i++) {
            double y = top + PAD + RISE;
            for (String line : blocks.get(i).lines()) {
                page.furniture(line, cells.get(i).face(), SIZE, cells.get(i).ink(), at(i, x, line), y);
                y += LEADING;
            }
            x += columns.get(i).width();
        }
    }

    private double at(int column, double x, String line) throws IOException {
        if (!columns.get(column).toTheRight()) {
            return x + SIDE;
        }
        return x
                + columns.get(column).width()
                - SIDE
                - letters.width(line, cells.get(column).face(), SIZE);
    }

    private void ground(Page page, double left, double top) throws IOException {
        double x = left;
        for (int i = 0; i < cells.size(); i++) {
            double width = columns.get(i).width();
            if (isHead) {
                page.fill(Ink.HEAD, x, top, width, height);
            } else if (cells.get(i).ground().isPresent()) {
                page.fill(cells.get(i).ground().get(), x, top + 0.6, width, height - 1.2);
            }
            x += width;
        }
        page.line(isHead ? Ink.SOFT : Ink.LINE, isHead ? 0.8 : 0.4, left, top + height, x, top + height);
    }
}
