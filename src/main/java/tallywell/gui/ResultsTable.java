package tallywell.gui;

import java.awt.Component;
import java.awt.Font;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.swing.JLabel;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import javax.swing.table.TableCellRenderer;
import javax.swing.table.TableRowSorter;
import tallywell.assess.Verdict;
import tallywell.desk.ResultRow;
import tallywell.desk.Selection;
import tallywell.plate.Well;

/** The results, one a line; a line that is selected selects its wells, and the other way round. */
final class ResultsTable extends JTable {
    private static final int VERDICT = 7;
    private static final int[] WIDTHS = {210, 96, 84, 36, 64, 96, 70, 92, 480};

    private final Rows rows = new Rows();
    private final Selection selection;
    private boolean following;

    ResultsTable(Selection selection) {
        this.selection = selection;
        setModel(rows);
        setName("results");
        getAccessibleContext().setAccessibleName(Text.of("results.title"));
        setSelectionMode(ListSelectionModel.MULTIPLE_INTERVAL_SELECTION);
        setFillsViewportHeight(true);
        setAutoResizeMode(AUTO_RESIZE_LAST_COLUMN);
        getTableHeader().setReorderingAllowed(false);
        sorter();
        for (int i = 0; i < WIDTHS.length; i++) {
            getColumnModel().getColumn(i).setPreferredWidth(WIDTHS[i]);
            getColumnModel().getColumn(i).setCellRenderer(new Cell(i));
            getColumnModel().getColumn(i).setHeaderRenderer(new Head(i));
        }
        getSelectionModel().addListSelectionListener(event -> {
            if (!event.getValueIsAdjusting() && !following) {
                selectWells();
            }
        });
        selection.onChange(this::follow);
    }

    void show(List<ResultRow> lines, String analyte) {
        following = true;
        rows.lines = lines;
        rows.analyte = analyte;
        rows.fireTableDataChanged();
        getColumnModel().getColumn(1).setHeaderValue(rows.getColumnName(1));
        getTableHeader().repaint();
        following = false;
        follow();
    }

    List<ResultRow> lines() {
        return rows.lines;
    }

    /** The line that is selected, if it is one. */
    java.util.Optional<ResultRow> selected() {
        int[] views = getSelectedRows();
        return views.length == 0
                ? java.util.Optional.empty()
                : java.util.Optional.of(rows.lines.get(convertRowIndexToModel(views[0])));
    }

    private void sorter() {
        TableRowSorter<Rows> sorter = new TableRowSorter<>(rows);
        for (int column = 0; column < WIDTHS.length; column++) {
            int of = column;
            sorter.setComparator(column, (one, other) -> rows.compare(of, (ResultRow) one, (ResultRow) other));
        }
        setRowSorter(sorter);
    }

    private void selectWells() {
        Set<Well> wells = new HashSet<>();
        for (int view : getSelectedRows()) {
            wells.addAll(rows.lines.get(convertRowIndexToModel(view)).wells());
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
        for (int i = 0; i < rows.lines.size(); i++) {
            if (rows.lines.get(i).wells().stream().anyMatch(wells::contains)) {
                int view = convertRowIndexToView(i);
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

    /** What the table shows. */
    private static final class Rows extends AbstractTableModel {
        private List<ResultRow> lines = new ArrayList<>();
        private String analyte = "";

        @Override
        public int getRowCount() {
            return lines.size();
        }

        @Override
        public int getColumnCount() {
            return WIDTHS.length;
        }

        @Override
        public String getColumnName(int column) {
            return Text.of("results." + column, analyte);
        }

        /** The whole row: the renderer picks what it shows, the sorter what it compares. */
        @Override
        public Object getValueAt(int row, int column) {
            return lines.get(row);
        }

        @Override
        public Class<?> getColumnClass(int column) {
            return ResultRow.class;
        }

        int compare(int column, ResultRow one, ResultRow other) {
            return switch (column) {
                case 0 ->
                    one.result().slot().orElse(10_000) != other.result().slot().orElse(10_000)
                            ? Integer.compare(
                                    one.result().slot().orElse(10_000),
                                    other.result().slot().orElse(10_000))
                            : one.name().compareTo(other.name());
                case 1, 2 ->
                    Double.compare(
                            one.result().value().orElse(-1),
                            other.result().value().orElse(-1));
                case 3 -> Integer.compare(one.result().n(), other.result().n());
                case 4 ->
                    Double.compare(
                            one.result().cvPercent().orElse(-1),
                            other.result().cvPercent().orElse(-1));
                case 6 ->
                    Double.compare(
                            one.result().netDeltaA().orElse(-9),
                            other.result().netDeltaA().orElse(-9));
                case VERDICT -> one.verdict().compareTo(other.verdict());
                default -> text(column, one).compareTo(text(column, other));
            };
        }

        static String text(int column, ResultRow row) {
            return switch (column) {
                case 0 -> row.name();
                case 1 ->
                    row.result().value().isPresent()
                            ? row.value() + " " + row.result().unit()
                            : row.value();
                case 2 -> row.uncertainty();
                case 3 -> Integer.toString(row.result().n());
                case 4 -> row.cv();
                case 5 -> row.creep();
                case 6 -> row.deltaA();
                case VERDICT -> row.verdict().word();
                default -> row.next();
            };
        }
    }

    /** Draws a heading over its column, to the same side. */
    private static final class Head implements TableCellRenderer {
        private final int column;

        Head(int column) {
            this.column = column;
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focus, int row, int viewColumn) {
            Component head = table.getTableHeader()
                    .getDefaultRenderer()
                    .getTableCellRendererComponent(table, value, selected, focus, row, viewColumn);
            if (head instanceof JLabel label) {
                label.setHorizontalAlignment(
                        column >= 1 && column < VERDICT ? SwingConstants.RIGHT : SwingConstants.LEFT);
            }
            return head;
        }
    }

    /** Draws a cell. */
    private static final class Cell extends DefaultTableCellRenderer {
        private final int column;

        Cell(int column) {
            this.column = column;
            setHorizontalAlignment(column >= 1 && column < VERDICT ? SwingConstants.RIGHT : SwingConstants.LEFT);
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focus, int row, int viewColumn) {
            ResultRow line = (ResultRow) value;
            super.getTableCellRendererComponent(table, Rows.text(column, line), selected, focus, row, viewColumn);
            setIcon(null);
            setToolTipText(column == 8 && !line.next().isEmpty() ? line.next() : null);
            setBorder(javax.swing.BorderFactory.createEmptyBorder(0, 8, 0, 8));
            if (column == 0 && selected) {
                setFont(getFont().deriveFont(Font.BOLD));
            }
            if (column == VERDICT) {
                verdict(line.verdict());
            }
            return this;
        }

        private void verdict(Verdict verdict) {
            Palette palette = Palette.now();
            setFont(getFont().deriveFont(Font.BOLD));
            switch (verdict) {
                case REPORT -> {
                    setIcon(Glyph.good(15));
                    setForeground(palette.good());
                }
                case CHECK -> {
                    setIcon(Glyph.look(15));
                    setForeground(palette.attention());
                }
                case REPEAT -> {
                    setIcon(new Glyph(Glyph.Form.REPEAT, 15, () -> Palette.now().accent()));
                    setForeground(palette.accent());
                }
            }
        }
    }
}
