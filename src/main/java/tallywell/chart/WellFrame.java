package tallywell.chart;

import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;

/** The frame of a well, whose form tells its role. */
enum WellFrame {
    /** An outline with nothing behind. */
    BLANK("blank", "blank"),
    /** A double edge. */
    STANDARD("standard", "standard"),
    /** A filled card. */
    SAMPLE("sample", "sample"),
    /** Corners cut off. */
    CONTROL("control", "control"),
    /** A broken outline. */
    SAMPLE_BLANK("sample-blank", "sample blank"),
    /** A card with a plus in the corner. */
    SPIKE("spike", "spike");

    private final String role;
    private final String words;

    WellFrame(String role, String words) {
        this.role = role;
        this.words = words;
    }

    /** The frame of a role. */
    static WellFrame of(String role) {
        return List.of(values()).stream()
                .filter(frame -> frame.role.equals(role))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("role must be one of a well in use but was " + role));
    }

    /** The role as the legend says it. */
    String words() {
        return words;
    }

    /** Draws the frame into a cell. */
    void draw(Graphics2D g, Rectangle2D cell) {
        double corner = Math.min(5, cell.getHeight() / 6);
        Shape outline = this == CONTROL ? cut(cell, 1.4 * corner) : rounded(cell, corner);
        if (this == SAMPLE || this == SPIKE || this == CONTROL) {
            g.setPaint(Ink.CARD);
            g.fill(outline);
        }
        g.setPaint(this == SAMPLE ? Ink.LINE : Ink.SOFT);
        g.setStroke(this == SAMPLE_BLANK ? Ink.dashes(0.7) : Ink.pen(this == CONTROL ? 0.9 : 0.7));
        g.draw(outline);
        if (this == STANDARD && cell.getHeight() > 12) {
            g.draw(rounded(inner(cell, 1.8), corner - 1));
        }
        if (this == SPIKE) {
            double r = Math.min(3, cell.getHeight() / 8);
            double x = cell.getMaxX() - 2 * r;
            double y = cell.getMaxY() - 2 * r;
            g.setStroke(Ink.pen(1));
            g.draw(new Line2D.Double(x - r, y, x + r, y));
            g.draw(new Line2D.Double(x, y - r, x, y + r));
        }
    }

    private static Rectangle2D inner(Rectangle2D cell, double by) {
        return new Rectangle2D.Double(
                cell.getX() + by, cell.getY() + by, cell.getWidth() - 2 * by, cell.getHeight() - 2 * by);
    }

    private static Shape rounded(Rectangle2D cell, double corner) {
        return new RoundRectangle2D.Double(
                cell.getX(), cell.getY(), cell.getWidth(), cell.getHeight(), 2 * corner, 2 * corner);
    }

    private static Shape cut(Rectangle2D cell, double by) {
        Path2D path = new Path2D.Double();
        path.moveTo(cell.getMinX() + by, cell.getMinY());
        path.lineTo(cell.getMaxX() - by, cell.getMinY());
        path.lineTo(cell.getMaxX(), cell.getMinY() + by);
        path.lineTo(cell.getMaxX(), cell.getMaxY() - by);
        path.lineTo(cell.getMaxX() - by, cell.getMaxY());
        path.lineTo(cell.getMinX() + by, cell.getMaxY());
        path.lineTo(cell.getMinX(), cell.getMaxY() - by);
        path.lineTo(cell.getMinX(), cell.getMinY() + by);
        path.closePath();
        return path;
    }
}
