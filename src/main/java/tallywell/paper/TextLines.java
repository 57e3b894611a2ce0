package tallywell.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;

/** Paragraphs of small print, broken to a width, whose height is known before they are drawn. */
final class TextLines {
    private static final double LEADING = 1.24;
    private static final double ABOVE_HEADING = 4;

    private final List<Paragraph> paragraphs;
    private final List<TextBlock> blocks;
    private final double size;

    /**
     * A paragraph.
     *
     * @param type of its element
     * @param text what it says
     * @param face letters
     */
    record Paragraph(String type, String text, Face face) {
        boolean isHeading() {
            return face == Face.BOLD;
        }
    }

    private TextLines(List<Paragraph> paragraphs, List<TextBlock> blocks, double size) {
        this.paragraphs = paragraphs;
        this.blocks = blocks;
        this.size = size;
    }

    static TextLines of(Letters letters, List<Paragraph> paragraphs, double width, double size) throws IOException {
        List<TextBlock> blocks = new ArrayList<>();
        for (Paragraph each : paragraphs) {
            blocks.add(TextBlock.of(letters, each.text(), each.face(), size, width, 8));
        }
        return new TextLines(paragraphs, blocks, size);
    }

    double height() {
        double height = 0;
        for (int i = 0; i < blocks.size(); i++) {
            height += blocks.get(i).lines().size() * size * LEADING
                    + (paragraphs.get(i).isHeading() ? ABOVE_HEADING : 0);
        }
        return height;
    }

    void draw(Page page, PDStructureElement parent, double left, double top) throws IOException {
        double y = top;
        for (int i = 0; i < blocks.size(); i++) {
            Paragraph each = paragraphs.get(i);
            y += each.isHeading() ? ABOVE_HEADING : 0;
            PDStructureElement element = blocks.get(i).holder(Tags.child(parent, each.type()));
            for (String line : blocks.get(i).lines()) {
                page.text(
                        element,
                        line,
                        each.face(),
                        size,
                        each.isHeading() ? Ink.BEET : Ink.TEXT,
                        left,
                        y + size * 0.92);
                y += size * LEADING;
            }
        }
    }
}
