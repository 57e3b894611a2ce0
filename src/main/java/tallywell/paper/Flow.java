package tallywell.paper;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/** Writes one thing below the other, page after page. */
final class Flow {
    static final double LEFT = Paper.MARGIN;
    static final double WIDTH = Page.SHORT - 2 * Paper.MARGIN;

    private static final double TOP = 40;
    private static final double BOTTOM = Page.LONG - 44;
    private static final double LEADING = 1.28;

    /** Part of the size by which capital letters rise above the base line, with some air. */
    private static final double RISE = 0.92;

    private final Paper paper;
    private final String identity;
    private Page page;
    private double y = TOP;

    /**
     * Begins on a new page.
     *
     * @param identity what the footers say
     */
    Flow(Paper paper, String identity) throws IOException {
        this.paper = paper;
        this.identity = identity;
        this.page = paper.page(identity);
    }

    Page page() {
        return page;
    }

    double y() {
        return y;
    }

    /** Goes down. */
    void space(double points) {
        y += points;
    }

    /** Whether that much fits on the page. */
    boolean fits(double height) {
        return y + height <= BOTTOM;
    }

    /** Goes to a new page unless that much fits on this one. */
    boolean need(double height) throws IOException {
        if (fits(height)) {
            return false;
        }
        turn();
        return true;
    }

    /** Goes to a new page. */
    void turn() throws IOException {
        page = paper.page(identity);
        y = TOP;
    }

    /** A heading of the first level, no longer than some lines. */
    void title(String text, int most) throws IOException {
        block("H1", text, Face.BOLD, 16, Ink.BEET, most);
    }

    /** A heading of the second level, with room for what follows it. */
    void heading(String text, double room) throws IOException {
        y += 10;
        need(18 + room);
        block("H2", text, Face.BOLD, 10.5, Ink.BEET, 2);
        y += 2;
    }

    /** A paragraph. */
    void paragraph(String text, double size, Ink ink) throws IOException {
        block("P", text, Face.PLAIN, size, ink, Integer.MAX_VALUE);
    }

    /** A paragraph in other letters. */
    void block(String type, String text, Face face, double size, Ink ink, int most) throws IOException {
        TextBlock block = TextBlock.of(paper.letters(), text, face, size, WIDTH, most);
        PDStructureElement element = Tags.child(paper.top(), type);
        PDStructureElement holder = block.holder(element);
        for (String line : block.lines()) {
            need(size * LEADING);
            page.text(holder, line, face, size, ink, LEFT, y + RISE * size);
            y += size * LEADING;
        }
    }

    /** A label and what it says of it, both in one paragraph. */
    PDStructureElement fact(String label, String text, double indent) throws IOException {
        double size = 8.2;
        TextBlock block = TextBlock.of(paper.letters(), text, Face.PLAIN, size, WIDTH - indent, 3);
        need(size * LEADING * block.lines().size());
        PDStructureElement element = Tags.child(paper.top(), "P");
        page.text(element, label, Face.PLAIN, size, Ink.SOFT, LEFT, y + RISE * size);
        PDStructureElement holder = block.holder(element);
        for (String line : block.lines()) {
            page.text(holder, line, Face.PLAIN, size, Ink.TEXT, LEFT + indent, y + RISE * size);
            y += size * LEADING;
        }
        return element;
    }

    /** A sentence on a coloured ground. */
    void band(String text, Ink ground, Ink ink) throws IOException {
        double size = 9.5;
        TextBlock block = TextBlock.of(paper.letters(), text, Face.BOLD, size, WIDTH - 16, 4);
        double height = block.lines().size() * size * LEADING + 9;
        need(height);
        page.fill(ground, LEFT, y, WIDTH, height);
        page.fill(ink, LEFT, y, 3.5, height);
        PDStructureElement holder = block.holder(Tags.child(paper.top(), "P"));
        double at = y + 4.5;
        for (String line : block.lines()) {
            page.text(holder, line, Face.BOLD, size, ink, LEFT + 10, at + RISE * size);
            at += size * LEADING;
        }
        y += height;
    }

    /** A drawing over the whole width, with words for who cannot see it. */
    void figure(PDFormXObject form, String words) throws IOException {
        double height = WIDTH * form.getBBox().getHeight() / form.getBBox().getWidth();
        need(height);
        PDStructureElement figure = Tags.child(paper.top(), "Figure");
        figure.setAlternateDescription(words);
        page.drawing(figure, form, LEFT, y, WIDTH);
        y += height;
    }

    /** A table; where it goes on on another page its heading is repeated. */
    void table(List<Column> columns, List<List<Cell>> rows) throws IOException {
        PDStructureElement table = Tags.child(paper.top(), "Table");
        TableRow head = TableRow.head(paper.letters(), columns);
        need(head.height() + (rows.isEmpty() ? 0 : TableRow.of(paper.letters(), columns, rows.get(0)).height()));
        head.draw(page, Tags.child(table, "TR"), LEFT, y);
        y += head.height();
        for (List<Cell> cells : rows) {
            TableRow row = TableRow.of(paper.letters(), columns, cells);
            if (need(row.height())) {
                head.repeat(page, LEFT, y);
                y += head.height();
            }
            row.draw(page, Tags.child(table, "TR"), LEFT, y);
            y += row.height();
        }
    }

    Letters letters() {
        return paper.letters();
    }
}
