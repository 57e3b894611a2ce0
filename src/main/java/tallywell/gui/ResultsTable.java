package tallywell.gui;

import java.awt.Container;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.swing.JTable;
import javax.swing.JViewport;
import javax.swing.ListSelectionModel;
import javax.swing.RowFilter;
import javax.swing.SortOrder;
import javax.swing.table.JTableHeader;
import javax.swing.table.TableColumn;
import javax.swing.table.TableRowSorter;
import tallywell.desk.ResultRow;
import tallywell.desk.Selection;
import tallywell.plate.Well;

/**
 * The results, one a line; a line that is selected selects its wells, and the other way round.
 *
 * <p>No cell is ever cut, since part of a number is another number: columns are as wide as their widest text, the words at
 * the end go on in further lines, and where all this has no room the table is scrolled.
 */
final class ResultsTable extends JTable {
    private static final int LEAST_WORDS = 200;
    private static final int MOST_LINES = 4;
    private static final int SORT_SIGN = 14;
    private static final int SLACK = 24;
    private final ResultsModel model = new ResultsModel();
    private final TableRowSorter<ResultsModel> sorter = new TableRowSorter<>(model);
    private final Selection selection;
    private boolean following;
    private int wordsWide = -1;

    ResultsTable(Selection selection) {
        this.selection = selection;
        setModel(model);
        setName("results");
        getAccessibleContext().setAccessibleName(Text.of("results.title"));
        setSelectionMode(ListSelectionModel.MULTIPLE_INTERVAL_SELECTION);
        setFillsViewportHeight(true);
        setAutoResizeMode(AUTO_RESIZE_LAST_COLUMN);
        getTableHeader().setReorderingAllowed(false);
        for (int column = 0; column < ResultsModel.COLUMNS; column++) {
            int of = column;
            sorter.setComparator(
                    column,
                    (one, other) -> ResultsModel.compare(of, isDescending(of), (ResultRow) one, (ResultRow) other));
            getColumnModel().getColumn(column).setCellRenderer(ResultsCells.of(column));
            getColumnModel().getColumn(column).setHeaderRenderer(new ResultsCells.Head(column));
        }
        setRowSorter(sorter);
        getSelectionModel().addListSelectionListener(event -> {
            if (!event.getValueIsAdjusting() && !following) {
                selectWells();
            }
        });
        selection.onChange(this::follow);
        fit();
    }

    private boolean isDescending(int column) {
        return sorter.getSortKeys().stream()
                .anyMatch(key -> key.getColumn() == column && key.getSortOrder() == SortOrder.DESCENDING);
    }

    void show(List<ResultRow> lines, String analyte, boolean scatterOnly) {
        following = true;
        model.show(lines, analyte, scatterOnly);
        TableColumn value = getColumnModel().getColumn(ResultsModel.VALUE);
        value.setHeaderValue(model.getColumnName(ResultsModel.VALUE));
        TableColumn expanded = getColumnModel().getColumn(ResultsModel.EXPANDED);
        expanded.setHeaderValue(model.getColumnName(ResultsModel.EXPANDED));
        fit();
        following = false;
        follow();
    }

    /** Shows only the lines that somebody has to look at. */
    void showOnlyAttention(boolean only) {
        following = true;
        sorter.setRowFilter(only ? new NeedsAttention() : null);
        heights();
        following = false;
        follow();
    }

    /** Lets through what needs attention. */
    private static final class NeedsAttention extends RowFilter<ResultsModel, Integer> {
        @Override
        public boolean include(Entry<? extends ResultsModel, ? extends Integer> entry) {
            return entry.getModel().lines().get(entry.getIdentifier()).needsAttention();
        }
    }

    List<ResultRow> lines() {
        return model.lines();
    }

    /** The line that is selected, if it is one. */
    Optional<ResultRow> selected() {
        int[] views = getSelectedRows();
        return views.length == 0 ? Optional.empty() : Optional.of(model.lines().get(convertRowIndexToModel(views[0])));
    }

    @Override
    public void updateUI() {
        super.updateUI();
        // The constructor of the superclass calls this before the fields are set.
        if (model != null) {
            for (int column = 0; column < ResultsModel.COLUMNS; column++) {
                getColumnModel().getColumn(column).setCellRenderer(ResultsCells.of(column));
            }
            fit();
        }
    }

