package tallywell.paper;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import tallywell.plan.Plan;
import tallywell.report.BenchLine;
import tallywell.report.BenchLines;
import tallywell.report.Report;

/**
 * Writes the sheet for the bench as a page of A4: the plate in large print, what to dilute and to mix, what to do when, with
 * boxes to tick and room for times. It reads as well in grey. Where it holds more than a page can show legibly it goes on on
 * further pages.
 */
public final class BenchDocument {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final double TOP = 34;
    private static final double BOTTOM = Page.LONG - 42;
    private static final double GAP = 16;
    private static final double COLUMN = (Flow.WIDTH - GAP) / 2;
    private static final double LARGEST = 8.6;

    /** Smaller letters cannot be read at arm's length. */
    private static final double SMALLEST = 6.4;

    private static final double STEP = 0.2;
    private static final double[] PLATE_HEIGHTS = {238, 214, 190};

    /** What is planned, and when. */
    private record Made(Plan plan, String run, String made, String version) {}

    /**
     * Writes the document.
     *
     * @param run path of the run file as typed
     * @param made when it is made
     * @param zone the zone of that time
     * @param version of the program
     * @param out where to; left open
     */
    public void write(Plan plan, String run, Instant made, ZoneId zone, String version, OutputStream out)
            throws IOException {
        String title = Report.titleOf(plan.title(), run);
        try (Paper paper = new Paper()) {
            new Sheet(paper, new Made(plan, run, MINUTE.format(made.atZone(zone)), version)).write(title);
            Facts facts = new Facts(
                    "Bench sheet: " + title, plan.operator(), plan.method().title(), version, made);
            paper.write(facts, () -> {}, out);
        }
    }

    /** The sheet in the making. */
    private static final class Sheet {
        private final Paper paper;
        private final Letters letters;
        private final Made what;
        private final Identity identity;
        private Page page;
        private double y = TOP;

        Sheet(Paper paper, Made what) throws IOException {
            this.paper = paper;
            this.letters = paper.letters();
            this.what = what;
            this.identity = new Identity(
                    "Bench sheet · "
                            + (what.plan().title().isEmpty() ? "" : what.plan().title() + " · ") + what.run(),
                    "");
            this.page = paper.page(identity);
        }

        void write(String title) throws IOException {
            head(title);
            List<List<BenchLine>> sections = sections();
            for (double height : PLATE_HEIGHTS) {
                for (double size = LARGEST; size >= SMALLEST; size -= STEP) {
                    BenchColumns columns = BenchColumns.of(letters, sections, COLUMN, size);
                    TextLines below = below(size);
                    double room = BOTTOM - y - height - 10 - below.height();
                    if (columns.fit(room)) {
                        plate(height);
                        columns(columns, room);
                        below(below);
                        return;
                    }
                }
            }
            onSeveralPages(sections);
        }

        private void onSeveralPages(List<List<BenchLine>> sections) throws IOException {
            plate(PLATE_HEIGHTS[0]);
            BenchColumns rest = BenchColumns.of(letters, sections, COLUMN, LARGEST - 4 * STEP);
            while (!rest.fit(BOTTOM - y)) {
                rest = columns(rest, BOTTOM - y);
                turn();
            }
            columns(rest, BOTTOM - y);
            TextLines below = below(LARGEST - 4 * STEP);
            if (y + below.height() > BOTTOM) {
                turn();
            }
            below(below);
        }

        private void turn() throws IOException {
            page = paper.page(identity);
            y = TOP;
        }

        private void head(String title) throws IOException {
            Plan plan = what.plan();
            line("H1", title, Face.BOLD, 13, Ink.BEET, 17);
            line("P", plan.method().title() + " (" + plan.method().id() + ")", Face.PLAIN, 8.6, Ink.TEXT, 11.5);
            line(
                    "P",
                    "Planned " + what.made() + " with Tallywell " + what.version() + " from " + what.run()
                            + "; layout: " + plan.layout().name() + ", " + plan.wells() + " wells in use",
                    Face.PLAIN,
                    7.2,
                    Ink.SOFT,
                    11);
            y += 13;
            fields(List.of("Operator", "Date", "Reader", "Plate", "Start"), plan.operator());
            y += 7;
        }

        private void line(String type, String text, Face face, double size, Ink ink, double down) throws IOException {
            TextBlock block = TextBlock.of(letters, text, face, size, Flow.WIDTH, 1);
            PDStructureElement element = block.holder(Tags.child(paper.top(), type));
            page.text(element, block.lines().get(0), face, size, ink, Flow.LEFT, y + size);
            y += down;
        }

        /** Room to fill in by hand; the first may be known. */
        private void fields(List<String> labels, String first) throws IOException {
            PDStructureElement element = Tags.child(paper.top(), "P");
            double[] widths = {150, 100, 100, 90, 71};
            double x = Flow.LEFT;
            for (int i = 0; i < labels.size(); i++) {
                page.text(element, labels.get(i), Face.PLAIN, 7.6, Ink.SOFT, x, y);
                double label = letters.width(labels.get(i), Face.PLAIN, 7.6) + 4;
                double room = widths[i] - label - 8;
                if (i == 0 && !first.isEmpty()) {
                    TextBlock name = TextBlock.of(letters, first, Face.PLAIN, 7.6, room, 1);
                    page.text(name.holder(element), name.lines().get(0), Face.PLAIN, 7.6, Ink.TEXT, x + label, y);
                }
                page.line(Ink.SOFT, 0.5, x + label, y + 2, x + label + room, y + 2);
                x += widths[i];
            }
        }

        private List<List<BenchLine>> sections() {
            List<BenchLine> lines = new ArrayList<>(BenchLines.dilutions(what.plan()));
            lines.addAll(BenchLines.standards(what.plan()));
            lines.addAll(BenchLines.mixes(what.plan()));
            lines.addAll(BenchLines.steps(what.plan()));
            List<List<BenchLine>> sections = new ArrayList<>();
            for (BenchLine line : lines) {
                if (line.kind() == BenchLine.Kind.SECTION) {
                    sections.add(new ArrayList<>());
                }
                sections.get(sections.size() - 1).add(line);
            }
            return sections;
        }

        private void plate(double height) throws IOException {
            new BenchPlate(what.plan(), letters).draw(page, paper.top(), Flow.LEFT, y, height);
            y += height + 10;
        }

        /** Draws what fits and gives back the rest. */
        private BenchColumns columns(BenchColumns columns, double room) throws IOException {
            BenchColumns.Drawn drawn = columns.draw(page, paper.top(), Flow.LEFT, y, room, COLUMN + GAP);
            y += drawn.height();
            return drawn.rest();
        }

        private TextLines below(double size) throws IOException {
            List<TextLines.Paragraph> paragraphs = new ArrayList<>();
            if (!what.plan().notices().isEmpty()) {
                paragraphs.add(new TextLines.Paragraph("H2", "Notes", Face.BOLD));
                what.plan()
                        .notices()
                        .forEach(each -> paragraphs.add(new TextLines.Paragraph("P", each.text(), Face.PLAIN)));
            }
            paragraphs.add(new TextLines.Paragraph("H2", "Cautions", Face.BOLD));
            what.plan().cautions().forEach(each -> paragraphs.add(new TextLines.Paragraph("P", each, Face.PLAIN)));
            return TextLines.of(letters, paragraphs, Flow.WIDTH, Math.min(7.4, size));
        }

        private void below(TextLines below) throws IOException {
            below.draw(page, paper.top(), Flow.LEFT, y);
        }
    }
}
