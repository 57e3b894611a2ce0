package tallywell.paper;

import java.io.Closeable;
import java.io.IOException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.util.Matrix;

/** A page of A4. Places are in points from its upper left corner, as one reads. */
final class Page implements Closeable {
    static final double SHORT = 595.276;
    static final double LONG = 841.89;

    private static final COSName ARTIFACT = COSName.getPDFName("Artifact");

    private final Letters letters;
    private final PDPage page;
    private final COSArray marks;
    private PDPageContentStream out;

    Page(PDDocument document, Letters letters, Tags tags) throws IOException {
        this.letters = letters;
        this.page = new PDPage(new PDRectangle((float) SHORT, (float) LONG));
        page.setStructParents(tags.pages());
        page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
        document.addPage(page);
        marks = tags.page();
        out = new PDPageContentStream(document, page);
    }

    PDPage pd() {
        return page;
    }

    /** Opens the page once more, for what could not be known before. */
    void reopen(PDDocument document) throws IOException {
        out = new PDPageContentStream(document, page, PDPageContentStream.AppendMode.APPEND, true, true);
    }

    private void begin(PDStructureElement element) throws IOException {
        out.beginMarkedContent(COSName.getPDFName(element.getStructureType()), marks.size());
        if (element.getPage() == null) {
            element.setPage(page);
        }
        // The short form holds for the page of the element; what goes on on another page names that one.
        if (page.equals(element.getPage())) {
            element.appendKid(marks.size());
        } else {
            PDMarkedContentReference reference = new PDMarkedContentReference();
            reference.setMCID(marks.size());
            reference.setPage(page);
            element.appendKid(reference);
        }
        marks.add(element.getCOSObject());
    }

    /** A line of text as seen, its base line at y; part of an element. */
    void text(PDStructureElement element, String seen, Face face, double size, Ink ink, double x, double y)
            throws IOException {
        begin(element);
        show(seen, face, size, ink, x, y);
        out.endMarkedContent();
    }

    /** A line of text that only furnishes the page, such as its number. */
    void furniture(String seen, Face face, double size, Ink ink, double x, double y) throws IOException {
        out.beginMarkedContent(ARTIFACT);
        show(seen, face, size, ink, x, y);
        out.endMarkedContent();
    }

    private void show(String seen, Face face, double size, Ink ink, double x, double y) throws IOException {
        if (seen.isEmpty()) {
            return;
        }
        out.beginText();
        out.setNonStrokingColor(ink.red(), ink.green(), ink.blue());
        out.setFont(letters.font(face), (float) size);
        out.newLineAtOffset((float) x, (float) (LONG - y));
        out.showText(seen);
        out.endText();
    }

    /** A filled rectangle behind what is written later. */
    void fill(Ink ink, double x, double y, double width, double height) throws IOException {
        out.beginMarkedContent(ARTIFACT);
        out.setNonStrokingColor(ink.red(), ink.green(), ink.blue());
        out.addRect((float) x, (float) (LONG - y - height), (float) width, (float) height);
        out.fill();
        out.endMarkedContent();
    }

    /** The outline of a rectangle. */
    void box(Ink ink, double pen, double x, double y, double width, double height) throws IOException {
        out.beginMarkedContent(ARTIFACT);
        pen(ink, pen);
        out.addRect((float) x, (float) (LONG - y - height), (float) width, (float) height);
        out.stroke();
        out.endMarkedContent();
    }

    /** A straight line. */
    void line(Ink ink, double pen, double x, double y, double toX, double toY) throws IOException {
        out.beginMarkedContent(ARTIFACT);
        pen(ink, pen);
        out.moveTo((float) x, (float) (LONG - y));
        out.lineTo((float) toX, (float) (LONG - toY));
        out.stroke();
        out.endMarkedContent();
    }

    private void pen(Ink ink, double pen) throws IOException {
        out.setStrokingColor(ink.red(), ink.green(), ink.blue());
        out.setLineWidth((float) pen);
    }

    /** A drawing, its upper left corner at x and y. */
    void drawing(PDStructureElement figure, PDFormXObject form, double x, double y, double width) throws IOException {
        PDRectangle box = form.getBBox();
        float scale = (float) width / box.getWidth();
        float bottom = (float) (LONG - y) - scale * box.getHeight();
        begin(figure);
        out.saveGraphicsState();
        out.transform(new Matrix(scale, 0, 0, scale, (float) x, bottom));
        out.drawForm(form);
        out.restoreGraphicsState();
        out.endMarkedContent();
        Tags.place(figure, (float) x, bottom, (float) (x + width), (float) (LONG - y));
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
