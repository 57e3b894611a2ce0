package tallywell.gui;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.LayoutManager;
import java.awt.RenderingHints;
import java.awt.geom.RoundRectangle2D;
import javax.swing.JPanel;
import javax.swing.UIManager;

/** A panel on a card with round corners. */
class Card extends JPanel {
    private static final double CORNER = 20;

    Card(LayoutManager layout) {
        super(layout);
        setOpaque(false);
    }

    /** A size in widths and heights of the text that was chosen, so that what is in it can be read at any. */
    static Dimension inText(double wide, double high) {
        float text = UIManager.getFont("Label.font").getSize2D();
        return new Dimension(Math.round((float) wide * text), Math.round((float) high * text));
    }

    /** The ground; other cards may stand out. */
    Color ground() {
        return Palette.now().card();
    }

    /** The edge. */
    Color edge() {
        return Palette.now().line();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        RoundRectangle2D round =
                new RoundRectangle2D.Double(0.5, 0.5, getWidth() - 1.0, getHeight() - 1.0, CORNER, CORNER);
        g.setColor(ground());
        g.fill(round);
        g.setColor(edge());
        g.draw(round);
        g.dispose();
    }
}
