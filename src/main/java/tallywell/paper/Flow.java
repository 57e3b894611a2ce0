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
    private static final double FACT_SIZE = 7.8;
    private static final double FACT_INDENT = 50;
    private static final double FACT_RIGHT = 210;
    private static final double BESIDE_INDENT = 100;
    private static final double BESIDE_GAP = 6;

    /** Part of the size by which capital letters rise above the base line, with some air. */
    private static final double RISE = 0.92;

    private final Paper paper;
    private final Identity identity;
    private Page page;
    private double y = TOP;

    /**
     * Begins on a new page.
     *
     * @param identity what the footers say
     */
    Flow(Paper paper, Identity identity) throws IOException {
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

    /** Whether that much fits on a page of its own. */
    boolean fitsOnAPage(double height) {
        return TOP + height <= BOTTOM;
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
        block("H1", text, Face.BOLD, 14, Ink.BEET, most);
    }

    /** A heading of the second level, with room for what follows it. */
    void heading(String text, double room) throws IOException {
        y += 8;
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

    /** Paragraphs with their heading beside them, where room is scarce. */
    void beside(String heading, List<String> paragraphs, double size, Ink ink) throws IOException {
        y += BESIDE_GAP;
        need(size * LEADING);
        PDStructureElement title = Tags.child(paper.top(), "H2");
        page.text(title, heading, Face.BOLD, size, Ink.BEET, LEFT, y + RISE * size);
        for (String paragraph : paragraphs) {
            TextBlock block = besideBlock(paragraph, size);
            PDStructureElement holder = block.holder(Tags.child(paper.top(), "P"));
            for (String line : block.lines()) {
                need(size * LEADING);
                page.text(holder, line, Face.PLAIN, size, ink, LEFT + BESIDE_INDENT, y + RISE * size);
                y += size * LEADING;
            }
        }
    }

    /** What {@link #beside} takes in height. */
    double besideHeight(List<String> paragraphs, double size) throws IOException {
        double lines = 0;
        for (String paragraph : paragraphs) {
            lines += besideBlock(paragraph, size).lines().size();
        }
        return BESIDE_GAP + lines * size * LEADING;
    }

    private TextBlock besideBlock(String paragraph, double size) throws IOException {
        return TextBlock.of(paper.letters(), paragraph, Face.PLAIN, size, WIDTH - BESIDE_INDENT, Integer.MAX_VALUE);
    }

    /** One or two facts side by side, each a label and what there is to say, in one paragraph of their own. */
    void facts(Fact... facts) throws IOException {
        double deepest = y;
        double top = y;
        for (int i = 0; i < facts.length; i++) {
            y = top;
            double left = LEFT + i * FACT_RIGHT;
            double right = i + 1 < facts.length ? LEFT + FACT_RIGHT - 8 : LEFT + WIDTH;
            fact(facts[i], left, right - left - FACT_INDENT);
            deepest = Math.max(deepest, y);
        }
        y = deepest;
    }

    private void fact(Fact fact, double left, double width) throws IOException {
        PDStructureElement element = Tags.child(paper.top(), "P");
        page.text(element, fact.label(), Face.PLAIN, FACT_SIZE, Ink.SOFT, left, y + RISE * FACT_SIZE);
        TextBlock block = TextBlock.of(paper.letters(), fact.text(), Face.PLAIN, FACT_SIZE, width, 3);
        PDStructureElement holder = block.holder(element);
        for (String line : block.lines()) {
            page.text(holder, line, Face.PLAIN, FACT_SIZE, Ink.TEXT, left + FACT_INDENT, y + RISE * FACT_SIZE);
            y += FACT_SIZE * LEADING;
        }
    }

    /** Leaves a line for a fact that is known later. */
    Later later(String label) throws IOException {
        PDStructureElement element = Tags.child(paper.top(), "P");
        double base = y + RISE * FACT_SIZE;
        page.text(element, label, Face.PLAIN, FACT_SIZE, Ink.SOFT, LEFT, base);
        y += FACT_SIZE * LEADING;
        return new Later(page, element, base);
    }

    /** A line of a page that is still to be filled. */
    record Later(Page page, PDStructureElement element, double base) {
        void fill(String text, Letters letters) throws IOException {
            TextBlock block = TextBlock.of(letters, text, Face.PLAIN, FACT_SIZE - 0.6, WIDTH - FACT_INDENT, 1);
            page.text(
                    block.holder(element),
                    block.lines().get(0),
                    Face.PLAIN,
                    FACT_SIZE - 0.6,
                    Ink.TEXT,
                    LEFT + FACT_INDENT,
                    base);
        }
    }

    /**
     * Something to know.
     *
     * @param label in a word or two
     * @param text what there is to say
     */
    record Fact(String label, String text) {}

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

    /** A drawing, with words for who cannot see it. */
    void figure(PDFormXObject form, double width, String words) throws IOException {
        double height = width * form.getBBox().getHeight() / form.getBBox().getWidth();
        need(height);
        PDStructureElement figure = Tags.child(paper.top(), "Figure");
        figure.setAlternateDescription(words);
        page.drawing(figure, form, LEFT + (WIDTH - width) / 2, y, width);
        y += height;
    }

    /** A table; where it goes on on another page its heading is repeated. */
    void table(List<Column> columns, List<List<Cell>> rows) throws IOException {
        PDStructureElement table = Tags.child(paper.top(), "Table");
        TableRow head = TableRow.head(paper.letters(), columns);
        need(head.height()
                + (rows.isEmpty()
                        ? 0
                        : TableRow.of(paper.letters(), columns, rows.get(0)).height()));
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
}
