package tallywell.gui;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Rectangle;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JScrollPane;
import javax.swing.ScrollPaneConstants;

/** Holds a page: as large as the window, and scrolled where large text needs more room than the window has. */
final class Fitting extends AsWide {
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
        return pane;
    }

    /** A page that can be smaller than it would like is made smaller before it is scrolled. */
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
