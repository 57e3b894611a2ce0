package tallywell.gui;

import java.awt.Dimension;
import java.awt.LayoutManager;
import java.awt.Rectangle;
import javax.swing.JPanel;
import javax.swing.Scrollable;

/** As wide as what it is scrolled in, so that its texts wrap. */
class AsWide extends JPanel implements Scrollable {
    static final int UNIT = 24;

    AsWide(LayoutManager layout) {
        super(layout);
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

    /** Where there is room to spare it takes it, else it is scrolled. */
    @Override
    public boolean getScrollableTracksViewportHeight() {
        return getParent() != null && getParent().getHeight() > getPreferredSize().height;
    }
}
