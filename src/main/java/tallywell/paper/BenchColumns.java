package tallywell.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import tallywell.report.BenchLine;

/** The lines of a bench sheet in two columns; the first line of a section stays with the one after it. */
final class BenchColumns {
    private final Letters letters;
    private final List<Entry> entries;
    private final double width;
    private final double size;

    private BenchColumns(Letters letters, List<Entry> entries, double width, double size) {
        this.letters = letters;
        this.entries = entries;
        this.width = width;
        this.size = size;
    }

    /**
     * What was drawn.
     *
     * @param height of the higher column
     * @param rest what had no room
     */
    record Drawn(double height, BenchColumns rest) {}

    /** A line with its texts broken and its height. */
    private record Entry(BenchLine line, List<TextBlock> texts, double height) {
        boolean isSection() {
            return line.kind() == BenchLine.Kind.SECTION;
        }
    }

    static BenchColumns of(Letters letters, List<List<BenchLine>> sections, double width, double size)
            throws IOException {
        BenchColumns columns = new BenchColumns(letters, new ArrayList<>(), width, size);
        for (List<BenchLine> section : sections) {
            for (BenchLine line : section) {
                columns.entries.add(columns.entry(line));
            }
        }
        return columns;
    }

    private double leading() {
        return 1.3 * size;
    }

    private double tick() {
        return size + 4;
    }

    /** Room for the time of a step, where it has one. */
    private double when(BenchLine line) {
        return line.value().isEmpty() ? 0 : 5.9 * size;
    }

    private double room() {
        return 4.2 * size;
    }

    /** Where the value begins, from the left of the column. */
    private double valueAt() {
        return 0.52 * width;
    }

    private double expectedWidth() {
        return 3.2 * size;
    }

    private Entry entry(BenchLine line) throws IOException {
        List<TextBlock> texts = new ArrayList<>();
        double high = 0;
        switch (line.kind()) {
            case SECTION -> {
                texts.add(block(line.text(), Face.BOLD, size, width));
                return new Entry(line, texts, texts.get(0).lines().size() * leading() + 0.55 * size);
            }
            case NOTE -> texts.add(block(line.text(), Face.PLAIN, 0.88 * size, width - tick()));
            case STEP -> texts.add(block(line.text(), Face.PLAIN, size, width - tick() - when(line) - room()));
            case ITEM, TOTAL -> {
                Face face = line.kind() == BenchLine.Kind.TOTAL ? Face.BOLD : Face.PLAIN;
                double right = line.expected().isEmpty() ? 0 : expectedWidth();
                double value = letters.width(letters.clean(line.value(), face), face, size);
                double from = Math.min(valueAt(), width - right - value - 2);
                texts.add(block(line.text(), face, size, Math.max(from, 0.3 * width) - tick() - 3));
                texts.add(block(line.value(), face, size, width - right - Math.max(from, 0.3 * width)));
            }
        }
        for (TextBlock text : texts) {
            high = Math.max(high, text.lines().size() * leading());
        }
        return new Entry(line, texts, high + 0.18 * size);
    }

    private TextBlock block(String text, Face face, double letter, double wide) throws IOException {
        return TextBlock.of(letters, text, face, letter, wide, 12);
    }

    /** How many of the entries from one on fit into a column; a section never ends with its heading. */
    private int fitting(int from, double height) {
        double used = 0;
        int count = 0;
        for (int i = from; i < entries.size(); i++) {
            used += entries.get(i).height();
            if (used > height) {
                break;
            }
            count++;
        }
        if (from + count < entries.size()
                && count > 0
                && entries.get(from + count - 1).isSection()) {
            count--;
        }
        return count;
    }

    /** Whether two columns of that height take everything. */
    boolean fit(double height) {
        int first = fitting(0, height);
        return first + fitting(first, height) == entries.size();
    }

    Drawn draw(Page page, PDStructureElement parent, double left, double top, double height, double toNext)
            throws IOException {
        double used = balanced(height);
        int first = fitting(0, used);
        int second = fitting(first, used);
        if (first == 0) {
            throw new IllegalStateException("a column must hold a line");
        }
        double deepest = Math.max(
                column(page, parent, left, top, 0, first), column(page, parent, left + toNext, top, first, second));
        List<Entry> rest = entries.subList(first + second, entries.size());
        return new Drawn(deepest, new BenchColumns(letters, List.copyOf(rest), width, size));
    }

