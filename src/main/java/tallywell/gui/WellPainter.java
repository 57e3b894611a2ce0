package tallywell.gui;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.font.GlyphVector;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.regex.Pattern;
import tallywell.desk.Faces;
import tallywell.desk.WellFace;

/** Draws one well: shape of its role, two lines of text or a small trace, badges. */
final class WellPainter {
    private static final double ROUND = 0.5;
    private static final float LEAST_TEXT = 7f;
    private static final float LEAST_NUMBER = 5.5f;
    private static final Pattern NUMBER = Pattern.compile("(?:[<>] )?[+−-]?[\\d.,]+");
    private static final double LEAST_FOR_TEXT = 13;

    /** Part of a well's height that one of two lines takes, and the part of the chosen text size that it must reach. */
    private static final double LINE = 0.34;

    private static final double LEAST_OF_CHOSEN = 0.7;

    private static final double TRACE = 1.2;

    private final ValueScale scale = new ValueScale();
    private final Palette palette;
    private final Faces faces;
    private final Font font;

    WellPainter(Palette palette, Faces faces, Font font) {
        this.palette = palette;
        this.faces = faces;
        this.font = font;
    }

    ValueScale scale() {
        return scale;
    }

    void paint(Graphics2D g, WellFace face, Rectangle2D.Double box) {
        if (face.shape() == WellFace.Shape.UNUSED) {
            double dot = Math.max(2, box.height * 0.1);
            g.setColor(palette.edge());
            g.fill(new Ellipse2D.Double(box.getCenterX() - dot / 2, box.getCenterY() - dot / 2, dot, dot));
            badges(g, face, box);
            return;
        }
        Shape outline = outline(face.shape(), box);
        Color ground = ground(face);
        g.setColor(ground);
        g.fill(outline);
        edge(g, face, box, outline, ground);
        Color ink = ValueScale.textOn(ground);
        if (face.excluded()) {
            strike(g, box, ground, ink);
        }
        double inset = Math.max(2, box.height * 0.14);
        Rectangle2D field =
                new Rectangle2D.Double(box.x + inset, box.y + inset, box.width - 2 * inset, box.height - 2 * inset);
        face.trace()
                .ifPresentOrElse(
                        trace -> trace.draw(g, field, TRACE, palette.ofCharts(), ink), () -> lines(g, face, box, ink));
        badges(g, face, box);
    }

    /** Under what the well shows, and paler, so that it stays legible; dashed, so that it is no trace. */
    private static void strike(Graphics2D g, Rectangle2D.Double box, Color ground, Color ink) {
        g.setColor(new Color(
                (ground.getRed() + ink.getRed()) / 2,
                (ground.getGreen() + ink.getGreen()) / 2,
                (ground.getBlue() + ink.getBlue()) / 2));
        g.setStroke(new BasicStroke(1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {4, 3}, 0));
        g.draw(new Line2D.Double(box.x + 4, box.getMaxY() - 4, box.getMaxX() - 4, box.y + 4));
    }

    static Shape outline(WellFace.Shape shape, Rectangle2D.Double box) {
        double round = Math.min(box.width, box.height) * ROUND;
        if (shape != WellFace.Shape.CONTROL) {
            return new RoundRectangle2D.Double(box.x, box.y, box.width, box.height, round, round);
        }
        // A square on its corner; where the well is wider than high it is drawn out, so that text has room.
        double cut = Math.min(box.width, box.height) / 2;
        double top = box.y - box.height * 0.04;
        double bottom = box.getMaxY() + box.height * 0.04;
        Path2D path = new Path2D.Double();
        path.moveTo(box.x, box.getCenterY());
        path.lineTo(box.x + cut, top);
        path.lineTo(box.getMaxX() - cut, top);
        path.lineTo(box.getMaxX(), box.getCenterY());
        path.lineTo(box.getMaxX() - cut, bottom);
        path.lineTo(box.x + cut, bottom);
        path.closePath();
        return path;
    }

    private Color ground(WellFace face) {
        if (face.scaled().isPresent() && faces.hasScale()) {
            return scale.at((face.scaled().getAsDouble() - faces.low()) / (faces.high() - faces.low()));
        }
        return switch (face.shape()) {
            case SAMPLE, SPIKE -> palette.sample();
            case STANDARD -> palette.standard();
            case CONTROL -> palette.control();
            default -> palette.card();
        };
    }

    private void edge(Graphics2D g, WellFace face, Rectangle2D.Double box, Shape outline, Color ground) {
        float thick = box.height < 14 ? 0.8f : 1.3f;
        g.setStroke(new BasicStroke(thick));
        switch (face.shape()) {
            case BLANK -> {
                g.setColor(palette.edge());
                g.draw(outline);
            }
            case BLANK_UNTRIGGERED -> {
                g.setColor(palette.edge());
                g.setStroke(
                        new BasicStroke(thick, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {4, 3}, 0));
                g.draw(outline);
            }
            case STANDARD -> {
                double inset = Math.max(1.5, box.height * 0.07);
                double round = Math.min(box.width, box.height) * ROUND - inset;
                g.setColor(ValueScale.textOn(ground));
                g.draw(new RoundRectangle2D.Double(
                        box.x + inset, box.y + inset, box.width - 2 * inset, box.height - 2 * inset, round, round));
            }
            case SAMPLE_BLANK -> {
                g.setColor(palette.edge());
                g.draw(outline);
                g.draw(new Line2D.Double(
                        box.x + box.width * 0.06,
                        box.getMaxY() - box.height * 0.34,
                        box.x + box.width * 0.26,
                        box.getMaxY() - box.height * 0.05));
                g.draw(new Line2D.Double(
                        box.getMaxX() - box.width * 0.26,
                        box.y + box.height * 0.05,
                        box.getMaxX() - box.width * 0.06,
                        box.y + box.height * 0.34));
            }
            case SPIKE -> {
                g.setColor(ValueScale.textOn(ground));
                double arm = Math.min(box.width, box.height) * 0.1;
                double x = box.x + 2.2 * arm;
                double y = box.y + 2.2 * arm;
                g.setStroke(new BasicStroke(thick + 0.4f));
                g.draw(new Line2D.Double(x - arm, y, x + arm, y));
                g.draw(new Line2D.Double(x, y - arm, x, y + arm));
            }
            default -> {
                // A sample is told by its ground, a control by its corners.
            }
        }
    }

