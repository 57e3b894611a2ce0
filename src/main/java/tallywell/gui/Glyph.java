package tallywell.gui;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.function.Supplier;
import javax.swing.Icon;

/** Our own icons, drawn on a square of 16 units. */
final class Glyph implements Icon {
    /** What is drawn. */
    enum Form {
        GOOD,
        LOOK,
        MISSING,
        UNDO,
        REDO,
        REPEAT,
        BUSY
    }

    private static final double UNITS = 16;

    private final Form form;
    private final int size;
    private final Supplier<Color> colour;

    Glyph(Form form, int size, Supplier<Color> colour) {
        this.form = form;
        this.size = size;
        this.colour = colour;
    }

    static Glyph good(int size) {
        return new Glyph(Form.GOOD, size, () -> Palette.now().good());
    }

    static Glyph look(int size) {
        return new Glyph(Form.LOOK, size, () -> Palette.now().attention());
    }

    static Glyph missing(int size) {
        return new Glyph(Form.MISSING, size, () -> Palette.now().soft());
    }

    @Override
    public void paintIcon(Component component, Graphics graphics, int x, int y) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.translate(x, y);
        g.scale(size / UNITS, size / UNITS);
        g.setColor(component.isEnabled() ? colour.get() : Palette.now().line());
        g.setStroke(new BasicStroke(1.5f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        draw(g);
        g.dispose();
    }

    private void draw(Graphics2D g) {
        switch (form) {
            case GOOD -> {
                g.draw(new Ellipse2D.Double(1, 1, 14, 14));
                g.draw(path(4.8, 8.2, 7.1, 10.6, 11.2, 5.8));
            }
            case LOOK -> {
                g.draw(new Ellipse2D.Double(1, 1, 14, 14));
                g.draw(new Line2D.Double(8, 4.4, 8, 8.8));
                g.fill(new Ellipse2D.Double(7.1, 10.6, 1.8, 1.8));
            }
            case MISSING -> {
                g.setStroke(new BasicStroke(
                        1.5f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, new float[] {2.2f, 2.6f}, 0));
                g.draw(new Ellipse2D.Double(1, 1, 14, 14));
            }
            case UNDO -> arrow(g);
            case REDO -> {
                g.translate(UNITS, 0);
                g.scale(-1, 1);
                arrow(g);
            }
            case REPEAT -> {
                g.draw(new Arc2D.Double(2, 2, 12, 12, 60, 290, Arc2D.OPEN));
                g.draw(path(10.2, 0.8, 11.2, 3.0, 8.6, 4.2));
            }
            case BUSY -> g.draw(new Arc2D.Double(1.5, 1.5, 13, 13, 40, 260, Arc2D.OPEN));
        }
    }

    private static void arrow(Graphics2D g) {
        g.draw(new Arc2D.Double(3, 4, 10, 9, 120, -230, Arc2D.OPEN));
        g.draw(path(2.2, 2.2, 3.2, 5.8, 6.9, 5.4));
    }

    private static Path2D path(double... points) {
        Path2D path = new Path2D.Double();
        path.moveTo(points[0], points[1]);
        for (int i = 2; i < points.length; i += 2) {
            path.lineTo(points[i], points[i + 1]);
        }
        return path;
    }

    @Override
    public int getIconWidth() {
        return size;
    }

    @Override
    public int getIconHeight() {
        return size;
    }
}
