package tallywell.chart;

import java.awt.Graphics2D;

/** A drawing of fixed size that can be put on paper, into a file or into a window. */
public interface Picture {
    /** Width in points of 1/72 inch. */
    double width();

    /** Height in points of 1/72 inch. */
    double height();

    /**
     * Draws it, the upper left corner at the origin.
     *
     * @param to where to; its state is changed
     */
    void draw(Graphics2D to);
}
