package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.event.KeyEvent;
import javax.swing.BorderFactory;
import javax.swing.JSplitPane;
import javax.swing.KeyStroke;

/** Two parts with an edge between them that can be moved, by mouse or, after F8, by arrow keys. */
final class Divided extends JSplitPane {
    private static final int EDGE = 7;
    private static final Dimension START = new Dimension(10, 10);

    /**
     * Divides the room.
     *
     * @param part of the first, between 0 and 1
     */
    Divided(int orientation, Component first, Component second, double part) {
        super(orientation, true, first, second);
        // Both parts start from next to nothing, so that the room is divided as asked whatever is in them.
        first.setPreferredSize(START);
        second.setPreferredSize(START);
        setResizeWeight(part);
        setBorder(BorderFactory.createEmptyBorder());
        setOpaque(false);
        setDividerSize(EDGE);
        // Its own F6 would keep that key from the page.
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke(KeyEvent.VK_F6, 0), "none");
    }
}
