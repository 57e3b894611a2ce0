package tallywell.chart;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import javax.imageio.ImageIO;

/** Turns something drawn into the bytes of a PNG or the text of an SVG. */
final class Drawing {
    private static final int SHARPER = 2;

    private Drawing() {}

    /** What draws itself into an area. */
    interface Picture {
        void draw(Graphics2D g, Rectangle2D area);
    }

    static byte[] png(int width, int height, Picture picture) {
        BufferedImage image = new BufferedImage(SHARPER * width, SHARPER * height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.scale(SHARPER, SHARPER);
        picture.draw(g, new Rectangle2D.Double(0, 0, width, height));
        g.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            if (!ImageIO.write(image, "png", bytes)) {
                throw new IllegalStateException("this Java writes no PNG");
            }
        } catch (IOException e) {
            throw new UncheckedIOException("writing into memory failed", e);
        }
        return bytes.toByteArray();
    }

    static String svg(int width, int height, Picture picture) {
        SvgGraphics g = new SvgGraphics(width, height);
        picture.draw(g, new Rectangle2D.Double(0, 0, width, height));
        return g.document();
    }

    /** Numbers of an axis: decimal point and a true minus, whatever the language of the machine. */
    static DecimalFormat numbers(String pattern) {
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setMinusSign('−');
        return new DecimalFormat(pattern, symbols);
    }
}
