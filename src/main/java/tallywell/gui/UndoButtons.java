package tallywell.gui;

import javax.swing.JButton;
import tallywell.desk.History;

/** Keeps a pair of buttons in step with what can be undone and redone. */
final class UndoButtons {
    private UndoButtons() {}

    static void refresh(History<?> history, JButton undo, JButton redo) {
        undo.setEnabled(history.undoable().isPresent());
        redo.setEnabled(history.redoable().isPresent());
        undo.setToolTipText(
                history.undoable().map(what -> Text.of("undo.what", what)).orElse(null));
        redo.setToolTipText(
                history.redoable().map(what -> Text.of("redo.what", what)).orElse(null));
    }
}
