package tallywell.chart;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.zip.CRC32;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * Pictures as the bytes of files. The same picture gives the same bytes wherever the same fonts are installed; nothing of
 * the time or the machine is written.
 */
public final class Images {
    /** As tight as pays: 0 would be the tightest, and takes several times as long for some 5 % less. */
    private static final float PACKED = 0.3f;

    /** A hundredth of a point is finer than any printer. */
    private static final int DECIMALS = 2;

    private static final String PROGRAM = "Tallywell";
    private static final int AFTER_HEADER = 33;

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
        return marked(bytes.toByteArray());
    }

    /**
     * The image with a word of which program drew it, so that the program knows its own files again.
     *
     * <p>Source: ISO/IEC 15948 (PNG), 5.3 (chunk layout), 11.3.4.3 (tEXt, keyword Software); IHDR, the first chunk, ends at
     * byte 33.
     */
    private static byte[] marked(byte[] png) {
        byte[] chunk = ("tEXtSoftware\0" + PROGRAM).getBytes(StandardCharsets.ISO_8859_1);
        CRC32 check = new CRC32();
        check.update(chunk);
        return ByteBuffer.allocate(png.length + chunk.length + 2 * Integer.BYTES)
                .put(png, 0, AFTER_HEADER)
                .putInt(chunk.length - Integer.BYTES)
                .put(chunk)
                .putInt((int) check.getValue())
                .put(png, AFTER_HEADER, png.length - AFTER_HEADER)
                .array();
    }

    /** An SVG file in UTF-8. Text is text. */
    public static byte[] svg(Picture picture) {
        Document document = document();
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment(null);
        context.setPrecision(DECIMALS);
        SVGGraphics2D g = new SVGGraphics2D(context, false);
        Ink.smooth(g);
        picture.draw(g);
        Element root = g.getRoot();
        int width = (int) Math.ceil(picture.width());
        int height = (int) Math.ceil(picture.height());
        root.setAttribute("width", Integer.toString(width));
        root.setAttribute("height", Integer.toString(height));
        Element program = document.createElementNS("http://www.w3.org/2000/svg", "metadata");
        program.setTextContent(PROGRAM);
        root.insertBefore(program, root.getFirstChild());
        root.setAttribute("viewBox", "0 0 " + width + " " + height);
        return bytes(root);
    }

    /** Written by the platform: the generator's own writer adds a document type, which readers would look up on the net. */
    private static byte[] bytes(Element root) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            TransformerFactory.newInstance().newTransformer().transform(new DOMSource(root), new StreamResult(bytes));
        } catch (TransformerException e) {
            throw new IllegalStateException("every Java platform writes a plain document", e);
        }
        return bytes.toByteArray();
    }

    private static Document document() {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument("http://www.w3.org/2000/svg", "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("every Java platform has a plain document builder", e);
        }
    }
}