    /** The least height at which everything still fits, so that the columns end alike. */
    private double balanced(double height) {
        double least = height;
        while (least > 4 * size && fit(least - size)) {
            least -= size;
        }
        return least;
    }

    private double column(Page page, PDStructureElement parent, double left, double top, int from, int count)
            throws IOException {
        double y = top;
        for (Entry entry : entries.subList(from, from + count)) {
            draw(page, parent, entry, left, y);
            y += entry.height();
        }
        return y - top;
    }

    private void draw(Page page, PDStructureElement parent, Entry entry, double left, double top) throws IOException {
        BenchLine line = entry.line();
        double base = top + 0.95 * size;
        switch (line.kind()) {
            case SECTION -> {
                double y = top + 0.45 * size;
                write(
                        page,
                        Tags.child(parent, "H2"),
                        entry.texts().get(0),
                        Face.BOLD,
                        size,
                        Ink.BEET,
                        left,
                        y + 0.95 * size);
                page.line(Ink.BEET, 0.6, left, top + entry.height() - 0.6, left + width, top + entry.height() - 0.6);
            }
            case NOTE ->
                write(
                        page,
                        Tags.child(parent, "P"),
                        entry.texts().get(0),
                        Face.PLAIN,
                        0.88 * size,
                        Ink.SOFT,
                        left + tick(),
                        base);
            case STEP -> step(page, Tags.child(parent, "P"), entry, left, top, base);
            case ITEM, TOTAL -> item(page, Tags.child(parent, "P"), entry, left, top, base);
        }
    }

    private void step(Page page, PDStructureElement element, Entry entry, double left, double top, double base)
            throws IOException {
        tick(page, left, top);
        double x = left + tick();
        if (!entry.line().value().isEmpty()) {
            page.text(element, entry.line().value(), Face.BOLD, size, Ink.TEXT, x, base);
        }
        write(page, element, entry.texts().get(0), Face.PLAIN, size, Ink.TEXT, x + when(entry.line()), base);
        page.line(Ink.SOFT, 0.5, left + width - room() + 4, base + 1.5, left + width, base + 1.5);
    }

    private void item(Page page, PDStructureElement element, Entry entry, double left, double top, double base)
            throws IOException {
        BenchLine line = entry.line();
        Face face = line.kind() == BenchLine.Kind.TOTAL ? Face.BOLD : Face.PLAIN;
        if (!line.text().isEmpty()) {
            tick(page, left, top);
            write(page, element, entry.texts().get(0), face, size, Ink.TEXT, left + tick(), base);
        }
        double right = line.expected().isEmpty() ? 0 : expectedWidth();
        double value = letters.width(letters.clean(line.value(), face), face, size);
        double from = Math.max(Math.min(valueAt(), width - right - value - 2), 0.3 * width);
        write(page, element, entry.texts().get(1), face, size, Ink.TEXT, left + from, base);
        if (right > 0) {
            double wide = letters.width(line.expected(), Face.PLAIN, size);
            page.text(element, line.expected(), Face.PLAIN, size, Ink.SOFT, left + width - wide, base);
        }
        page.line(Ink.LINE, 0.3, left, top + entry.height() - 0.5, left + width, top + entry.height() - 0.5);
    }

    private void tick(Page page, double left, double top) throws IOException {
        page.box(Ink.TEXT, 0.6, left + 0.5, top + 0.2 * size, 0.85 * size, 0.85 * size);
    }

    private void write(
            Page page,
            PDStructureElement element,
            TextBlock block,
            Face face,
            double letter,
            Ink ink,
            double x,
            double base)
            throws IOException {
        PDStructureElement holder = block.holder(element);
        double y = base;
        for (String line : block.lines()) {
            if (!line.isEmpty()) {
                page.text(holder, line, face, letter, ink, x, y);
            }
            y += leading();
        }
    }
}