    private void lines(Graphics2D g, WellFace face, Rectangle2D.Double box, Color ink) {
        if (box.height < LEAST_FOR_TEXT || box.width < LEAST_FOR_TEXT) {
            return;
        }
        g.setColor(ink);
        double room = box.width - (face.shape() == WellFace.Shape.CONTROL ? box.width * 0.2 : 6);
        // Two lines that nobody can read say less than one: then the value alone.
        boolean two = !face.label().isEmpty()
                && !face.value().isEmpty()
                && box.height * LINE >= font.getSize2D() * LEAST_OF_CHOSEN;
        if (two) {
            float big = (float) Math.min(font.getSize2D(), box.height * LINE);
            // The number is what is looked for: a value under a label, a level over its unit.
            boolean below = NUMBER.matcher(face.value()).matches();
            Font first = below ? font.deriveFont(big * 0.86f) : font.deriveFont(Font.BOLD, big);
            Font second = below ? font.deriveFont(Font.BOLD, big) : font.deriveFont(big * 0.86f);
            text(g, face.label(), first, box.getCenterX(), box.y + box.height * 0.33, room);
            text(g, face.value(), second, box.getCenterX(), box.y + box.height * 0.68, room);
        } else {
            String only = face.value().isEmpty() || !face.label().isEmpty() && faces.low() == faces.high()
                    ? face.label()
                    : face.value();
            boolean unvalued = face.value().isEmpty() && faces.low() != faces.high();
            float size = (float) Math.min(font.getSize2D() * (unvalued ? 0.9 : 1.1), box.height * 0.5);
            Font fitting = font.deriveFont(unvalued ? Font.PLAIN : Font.BOLD, size);
            text(g, only, fitting, box.getCenterX(), box.getCenterY(), room);
        }
    }

    private static void text(Graphics2D g, String text, Font font, double x, double middle, double room) {
        if (text.isEmpty()) {
            return;
        }
        Font fitting = font;
        double width = width(g, text, fitting);
        String shown = text;
        if (width > room) {
            // Part of a number would be another number: it is drawn smaller, or not at all.
            boolean number = NUMBER.matcher(text).matches();
            float least = number ? LEAST_NUMBER : LEAST_TEXT;
            // Widths do not shrink quite in proportion, since glyphs are fitted to the screen.
            for (double part = 1; width > room && fitting.getSize2D() > least; part -= 0.06) {
                fitting = font.deriveFont((float) Math.max(least, font.getSize2D() * part));
                width = width(g, text, fitting);
            }
            while (!number && width > room && shown.length() > 2) {
                shown = shown.substring(0, shown.length() - (shown.endsWith("…") ? 2 : 1)) + "…";
                width = width(g, shown, fitting);
            }
            if (width > room) {
                return;
            }
        }
        GlyphVector glyphs = fitting.createGlyphVector(g.getFontRenderContext(), shown);
        double rise = fitting.getLineMetrics("0", g.getFontRenderContext()).getAscent() * 0.37;
        g.drawGlyphVector(glyphs, (float) (x - width / 2), (float) (middle + rise));
    }

    private static double width(Graphics2D g, String text, Font font) {
        return font.getStringBounds(text, g.getFontRenderContext()).getWidth();
    }

    private void badges(Graphics2D g, WellFace face, Rectangle2D.Double box) {
        double size = Math.max(5, Math.min(15, box.height * 0.44));
        for (int i = 0; i < Math.min(2, face.badges().size()); i++) {
            double x = box.getMaxX() - size * 0.72 - i * size * 0.9;
            double y = box.y - size * 0.28;
            badge(g, face.badges().get(i), x, y, size);
        }
    }

    /** A round badge with its sign. */
    void badge(Graphics2D g, WellFace.Badge badge, double x, double y, double size) {
        Ellipse2D round = new Ellipse2D.Double(x, y, size, size);
        g.setColor(palette.attention());
        g.fill(round);
        g.setColor(palette.card());
        g.setStroke(new BasicStroke(1));
        g.draw(round);
        if (size >= 9) {
            Font sign = new Font(Font.DIALOG, Font.BOLD, 1).deriveFont((float) (size * 0.66));
            GlyphVector glyphs = sign.createGlyphVector(g.getFontRenderContext(), badge.sign());
            Rectangle2D bounds = glyphs.getVisualBounds();
            g.setColor(palette.onAttention());
            g.drawGlyphVector(
                    glyphs, (float) (x + size / 2 - bounds.getCenterX()), (float) (y + size / 2 - bounds.getCenterY()));
        }
    }
}
