package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Rectangle;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JOptionPane;
import javax.swing.SwingUtilities;

/** Asks with a panel, OK and Cancel: resizable, and never larger than the screen. */
final class Asking {
    private static final int EDGE = 24;

    private Asking() {}

    /**
     * Asks until answered.
     *
     * @param first what has the focus at the beginning
     * @return whether the answer is OK
     */
    static boolean ask(Component owner, String title, JComponent panel, JComponent first) {
        JOptionPane pane = new JOptionPane(panel, JOptionPane.PLAIN_MESSAGE, JOptionPane.OK_CANCEL_OPTION) {
            @Override
            public void selectInitialValue() {
                super.selectInitialValue();
                first.requestFocusInWindow();
            }
        };
        JDialog dialog = pane.createDialog(owner, title);
        dialog.setResizable(true);
        Rectangle screen = dialog.getGraphicsConfiguration().getBounds();
        Dimension wanted = dialog.getSize();
        dialog.setSize(Math.min(wanted.width, screen.width - EDGE), Math.min(wanted.height, screen.height - EDGE));
        dialog.setLocationRelativeTo(SwingUtilities.getWindowAncestor(owner));
        dialog.setVisible(true);
        dialog.dispose();
        return Integer.valueOf(JOptionPane.OK_OPTION).equals(pane.getValue());
    }
}
