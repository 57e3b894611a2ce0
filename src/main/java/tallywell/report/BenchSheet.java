package tallywell.report;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tallywell.method.Sample;
import tallywell.plan.Plan;
import tallywell.plate.Content;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;

/**
 * Writes the sheet for the bench: the plate in large print, what to dilute and to mix, what to do when, with boxes to tick
 * and to fill in. One page of A4 where the samples fit.
 */
public final class BenchSheet {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    /** With more lines than this in a column, one page would be too small to read. */
    private static final int MOST_ON_ONE_PAGE = 52;

    private static final double LINE_PT = 12.5;
    private static final int MOST_LARGE = 25;
    private static final int STEP_CHARACTERS = 46;
    private static final int NOTE_CHARACTERS = 56;

    /**
     * Writes the workbook.
     *
     * @param run path of the run file as typed
     * @param made when it is made
     * @param zone the zone of that time
     * @param version of the program
     * @param out where to; left open
     */
    public void write(Plan plan, String run, Instant made, ZoneId zone, String version, OutputStream out)
            throws IOException {
        try (Book book = new Book()) {
            Sheet sheet = book.add("Bench");
            new Page(plan, sheet, new BenchGrid(plan.layout().format()))
                    .write(run, DAY.format(made.atZone(zone)), version);
            book.describe(Report.titleOf(plan.title(), run), plan.operator(), version, made);
            book.write(out);
        }
    }

    /** The page in the making. */
    private static final class Page {
        private final Plan plan;
        private final Sheet sheet;
        private final BenchGrid grid;
        private int row;

        Page(Plan plan, Sheet sheet, BenchGrid grid) {
            this.plan = plan;
            this.sheet = sheet;
            this.grid = grid;
        }

        void write(String run, String made, String version) throws IOException {
            grid.widths(sheet);
            head(run, made, version);
            plate();
            List<BenchLine> left = BenchLines.dilutions(plan);
            List<BenchLine> right = new ArrayList<>(BenchLines.mixes(plan));
            right.addAll(BenchLines.standards(plan));
            right.addAll(BenchLines.steps(plan));
            right = wrapped(right);
            blocks(left, right);
            texts("Note", plan.notices().stream().map(each -> each.text()).toList());
            texts("Cautions", plan.cautions());
            boolean onePage = Math.max(left.size(), right.size()) <= MOST_ON_ONE_PAGE;
            sheet.print(false, onePage, 0, run);
        }

        private void head(String run, String made, String version) throws IOException {
            sheet.row(row++, 26);
            sheet.banner(0, grid.last(), Report.titleOf(plan.title(), run), Looks.TITLE);
            sheet.row(row++);
            sheet.banner(
                    0, grid.last(), plan.method().title() + " (" + plan.method().id() + ")", Looks.TEXT);
            sheet.row(row++);
            sheet.banner(
                    0,
                    grid.last(),
                    "Planned " + made + " with Tallywell " + version + " from " + run + "; layout: "
                            + plan.layout().name() + ", " + plan.wells() + " wells in use",
                    Looks.NOTE);
            sheet.row(row++, 20);
            field(0, "Operator: " + plan.operator());
            field(4, "Date:");
            field(7, "Reader:");
            field(10, "Plate:");
            row++;
        }

        private void field(int at, String label) throws IOException {
            int to = at == 0 ? 3 : at == 4 ? 6 : at == 7 ? 9 : 12;
            sheet.banner(
                    grid.from(at),
                    grid.to(to),
                    label,
                    Looks.LABEL.edge(Look.Edge.UNDER).align(Look.Align.MIDDLE));
        }

        private void plate() throws IOException {
            PlateFormat format = plan.layout().format();
            sheet.row(row++);
            for (int column = 0; column < format.columns(); column++) {
                sheet.banner(
                        grid.wellFrom(column),
                        grid.wellTo(column),
                        Integer.toString(column + 1),
                        Looks.LABEL.align(Look.Align.CENTRE));
            }
            boolean large = format.columns() <= 12;
            for (int each = 0; each < format.rows(); each++) {
                sheet.row(row++, large ? 21 : 13);
                sheet.text(
                        0, Well.rowName(each), Look.PLAIN.face(Look.Face.BOLD).align(Look.Align.CENTRE));
                for (int column = 0; column < format.columns(); column++) {
                    Content content = plan.layout().at(new Well(each, column));
                    Look look = look(content).face(large ? Look.Face.LARGE : Look.Face.SMALL);
                    well(column, isUsed(content) ? content.word() : "", look.align(Look.Align.CENTRE));
                }
                if (large) {
                    sheet.row(row++, 11);
                    for (int column = 0; column < format.columns(); column++) {
                        Content content = plan.layout().at(new Well(each, column));
                        well(
                                column,
                                isUsed(content) ? small(content) : "",
                                look(content).face(Look.Face.SMALL).align(Look.Align.CENTRE));
                    }
                }
            }
            row++;
        }

        private void well(int column, String text, Look look) throws IOException {
            sheet.banner(grid.wellFrom(column), grid.wellTo(column), text, look.edge(Look.Edge.UNDER));
        }

        private boolean isUsed(Content content) {
            return !(content instanceof Content.Unused)
                    && (!(content instanceof Content.Sample sample) || sampleIn(sample.slot()) != null);
        }

