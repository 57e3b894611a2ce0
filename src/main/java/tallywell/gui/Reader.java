package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Rectangle;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.util.function.Function;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;

/** A window to read in, beside the work: in the middle, never larger than the screen, closed by Escape. */
final class Reader {
    private static final int SCREEN_EDGE = 60;

    private Reader() {}

    /**
     * Opens it.
     *
     * @param size as wanted; less where the screen is smaller
     * @param content made with what closes the window
     */
    static JDialog show(Component owner, String title, Dimension size, Function<Runnable, JComponent> content) {
        Window window = SwingUtilities.getWindowAncestor(owner);
        JDialog dialog = new JDialog(window, title, JDialog.ModalityType.MODELESS);
        JComponent made = content.apply(dialog::dispose);
        Keys.bind(made, KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0), "close", dialog::dispose);
        dialog.setContentPane(made);
        Rectangle screen = owner.getGraphicsConfiguration().getBounds();
        dialog.setSize(
                Math.min(size.width, screen.width - SCREEN_EDGE), Math.min(size.height, screen.height - SCREEN_EDGE));
        dialog.setLocationRelativeTo(window);
        dialog.setVisible(true);
        return dialog;
    }
}
