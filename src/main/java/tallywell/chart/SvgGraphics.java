package tallywell.chart;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.text.CharacterIterator;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Draws into the text of an SVG 1.1 document: shapes as paths, letters as letters, one colour at a time.
 *
 * <p>It knows what our pictures need. Images are refused, a gradient is drawn in black, and writing modes other than
 * painting over are taken as that. Coordinates are rounded to hundredths.
 */
final class SvgGraphics extends Graphics2D {
    private static final String FACES = "Inter, 'DejaVu Sans', Arial, sans-serif";

    private final Document document;
    private AffineTransform transform = new AffineTransform();
    private @Nullable Shape clip;
    private Paint paint = Color.BLACK;
    private Color background = Color.WHITE;
    private Stroke stroke = new BasicStroke(1f);
    private Font font = Tokens.TEXT;
    private Composite composite = AlphaComposite.SrcOver;
    private final RenderingHints hints = new RenderingHints(Map.of());

    /** A document of this size in pixels. */
    SvgGraphics(int width, int height) {
        this(new Document(width, height));
    }

    private SvgGraphics(Document document) {
        this.document = document;
    }

    /** What was drawn so far, whoever drew it. */
    private static final class Document {
        private final int width;
        private final int height;
        private final StringBuilder body = new StringBuilder();
        private final StringBuilder clips = new StringBuilder();
        private final Map<String, String> clipNames = new java.util.HashMap<>();
        private final Graphics2D measures = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();

        Document(int width, int height) {
            this.width = width;
            this.height = height;
        }

        String clipName(String path) {
            return clipNames.computeIfAbsent(path, key -> {
                String name = "c" + clipNames.size();
                clips.append("<clipPath id=\"")
                        .append(name)
                        .append("\"><path d=\"")
                        .append(key);
                clips.append("\"/></clipPath>\n");
                return name;
            });
        }
    }

    /** The document as text. */
    String document() {
        return String.format(
                        Locale.ROOT,
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%d\" viewBox=\"0 0 %d %d\">%n<defs>%n%s</defs>%n%s</svg>%n",
                        document.width,
                        document.height,
                        document.width,
                        document.height,
                        document.clips,
                        document.body)
                .replace("\r\n", "\n");
    }

    private static String number(double value) {
        double rounded = Math.rint(value * 100) / 100;
        return rounded == Math.rint(rounded) ? Long.toString((long) rounded) : Double.toString(rounded);
    }

    private static String path(Shape shape, AffineTransform transform) {
        StringBuilder d = new StringBuilder();
        double[] c = new double[6];
        for (PathIterator i = shape.getPathIterator(transform); !i.isDone(); i.next()) {
            int kind = i.currentSegment(c);
            d.append("MLQCZ".charAt(kind));
            int numbers = kind == PathIterator.SEG_CLOSE ? 0 : kind <= PathIterator.SEG_LINETO ? 2 : 2 * kind;
            for (int k = 0; k < numbers; k++) {
                d.append(k == 0 ? "" : " ").append(number(c[k]));
            }
        }
        return d.toString();
    }

    private String colour() {
        Color c = paint instanceof Color color ? color : Color.BLACK;
        return String.format(Locale.ROOT, "#%06X", c.getRGB() & 0xFFFFFF);
    }

    private double opacity() {
        double own = paint instanceof Color color ? color.getAlpha() / 255.0 : 1;
        return composite instanceof AlphaComposite alpha ? own * alpha.getAlpha() : own;
    }

    private String clipped() {
        return clip == null ? "" : " clip-path=\"url(#" + document.clipName(path(clip, new AffineTransform())) + ")\"";
    }

    private String faded(String attribute) {
        return opacity() < 1 ? " " + attribute + "=\"" + number(opacity()) + "\"" : "";
    }

    @Override
    public void draw(Shape shape) {
        StringBuilder out = document.body;
        out.append("<path d=\"")
                .append(path(shape, transform))
                .append("\" fill=\"none\" stroke=\"")
                .append(colour());
        out.append('"').append(faded("stroke-opacity"));
        if (stroke instanceof BasicStroke line) {
            out.append(" stroke-width=\"").append(number(line.getLineWidth())).append('"');
            float[] dashes = line.getDashArray();
            if (dashes != null) {
                out.append(" stroke-dasharray=\"");
                for (int i = 0; i < dashes.length; i++) {
                    out.append(i == 0 ? "" : " ").append(number(dashes[i]));
                }
                out.append('"');
            }
        }
        out.append(clipped()).append("/>\n");
    }

    @Override
    public void fill(Shape shape) {
        if (opacity() == 0) {
            return;
        }
        document.body
                .append("<path d=\"")
                .append(path(shape, transform))
                .append("\" fill=\"")
                .append(colour());
        document.body
                .append('"')
                .append(faded("fill-opacity"))
                .append(clipped())
                .append("/>\n");
    }

