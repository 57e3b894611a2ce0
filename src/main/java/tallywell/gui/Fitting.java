package tallywell.gui;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Rectangle;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.ScrollPaneConstants;
import javax.swing.Scrollable;

/** Holds a page: as large as the window, and scrolled where large text needs more room than the window has. */
final class Fitting extends JPanel implements Scrollable {
    private static final int UNIT = 24;

    private Fitting(JComponent page) {
        super(new BorderLayout());
        add(page, BorderLayout.CENTER);
    }

    static JScrollPane of(JComponent page) {
        JScrollPane pane = new JScrollPane(
                new Fitting(page),
                ScrollPaneConstants.VERTICAL_SCROLLBAR_AS_NEEDED,
                ScrollPaneConstants.HORIZONTAL_SCROLLBAR_NEVER);
        // Null would give way to the border of the next look.
        pane.setBorder(BorderFactory.createEmptyBorder());
        pane.getVerticalScrollBar().setUnitIncrement(UNIT);
        return pane;
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return getPreferredSize();
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return UNIT;
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
        return Math.max(UNIT, visible.height - UNIT);
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        return true;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return getParent() == null || getParent().getHeight() >= getMinimumSize().height;
    }

    /** Where it does not fit it is as small as it can be, and scrolled. */
    @Override
    public Dimension getPreferredSize() {
        Dimension wanted = super.getPreferredSize();
        return getScrollableTracksViewportHeight() ? wanted : new Dimension(wanted.width, getMinimumSize().height);
    }

    /** New words in a text ask to be seen; that must not move the page under the mouse. */
    @Override
    public void scrollRectToVisible(Rectangle part) {
        // The page stays where the user has put it.
    }
}
