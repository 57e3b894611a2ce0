package tallywell.gui;

import java.awt.Component;
import java.awt.KeyboardFocusManager;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;

/** Takes the focus from one part of a page to the next, and from the last to the first. */
final class FocusRound {
    private final List<JComponent> parts;

    FocusRound(JComponent... parts) {
        this.parts = List.of(parts);
    }

    /** Goes to the part after the one that has the focus; to the first if none has it. Parts that are not seen are left out. */
    void goOn() {
        Component owner = KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
        int at = -1;
        for (int i = 0; i < parts.size(); i++) {
            if (owner != null && SwingUtilities.isDescendingFrom(owner, parts.get(i))) {
                at = i;
            }
        }
        for (int i = 1; i <= parts.size(); i++) {
            JComponent next = parts.get((at + i) % parts.size());
            if (next.isShowing() && next.requestFocusInWindow()) {
                return;
            }
        }
    }
}