    /** Makes every column as wide as its widest text. */
    private void fit() {
        FontMetrics metrics = getFontMetrics(getFont().deriveFont(java.awt.Font.BOLD));
        setRowHeight(metrics.getHeight() + 7);
        JTableHeader head = getTableHeader();
        FontMetrics headMetrics = head.getFontMetrics(head.getFont());
        for (int column = 0; column < ResultsModel.NEXT; column++) {
            int widest = headMetrics.stringWidth(model.getColumnName(column)) + SORT_SIGN;
            for (ResultRow line : model.lines()) {
                widest = Math.max(widest, metrics.stringWidth(ResultsModel.text(column, line)));
            }
            int sign = column == ResultsModel.VERDICT ? metrics.getHeight() + 4 : 0;
            TableColumn of = getColumnModel().getColumn(column);
            // The least is never taken over the most, so the most of before must go first.
            of.setMaxWidth(Integer.MAX_VALUE);
            of.setMinWidth(widest + sign + 2 * ResultsCells.MARGIN);
            of.setMaxWidth(of.getMinWidth() + SLACK);
            of.setPreferredWidth(of.getMinWidth());
        }
        TableColumn words = getColumnModel().getColumn(ResultsModel.NEXT);
        words.setMinWidth(LEAST_WORDS);
        words.setPreferredWidth(LEAST_WORDS);
        wordsWide = -1;
        revalidate();
        repaint();
    }

    /** Fills the window where that is wide enough, else is scrolled. */
    @Override
    public boolean getScrollableTracksViewportWidth() {
        Container parent = getParent();
        return parent instanceof JViewport && parent.getWidth() >= getMinimumWidth();
    }

    private int getMinimumWidth() {
        int sum = 0;
        for (int column = 0; column < ResultsModel.COLUMNS; column++) {
            sum += getColumnModel().getColumn(column).getMinWidth();
        }
        return sum;
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return new Dimension(600, 4 * getRowHeight());
    }

    @Override
    public void doLayout() {
        super.doLayout();
        int wide = getColumnModel().getColumn(ResultsModel.NEXT).getWidth();
        if (wide != wordsWide) {
            wordsWide = wide;
            heights();
        }
    }

    /** Makes the lines as high as their words need. */
    private void heights() {
        FontMetrics metrics = getFontMetrics(getFont());
        int room = Math.max(LEAST_WORDS, wordsWide) - 2 * ResultsCells.MARGIN - 2;
        for (int view = 0; view < getRowCount(); view++) {
            String words = model.lines().get(convertRowIndexToModel(view)).next();
            int lines = Math.min(MOST_LINES, lines(words, metrics, room));
            int high = getRowHeight() + (lines - 1) * metrics.getHeight();
            if (getRowHeight(view) != high) {
                setRowHeight(view, high);
            }
        }
    }

    /** How many lines a text takes where it is broken between words. */
    private static int lines(String text, FontMetrics metrics, int room) {
        int lines = 1;
        int x = 0;
        int space = metrics.charWidth(' ');
        for (String word : text.split(" ")) {
            int wide = metrics.stringWidth(word);
            if (x > 0 && x + space + wide > room) {
                lines++;
                x = wide;
            } else {
                x += (x > 0 ? space : 0) + wide;
            }
        }
        return lines;
    }

    private void selectWells() {
        Set<Well> wells = new HashSet<>();
        for (int view : getSelectedRows()) {
            wells.addAll(model.lines().get(convertRowIndexToModel(view)).wells());
        }
        following = true;
        selection.only(wells);
        following = false;
    }

    private void follow() {
        if (following) {
            return;
        }
        following = true;
        getSelectionModel().setValueIsAdjusting(true);
        clearSelection();
        Set<Well> wells = selection.wells();
        int first = -1;
        for (int i = 0; i < model.lines().size(); i++) {
            int view = convertRowIndexToView(i);
            if (view >= 0 && model.lines().get(i).wells().stream().anyMatch(wells::contains)) {
                addRowSelectionInterval(view, view);
                first = first < 0 ? view : Math.min(first, view);
            }
        }
        getSelectionModel().setValueIsAdjusting(false);
        if (first >= 0) {
            scrollRectToVisible(getCellRect(first, 0, true));
        }
        following = false;
    }
}