    @Override
    public void drawString(String text, float x, float y) {
        StringBuilder out = document.body;
        boolean shifted = (transform.getType() & ~AffineTransform.TYPE_TRANSLATION) == 0;
        out.append("<text ");
        if (shifted) {
            out.append("x=\"").append(number(x + transform.getTranslateX()));
            out.append("\" y=\"").append(number(y + transform.getTranslateY())).append('"');
        } else {
            double[] m = new double[6];
            AffineTransform all = new AffineTransform(transform);
            all.translate(x, y);
            all.getMatrix(m);
            out.append("transform=\"matrix(");
            for (int i = 0; i < m.length; i++) {
                out.append(i == 0 ? "" : " ").append(number(m[i]));
            }
            out.append(")\"");
        }
        out.append(" font-family=\"").append(FACES).append("\" font-size=\"").append(number(font.getSize2D()));
        out.append(font.isBold() ? "\" font-weight=\"600" : "")
                .append("\" fill=\"")
                .append(colour())
                .append('"');
        out.append(faded("fill-opacity"))
                .append(clipped())
                .append('>')
                .append(escaped(text))
                .append("</text>\n");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    @Override
    public void drawString(String text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, float x, float y) {
        StringBuilder plain = new StringBuilder();
        for (char c = text.first(); c != CharacterIterator.DONE; c = text.next()) {
            plain.append(c);
        }
        drawString(plain.toString(), x, y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
        fill(glyphs.getOutline(x, y));
    }

    @Override
    public Graphics create() {
        SvgGraphics copy = new SvgGraphics(document);
        copy.transform = new AffineTransform(transform);
        copy.clip = clip;
        copy.paint = paint;
        copy.background = background;
        copy.stroke = stroke;
        copy.font = font;
        copy.composite = composite;
        copy.hints.putAll(hints);
        return copy;
    }

    @Override
    public void dispose() {
        // The text stays: it belongs to the document.
    }

    // Clipping: kept in the space of the document, so that later transforms do not move it.

    @Override
    public void clip(@Nullable Shape shape) {
        if (shape == null) {
            clip = null;
            return;
        }
        Shape moved = transform.createTransformedShape(shape);
        if (clip == null) {
            clip = moved;
            return;
        }
        Area both = new Area(clip);
        both.intersect(new Area(moved));
        clip = both;
    }

    @Override
    public void setClip(@Nullable Shape shape) {
        clip = shape == null ? null : transform.createTransformedShape(shape);
    }

    @Override
    public @Nullable Shape getClip() {
        if (clip == null) {
            return null;
        }
        try {
            return transform.createInverse().createTransformedShape(clip);
        } catch (java.awt.geom.NoninvertibleTransformException e) {
            throw new IllegalStateException("a transform that flattens everything", e);
        }
    }

    @Override
    public @Nullable Rectangle getClipBounds() {
        Shape current = getClip();
        return current == null ? null : current.getBounds();
    }

    @Override
    public void clipRect(int x, int y, int width, int height) {
        clip(new Rectangle(x, y, width, height));
    }

    @Override
    public void setClip(int x, int y, int width, int height) {
        setClip(new Rectangle(x, y, width, height));
    }

    @Override
    public boolean hit(Rectangle rectangle, Shape shape, boolean onStroke) {
        Shape drawn = onStroke ? stroke.createStrokedShape(shape) : shape;
        return transform.createTransformedShape(drawn).intersects(rectangle);
    }

    // State.

    @Override
    public void setPaint(@Nullable Paint newPaint) {
        paint = newPaint == null ? paint : newPaint;
    }

    @Override
    public Paint getPaint() {
        return paint;
    }

    @Override
    public void setColor(@Nullable Color color) {
        setPaint(color);
    }

    @Override
    public Color getColor() {
        return paint instanceof Color color ? color : Color.BLACK;
    }

    @Override
    public void setBackground(Color color) {
        background = color;
    }

    @Override
    public Color getBackground() {
        return background;
    }

    @Override
    public void setStroke(Stroke newStroke) {
        stroke = newStroke;
    }

    @Override
    public Stroke getStroke() {
        return stroke;
    }

    @Override
    public void setFont(@Nullable Font newFont) {
        font = newFont == null ? font : newFont;
    }

    @Override
    public Font getFont() {
        return font;
    }

    @Override
    public FontMetrics getFontMetrics(Font of) {
        return document.measures.getFontMetrics(of);
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return new FontRenderContext(null, true, true);
    }

    @Override
    public void setComposite(Composite newComposite) {
        composite = newComposite;
    }

    @Override
    public Composite getComposite() {
        return composite;
    }

    @Override
    public void setPaintMode() {
        composite = AlphaComposite.SrcOver;
    }

    @Override
    public void setXORMode(Color color) {
        setPaintMode();
    }

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        return document.measures.getDeviceConfiguration();
    }

    @Override
    public void setRenderingHint(RenderingHints.Key key, Object value) {
        hints.put(key, value);
    }

    @Override
    public @Nullable Object getRenderingHint(RenderingHints.Key key) {
        return hints.get(key);
    }

    @Override
    public void setRenderingHints(Map<?, ?> all) {
        hints.clear();
        hints.putAll(all);
    }

    @Override
    public void addRenderingHints(Map<?, ?> more) {
        hints.putAll(more);
    }

    @Override
    public RenderingHints getRenderingHints() {
        return hints;
    }

    // Transforms.

    @Override
    public void translate(int x, int y) {
        transform.translate(x, y);
    }

    @Override
    public void translate(double x, double y) {
        transform.translate(x, y);
    }

    @Override
    public void rotate(double angle) {
        transform.rotate(angle);
    }

    @Override
    public void rotate(double angle, double x, double y) {
        transform.rotate(angle, x, y);
    }

    @Override
    public void scale(double x, double y) {
        transform.scale(x, y);
    }

    @Override
    public void shear(double x, double y) {
        transform.shear(x, y);
    }

    @Override
    public void transform(AffineTransform more) {
        transform.concatenate(more);
    }

    @Override
    public void setTransform(AffineTransform newTransform) {
        transform = new AffineTransform(newTransform);
    }

    @Override
    public AffineTransform getTransform() {
        return new AffineTransform(transform);
    }

    // The old names of shapes.

    @Override
    public void drawLine(int x1, int y1, int x2, int y2) {
        draw(new Line2D.Double(x1, y1, x2, y2));
    }

    @Override
    public void fillRect(int x, int y, int width, int height) {
        fill(new Rectangle(x, y, width, height));
    }

    @Override
    public void clearRect(int x, int y, int width, int height) {
        Paint before = paint;
        paint = background;
        fillRect(x, y, width, height);
        paint = before;
    }

    @Override
    public void drawRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        draw(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void fillRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        fill(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void drawOval(int x, int y, int width, int height) {
        draw(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void fillOval(int x, int y, int width, int height) {
        fill(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void drawArc(int x, int y, int width, int height, int start, int angle) {
        draw(new Arc2D.Double(x, y, width, height, start, angle, Arc2D.OPEN));
    }

    @Override
    public void fillArc(int x, int y, int width, int height, int start, int angle) {
        fill(new Arc2D.Double(x, y, width, height, start, angle, Arc2D.PIE));
    }

    @Override
    public void drawPolyline(int[] x, int[] y, int count) {
        draw(polygon(x, y, count, false));
    }

    @Override
    public void drawPolygon(int[] x, int[] y, int count) {
        draw(polygon(x, y, count, true));
    }

    @Override
    public void fillPolygon(int[] x, int[] y, int count) {
        fill(polygon(x, y, count, true));
    }

    private static Path2D polygon(int[] x, int[] y, int count, boolean closed) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < count; i++) {
            if (i == 0) {
                path.moveTo(x[i], y[i]);
            } else {
                path.lineTo(x[i], y[i]);
            }
        }
        if (closed && count > 0) {
            path.closePath();
        }
        return path;
    }

    @Override
    public void copyArea(int x, int y, int width, int height, int dx, int dy) {
        throw refused();
    }

    // Images: none of our pictures has one.

    private static UnsupportedOperationException refused() {
        return new UnsupportedOperationException("a picture in SVG holds no images");
    }

    @Override
    public boolean drawImage(Image image, AffineTransform move, ImageObserver observer) {
        throw refused();
    }

    @Override
    public void drawImage(BufferedImage image, BufferedImageOp operation, int x, int y) {
        throw refused();
    }

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform move) {
        throw refused();
    }

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform move) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, Color color, ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, Color color, ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(
            Image image,
            int dx1,
            int dy1,
            int dx2,
            int dy2,
            int sx1,
            int sy1,
            int sx2,
            int sy2,
            ImageObserver observer) {
        throw refused();
    }

    @Override
    public boolean drawImage(
            Image image,
            int dx1,
            int dy1,
            int dx2,
            int dy2,
            int sx1,
            int sy1,
            int sx2,
            int sy2,
            Color color,
            ImageObserver observer) {
        throw refused();
    }

    /** The whole page, for those who ask. */
    Rectangle2D page() {
        return new Rectangle2D.Double(0, 0, document.width, document.height);
    }
}
