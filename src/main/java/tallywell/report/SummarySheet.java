package tallywell.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tallywell.assess.Assessment;
import tallywell.assess.BasisWords;
import tallywell.assess.Check;
import tallywell.assess.Verdict;
import tallywell.workup.Assay;
import tallywell.workup.Taken;

/** Writes the sheet Summary, which is made to be printed and handed on. */
final class SummarySheet {
    private static final double LINE_PT = 12.5;

    /** So many rows still fit on one page at a size that can be read. */
    private static final int MOST_ON_ONE_PAGE = 80;

    private final Report report;
    private final Sheet sheet;
    private final SummaryTable table;
    private int row;

    private SummarySheet(Draft draft, Sheet sheet) {
        this.report = draft.report();
        this.sheet = sheet;
        this.table = new SummaryTable(draft, sheet);
    }

    static void write(Draft draft, Sheet sheet) throws IOException {
        new SummarySheet(draft, sheet).write();
    }

    private int last() {
        return table.last();
    }

    private void write() throws IOException {
        head();
        acceptance();
        section("Results");
        int head = row;
        row = table.role("sample", row);
        row = table.differences(row);
        row = table.role("control", row);
        row = table.role("spike", row);
        cautions();
        guide();
        boolean onePage = row <= MOST_ON_ONE_PAGE;
        sheet.print(false, onePage, 0, report.run());
        if (!onePage) {
            sheet.titleRows(head, head);
        }
        sheet.printArea(row, last());
    }

    private void head() throws IOException {
        Assay assay = report.analysis().assay();
        String title = report.title();
        int lines = Math.min(3, ChecksSheet.lines(title, (int) (table.width() * 0.68)));
        sheet.row(row++, 26 * lines);
        sheet.banner(0, last(), title, Looks.TITLE.wrapped());
        sheet.row(row++);
        sheet.banner(0, last(), assay.method().title(), Looks.TEXT);
        sheet.row(row++, 6);
        fact("Operator", assay.operator().isEmpty() ? "not stated" : assay.operator());
        fact("Run", report.run() + (assay.plate().isEmpty() ? "" : ", plate " + assay.plate()));
        fact("Readings", assay.readings().stream().map(Taken::name).collect(Collectors.joining(", ")));
        fact("Layout", assay.layout().name());
        fact(
                "Report made",
                report.provenance().madeText() + ", Tallywell "
                        + report.provenance().version());
        sheet.row(row++, 6);
    }

    private void fact(String label, String text) throws IOException {
        sheet.row(row++);
        sheet.text(0, label, Looks.LABEL);
        sheet.banner(1, last(), text, Looks.TEXT);
    }

    private void acceptance() throws IOException {
        Assessment assessment = report.assessment();
        boolean assessed = assessment.count(Check.State.PASSED) + assessment.count(Check.State.FAILED) > 0;
        Look look = !assessment.passed()
                ? Look.PLAIN.face(Look.Face.BAD).fill(Look.Fill.BAD)
                : assessed
                        ? Look.PLAIN.face(Look.Face.GOOD).fill(Look.Fill.GOOD)
                        : Look.PLAIN.face(Look.Face.ATTENTION).fill(Look.Fill.ATTENTION);
        sheet.row(row++, 20);
        sheet.banner(0, last(), assessment.sentence(), look.align(Look.Align.MIDDLE));
        sheet.row(row++);
        sheet.banner(
                0,
                last(),
                "Samples: " + count(Verdict.REPORT) + " to report, " + count(Verdict.CHECK) + " to check, "
                        + count(Verdict.REPEAT) + " to repeat. Values are in the original sample"
                        + (table.hasUncertainty()
                                ? "; " + new BasisWords(assessment).meaning() + "."
                                : ", shown with three significant digits; their uncertainty has not been evaluated."),
                Looks.NOTE);
    }

    private long count(Verdict verdict) {
        return report.assessment().count(verdict);
    }

    private void section(String title) throws IOException {
        sheet.row(row++, 24);
        sheet.text(0, title, Looks.SECTION.align(Look.Align.MIDDLE));
    }

    private void cautions() throws IOException {
        section("Cautions");
        List<String> cautions =
                new ArrayList<>(report.analysis().assay().method().cautions());
        cautions.add("Not for diagnosis.");
        cautions.add(
                "Results that decide on safety or on a label need review by a qualified person before they are used.");
        for (String caution : cautions) {
            sheet.row(row++, 2 + LINE_PT * ChecksSheet.lines(caution, (int) (table.width() * 1.08)));
            sheet.banner(0, last(), caution, Looks.NOTE_WRAPPED);
        }
    }

    private void guide() throws IOException {
        section("In this workbook");
        link("Results", "every result with its working, live down to the readings");
        link("Wells", "every well; write yes or no under used, and all that follows is computed again");
        link("Calibration", "blanks, constants, standards and the line through them");
        link("Readings", "every reading in exactly one cell");
        link("Plate", "the plate drawn by content, net ΔA and value");
        link("Checks", "limits and what was found, reasons of every verdict, flags in words");
        link("Provenance", "files with their SHA-256, version, what people decided");
        link(BudgetSheet.NAME, "what each result is uncertain from");
        if (report.provenance().carried().isPresent()) {
            link(InputsSheet.NAME, "the files themselves, from which 'tallywell recheck' works all this up again");
        }
        sheet.row(row++, 6);
        sheet.row(row++);
        sheet.text(0, "input: as read or typed", Looks.INPUT);
        sheet.banner(1, 4, "formula: follows the input", Looks.TEXT.edge(Look.Edge.BOX));
        sheet.banner(
                5,
                last(),
                "computed value: no cell formula gives it; verdicts, flags and U do not follow",
                Looks.COMPUTED);
    }

    private void link(String to, String what) throws IOException {
        sheet.row(row);
        sheet.text(0, to, Looks.LINK);
        sheet.banner(1, last(), what, Looks.NOTE);
        sheet.link(row, 0, to);
        row++;
    }
}
