package tallywell.gui;

import java.awt.Toolkit;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.StringSelection;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.util.EventObject;
import java.util.List;
import java.util.Set;
import javax.swing.AbstractAction;
import javax.swing.DefaultCellEditor;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.table.AbstractTableModel;
import tallywell.desk.Cells;

/** Cells to type into as in a spreadsheet: typing replaces, Enter goes down, Tab right, with paste, fill and undo. */
final class Grid extends JTable {
    private final Cells cells;
    private final int fixed;

    /** Rows under headings; the first columns cannot be changed, in some filling down counts up (see {@link Cells}). */
    Grid(List<List<String>> rows, List<String> headings, int fixed, Set<Integer> counted) {
        this.cells = new Cells(rows, fixed, counted);
        this.fixed = fixed;
        Model model = new Model(cells, headings);
        setModel(model);
        cells.history().onChange(model::changed);
        setDefaultEditor(Object.class, new Typing());
        setCellSelectionEnabled(true);
        putClientProperty("terminateEditOnFocusLost", true);
        setSurrendersFocusOnKeystroke(true);
        setShowGrid(true);
        getTableHeader().setReorderingAllowed(false);
        control(KeyEvent.VK_V, "paste cells", this::pasteClipboard);
        control(KeyEvent.VK_C, "copy cells", this::copyClipboard);
        control(KeyEvent.VK_D, "fill down", this::fillDown);
        control(KeyEvent.VK_Z, "undo cells", () -> cells.history().undo());
        control(KeyEvent.VK_Y, "redo cells", () -> cells.history().redo());
        key(KeyStroke.getKeyStroke(KeyEvent.VK_DELETE, 0), "clear cells", this::clear);
        key(KeyStroke.getKeyStroke(KeyEvent.VK_BACK_SPACE, 0), "clear cells", this::clear);
        if (!rows.isEmpty()) {
            changeSelection(0, fixed, false, false);
        }
    }

    private void control(int code, String name, Runnable action) {
        key(KeyStroke.getKeyStroke(code, InputEvent.CTRL_DOWN_MASK), name, action);
    }

    private void key(KeyStroke stroke, String name, Runnable action) {
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(stroke, name);
        getActionMap().put(name, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent event) {
                stop();
                action.run();
            }
        });
    }

    /** A letter typed onto a cell takes the place of what it holds; F2 or a double click goes on with it. */
    @Override
    public boolean editCellAt(int row, int column, EventObject event) {
        boolean typed = event instanceof KeyEvent;
        if (typed && !isLetter((KeyEvent) event)) {
            return false;
        }
        boolean begun = super.editCellAt(row, column, event);
        if (begun && typed && getEditorComponent() instanceof JTextField field) {
            field.setText("");
        }
        return begun;
    }

    private static boolean isLetter(KeyEvent event) {
        char letter = event.getKeyChar();
        boolean command = event.isControlDown() != event.isAltDown() || event.isMetaDown();
        return letter != KeyEvent.CHAR_UNDEFINED && !Character.isISOControl(letter) && !command;
    }

    /** The editor leaves Enter to the table, which stores and goes down. */
    private static final class Typing extends DefaultCellEditor {
        Typing() {
            super(new JTextField());
            JTextField field = (JTextField) editorComponent;
            field.removeActionListener(delegate);
            field.setBorder(javax.swing.BorderFactory.createEmptyBorder(0, 4, 0, 4));
            setClickCountToStart(2);
        }
    }

    /** The selected cells that can be changed; the first if none is selected. */
    private Cells.Block block() {
        int[] rows = getSelectedRows();
        int[] columns = getSelectedColumns();
        if (rows.length == 0 || columns.length == 0) {
            return new Cells.Block(0, fixed, 0, fixed);
        }
        int left = Math.max(fixed, columns[0]);
        return new Cells.Block(rows[0], left, rows[rows.length - 1], Math.max(left, columns[columns.length - 1]));
    }

    private void pasteClipboard() {
        try {
            if (Toolkit.getDefaultToolkit().getSystemClipboard().getData(DataFlavor.stringFlavor)
                    instanceof String text) {
                cells.paste(block(), text);
            }
        } catch (UnsupportedFlavorException | IOException e) {
            // No text on the clipboard: there is nothing to paste.
            getToolkit().beep();
        }
    }

    private void copyClipboard() {
        Toolkit.getDefaultToolkit().getSystemClipboard().setContents(new StringSelection(cells.copy(block())), null);
    }

    private void clear() {
        cells.clear(block());
    }

    /** Gives the selected cells what stands in the first of their column. */
    void fillDown() {
        cells.fillDown(block());
    }

    /** What is typed so far. */
    Cells cells() {
        return cells;
    }

    /** Takes over what is being typed. */
    void stop() {
        if (isEditing()) {
            getCellEditor().stopCellEditing();
        }
    }

    /** The cells as the table asks for them. */
    private static final class Model extends AbstractTableModel {
        private final Cells cells;
        private final List<String> headings;

        Model(Cells cells, List<String> headings) {
            this.cells = cells;
            this.headings = headings;
        }

        /** Says so cell by cell, since that keeps the selection. */
        void changed() {
            if (getRowCount() > 0) {
                fireTableRowsUpdated(0, getRowCount() - 1);
            }
        }

        @Override
        public int getRowCount() {
            return cells.rows().size();
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
            return cells.rows().get(row).get(column);
        }

        @Override
        public boolean isCellEditable(int row, int column) {
            return cells.isOpen(column);
        }

        @Override
        public void setValueAt(Object value, int row, int column) {
            cells.set(row, column, String.valueOf(value));
        }
    }
}
