package tallywell.gui;

import javax.swing.JButton;
import tallywell.desk.History;

/** Undo and redo as buttons, kept in step with what can be undone and redone. */
final class UndoButtons {
    private UndoButtons() {}

    static JButton undo(History<?> history) {
        JButton undo = new JButton(
                Text.of("undo"),
                new Glyph(Glyph.Form.UNDO, 14, () -> Palette.now().ink()));
        undo.addActionListener(event -> history.undo());
        return undo;
    }

    static JButton redo(History<?> history) {
        JButton redo = new JButton(
                Text.of("redo"),
                new Glyph(Glyph.Form.REDO, 14, () -> Palette.now().ink()));
        redo.addActionListener(event -> history.redo());
        return redo;
    }

    static void refresh(History<?> history, JButton undo, JButton redo) {
        undo.setEnabled(history.undoable().isPresent());
        redo.setEnabled(history.redoable().isPresent());
        undo.setToolTipText(
                history.undoable().map(what -> Text.of("undo.what", what)).orElse(null));
        redo.setToolTipText(
                history.redoable().map(what -> Text.of("redo.what", what)).orElse(null));
    }
}