        private @org.jspecify.annotations.Nullable Sample sampleIn(int slot) {
            return plan.samples().stream()
                    .map(Plan.PlannedSample::sample)
                    .filter(each -> each.slot() == slot)
                    .findFirst()
                    .orElse(null);
        }

        private Look look(Content content) {
            if (!isUsed(content)) {
                return Look.PLAIN;
            }
            return Look.PLAIN.fill(
                    switch (content.role()) {
                        case "sample", "sample-blank" -> Look.Fill.SAMPLE;
                        case "control" -> Look.Fill.CONTROL;
                        case "standard" -> Look.Fill.STANDARD;
                        case "spike" -> Look.Fill.SPIKE;
                        default -> Look.Fill.HEAD;
                    });
        }

        private String small(Content content) {
            if (content instanceof Content.Sample each) {
                Sample sample = sampleIn(each.slot());
                if (sample == null) {
                    return "";
                }
                double factor = sample.dilution().factor();
                return factor == 1 ? "as it is" : "dil. " + Numbers.plain(factor);
            }
            if (content instanceof Content.Blank blank) {
                return blank.triggered() ? "blank" : "no trigger";
            }
            return content instanceof Content.SampleBlank blank ? "of " + blank.of() + ", no tr." : content.role();
        }

        /** Steps and notes in as many lines as they take, since a cell holds one. */
        private static List<BenchLine> wrapped(List<BenchLine> lines) {
            List<BenchLine> wrapped = new ArrayList<>();
            for (BenchLine line : lines) {
                boolean isStep = line.kind() == BenchLine.Kind.STEP;
                if (!isStep && line.kind() != BenchLine.Kind.NOTE) {
                    wrapped.add(line);
                    continue;
                }
                String text = isStep && !line.value().isEmpty() ? line.value() + ": " + line.text() : line.text();
                List<String> parts = parts(text, isStep ? STEP_CHARACTERS : NOTE_CHARACTERS);
                wrapped.add(new BenchLine(line.kind(), parts.get(0), "", ""));
                parts.stream().skip(1).map(BenchLine::note).forEach(wrapped::add);
            }
            return wrapped;
        }

        /** Parts of a text no longer than a line. */
        private static List<String> parts(String text, int characters) {
            List<String> parts = new ArrayList<>();
            StringBuilder part = new StringBuilder();
            for (String word : text.split(" ")) {
                if (part.length() > 0 && part.length() + 1 + word.length() > characters) {
                    parts.add(part.toString());
                    part.setLength(0);
                }
                part.append(part.length() == 0 ? "" : " ").append(word);
            }
            parts.add(part.toString());
            return parts;
        }

        private void blocks(List<BenchLine> left, List<BenchLine> right) throws IOException {
            for (int i = 0; i < Math.max(left.size(), right.size()); i++) {
                sheet.row(row++, 13.5);
                if (i < left.size()) {
                    line(left.get(i), BenchGrid.LEFT);
                }
                if (i < right.size()) {
                    line(right.get(i), BenchGrid.RIGHT);
                }
            }
            row++;
        }

        private void line(BenchLine line, BenchGrid.Block block) throws IOException {
            if (line.kind() == BenchLine.Kind.SECTION) {
                sheet.banner(grid.from(block.tick()), grid.to(block.last()), line.text(), Looks.SECTION);
                return;
            }
            if (line.kind() == BenchLine.Kind.NOTE) {
                sheet.banner(
                        grid.from(block.text()), grid.to(block.last()), line.text(), Look.PLAIN.face(Look.Face.SMALL));
                return;
            }
            if (!line.text().isEmpty()) {
                tick(block.tick());
            }
            if (line.kind() == BenchLine.Kind.STEP) {
                sheet.banner(
                        grid.from(block.text()),
                        grid.to(block.last() - 1),
                        line.text(),
                        Look.PLAIN.face(Look.Face.SMALL));
                sheet.banner(grid.from(block.last()), grid.to(block.last()), "", Look.PLAIN.edge(Look.Edge.UNDER));
                return;
            }
            boolean bold = line.kind() == BenchLine.Kind.TOTAL;
            Look look = Look.PLAIN.face(bold ? Look.Face.BOLD : Look.Face.BODY).edge(Look.Edge.UNDER);
            sheet.banner(grid.from(block.text()), grid.to(block.value() - 1), line.text(), fitting(line.text(), look));
            sheet.banner(grid.from(block.value()), grid.to(block.valueTo()), line.value(), fitting(line.value(), look));
            if (block.last() > block.valueTo()) {
                sheet.banner(
                        grid.from(block.last()), grid.to(block.last()), line.expected(), look.align(Look.Align.CENTRE));
            }
        }

        /** Long texts are set small, so that they do not run into the next cell. */
        private static Look fitting(String text, Look look) {
            return text.length() > MOST_LARGE && look.face() == Look.Face.BODY ? look.face(Look.Face.SMALL) : look;
        }

        private void tick(int at) throws IOException {
            sheet.banner(grid.from(at), grid.to(at), "", Look.PLAIN.edge(Look.Edge.BOX));
        }

        private void texts(String title, List<String> texts) throws IOException {
            if (texts.isEmpty()) {
                return;
            }
            sheet.row(row++, 18);
            sheet.banner(0, grid.last(), title, Looks.SECTION);
            for (String text : texts) {
                sheet.row(row++, LINE_PT * ChecksSheet.lines(text, 112) + 1);
                sheet.banner(0, grid.last(), text, Looks.NOTE_WRAPPED);
            }
        }
    }
}
