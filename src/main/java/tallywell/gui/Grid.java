package tallywell.gui;

import java.awt.Toolkit;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.util.List;
import javax.swing.AbstractAction;
import javax.swing.JTable;
import javax.swing.KeyStroke;
import javax.swing.table.AbstractTableModel;
import tallywell.desk.SampleRows;

/** Rows of text to type into, with paste from a spreadsheet; the first columns may be fixed. */
final class Grid extends JTable {
    private final List<List<String>> rows;

    Grid(List<List<String>> rows, List<String> headings, int fixed) {
        this.rows = rows;
        setModel(new Cells(rows, headings, fixed));
        setCellSelectionEnabled(true);
        putClientProperty("terminateEditOnFocusLost", true);
        setShowGrid(true);
        getTableHeader().setReorderingAllowed(false);
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT)
                .put(KeyStroke.getKeyStroke(KeyEvent.VK_V, InputEvent.CTRL_DOWN_MASK), "paste cells");
        getActionMap().put("paste cells", new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent event) {
                pasteClipboard();
            }
        });
    }

    private void pasteClipboard() {
        try {
            if (Toolkit.getDefaultToolkit().getSystemClipboard().getData(DataFlavor.stringFlavor)
                    instanceof String text) {
                paste(text);
            }
        } catch (UnsupportedFlavorException | IOException e) {
            // No text on the clipboard: there is nothing to paste.
            getToolkit().beep();
        }
    }

    void paste(String text) {
        SampleRows.paste(rows, Math.max(0, getSelectedRow()), Math.max(1, getSelectedColumn()), text);
        ((AbstractTableModel) getModel()).fireTableDataChanged();
    }

    void stop() {
        if (isEditing()) {
            getCellEditor().stopCellEditing();
        }
    }

    /** What is typed. */
    private static final class Cells extends AbstractTableModel {
        private final List<List<String>> rows;
        private final List<String> headings;
        private final int fixed;

        Cells(List<List<String>> rows, List<String> headings, int fixed) {
            this.rows = rows;
            this.headings = headings;
            this.fixed = fixed;
        }

        @Override
        public int getRowCount() {
            return rows.size();
        }

        @Override
        public int getColumnCount() {
            return headings.size();
        }

        @Override
        public String getColumnName(int column) {
            return headings.get(column);
        }

        @Override
        public Object getValueAt(int row, int column) {
            return rows.get(row).get(column);
        }

        @Override
        public boolean isCellEditable(int row, int column) {
            return column >= fixed;
        }

        @Override
        public void setValueAt(Object value, int row, int column) {
            rows.get(row).set(column, String.valueOf(value));
        }
    }
}
