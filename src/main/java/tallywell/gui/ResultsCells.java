package tallywell.gui;

import java.awt.Component;
import java.awt.Font;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.SwingConstants;
import javax.swing.table.DefaultTableCellRenderer;
import javax.swing.table.TableCellRenderer;
import tallywell.assess.Verdict;
import tallywell.desk.ResultRow;

/** Draws the cells of the table of results. */
final class ResultsCells {
    /** Room on either side of a text. */
    static final int MARGIN = 8;

    private static final int SIGN = 15;

    private ResultsCells() {}

    /** What draws a column. */
    static TableCellRenderer of(int column) {
        return column == ResultsModel.NEXT ? new Words() : new Cell(column);
    }

    private static int side(int column) {
        return ResultsModel.isNumber(column) ? SwingConstants.RIGHT : SwingConstants.LEFT;
    }

    /** Draws a heading over its column, to the same side. */
    static final class Head implements TableCellRenderer {
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
                label.setHorizontalAlignment(side(column));
            }
            return head;
        }
    }

    /** Draws a cell. */
    private static final class Cell extends DefaultTableCellRenderer {
        private final int column;

        Cell(int column) {
            this.column = column;
            setHorizontalAlignment(side(column));
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focus, int row, int viewColumn) {
            ResultRow line = (ResultRow) value;
            super.getTableCellRendererComponent(
                    table, ResultsModel.text(column, line), selected, focus, row, viewColumn);
            setIcon(null);
            setBorder(BorderFactory.createEmptyBorder(0, MARGIN, 0, MARGIN));
            if (column == ResultsModel.NAME && selected) {
                setFont(getFont().deriveFont(Font.BOLD));
            }
            if (column == ResultsModel.VERDICT) {
                verdict(line.verdict());
            }
            return this;
        }

        private void verdict(Verdict verdict) {
            Palette palette = Palette.now();
            setFont(getFont().deriveFont(Font.BOLD));
            switch (verdict) {
                case REPORT -> {
                    setIcon(Glyph.good(SIGN));
                    setForeground(palette.good());
                }
                case CHECK -> {
                    setIcon(Glyph.look(SIGN));
                    setForeground(palette.attention());
                }
                case REPEAT -> {
                    setIcon(new Glyph(
                            Glyph.Form.REPEAT, SIGN, () -> Palette.now().accent()));
                    setForeground(palette.accent());
                }
            }
        }
    }

    /** Draws words that go on in the next line rather than being cut. */
    private static final class Words implements TableCellRenderer {
        private final JTextArea area = Labels.wrapped("", false);

        Words() {
            area.setBorder(BorderFactory.createEmptyBorder(3, MARGIN, 3, MARGIN));
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focus, int row, int viewColumn) {
            area.setFont(table.getFont());
            area.setForeground(selected ? table.getSelectionForeground() : table.getForeground());
            area.setBackground(selected ? table.getSelectionBackground() : table.getBackground());
            area.setOpaque(true);
            area.setBorder(BorderFactory.createEmptyBorder(3, MARGIN, 3, MARGIN));
            area.setText(ResultsModel.text(ResultsModel.NEXT, (ResultRow) value));
            return area;
        }
    }
}
