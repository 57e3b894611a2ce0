package tallywell.chart;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.jfree.svg.SVGGraphics2D;

/**
 * Pictures as the bytes of files. The same picture gives the same bytes wherever the same fonts are installed; nothing of
 * the time or the machine is written.
 */
public final class Images {
    /** As tight as pays: 0 would be the tightest, and takes several times as long for some 5 % less. */
    private static final float PACKED = 0.3f;

    private Images() {}

    /** Why nothing can be drawn here; empty where it can. A Java without windows may come without fonts. */
    public static Optional<String> obstacle() {
        try {
            Graphics2D g = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();
            g.setFont(Ink.plain(10));
            g.drawString("0", 0, 1);
            g.dispose();
            return Optional.empty();
        } catch (LinkageError | InternalError | RuntimeException e) {
            // Java has no one way to say it: a missing library or face ends in any of these, depending on the system.
            return Optional.of("this Java cannot use fonts (" + e
                    + "); install a font such as DejaVu Sans, and fontconfig where the system has it");
        }
    }

    /**
     * A PNG file with at most 256 colours.
     *
     * @param scale pixels per point; the file says nothing of its resolution
     */
    public static byte[] png(Picture picture, double scale) {
        if (!(scale > 0 && scale <= 10)) {
            throw new IllegalArgumentException("scale must be above 0 and at most 10 but was " + scale);
        }
        BufferedImage image = new BufferedImage(
                (int) Math.ceil(picture.width() * scale),
                (int) Math.ceil(picture.height() * scale),
                BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        try {
            Ink.smooth(g);
            g.setColor(Ink.CARD);
            g.fillRect(0, 0, image.getWidth(), image.getHeight());
            g.scale(scale, scale);
            picture.draw(g);
        } finally {
            g.dispose();
        }
        return bytes(Palette.indexed(image));
    }

    private static byte[] bytes(BufferedImage image) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        // The stream of ImageIO itself may go through a file of its own.
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(PACKED);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } catch (IOException e) {
            throw new UncheckedIOException("memory does not refuse bytes", e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    /** An SVG file in UTF-8. Text is text, but for titles that stand upright, which are outlines. */
    public static byte[] svg(Picture picture) {
        SVGGraphics2D g = new SVGGraphics2D(picture.width(), picture.height());
        g.setDefsKeyPrefix("");
        g.setGeomDoubleConverter(Images::number);
        g.setTransformDoubleConverter(Images::number);
        g.setFontFunction(family -> "sans-serif");
        Ink.smooth(g);
        picture.draw(g);
        String drawn = g.getSVGElement(
                null,
                true,
                new org.jfree.svg.ViewBox(0, 0, (int) Math.ceil(picture.width()), (int) Math.ceil(picture.height())),
                null,
                null);
        return ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + drawn + "\n").getBytes(StandardCharsets.UTF_8);
    }

    /** A hundredth of a point is finer than any printer. */
    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.contains(".") ? text.replaceFirst("[.]?0+$", "") : text;
    }
}
