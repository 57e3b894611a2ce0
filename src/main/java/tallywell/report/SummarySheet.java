package tallywell.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tallywell.assess.Assessment;
import tallywell.assess.Check;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.quantity.Numbers;
import tallywell.workup.Assay;
import tallywell.workup.Flag;
import tallywell.workup.Result;
import tallywell.workup.Taken;

/** Writes the sheet Summary, which is made to be printed and handed on. */
final class SummarySheet {
    private static final int DIGITS = 3;
    private static final double LINE_PT = 12.5;

    /** So many results still fit on one page at a size that can be read. */
    private static final int MOST_ON_ONE_PAGE = 48;

    private static final Look CELL = Look.PLAIN.edge(Look.Edge.UNDER);
    private static final Look CELL_WRAPPED = CELL.wrapped();

    private final Draft draft;
    private final Report report;
    private final Sheet sheet;
    private final boolean several;
    private final List<Double> widths = new ArrayList<>();
    private int row;

    private SummarySheet(Draft draft, Sheet sheet) {
        this.draft = draft;
        this.report = draft.report();
        this.sheet = sheet;
        this.several = draft.analysis().steps().size() > 1;
        widths.addAll(several ? List.of(24.0, 13.0) : List.of(27.0));
        widths.addAll(List.of(10.0, 8.5, 4.0, 6.5, 9.0, 30.0, 21.0));
    }

    static void write(Draft draft, Sheet sheet) throws IOException {
        new SummarySheet(draft, sheet).write();
    }

    private int last() {
        return widths.size() - 1;
    }

    /** The column of the values: after the sample, and its analyte where there are several. */
    private int value() {
        return several ? 2 : 1;
    }

    private void write() throws IOException {
        for (int i = 0; i < widths.size(); i++) {
            sheet.width(i, widths.get(i));
        }
        head();
        acceptance();
        int before = row;
        results(samples(), "Results");
        differences();
        results(others("control"), "Controls");
        results(others("spike"), "Spikes");
        boolean onePage = row - before <= MOST_ON_ONE_PAGE;
        cautions();
        guide();
        sheet.print(false, onePage, 0, report.run());
    }

    private double total() {
        return widths.stream().mapToDouble(Double::doubleValue).sum();
    }

    private void head() throws IOException {
        Assay assay = report.analysis().assay();
        String title = assay.title().isEmpty() ? report.run() : assay.title();
        int lines = Math.min(3, ChecksSheet.lines(title, (int) (total() * 0.55)));
        sheet.row(row++, 24 * lines);
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
                        + count(Verdict.REPEAT) + " to repeat. Values are in the original sample, shown with " + DIGITS
                        + " significant digits; their uncertainty has not been evaluated.",
                Looks.NOTE);
    }

    private long count(Verdict verdict) {
        return report.assessment().count(verdict);
    }

    private List<Judgement> samples() {
        return others("sample");
    }

    private List<Judgement> others(String role) {
        return report.assessment().judgements().stream()
                .filter(each -> each.result().role().equals(role))
                .toList();
    }

    private void section(String title) throws IOException {
        sheet.row(row++, 24);
        sheet.text(0, title, Looks.SECTION.align(Look.Align.MIDDLE));
    }

    private void results(List<Judgement> judgements, String title) throws IOException {
        if (judgements.isEmpty()) {
            return;
        }
        boolean recovered = !title.equals("Results");
        section(title);
        sheet.row(row++);
        List<String> heads = new ArrayList<>(List.of(recovered ? title.substring(0, title.length() - 1) : "Sample"));
        if (several) {
            heads.add("Analyte");
        }
        heads.addAll(List.of("Value", "Unit", "n", "CV %", "Verdict", "What was seen", "What to do next"));
        if (recovered) {
            heads.set(heads.size() - 1, "Recovery");
        }
        for (int i = 0; i < heads.size(); i++) {
            boolean right = i == value() || i == value() + 2 || i == value() + 3;
            sheet.text(i, heads.get(i), right ? Looks.HEAD.align(Look.Align.RIGHT) : Looks.HEAD);
        }
        for (Judgement judgement : judgements) {
            result(judgement, recovered);
        }
    }

    /** Results by difference, each from the total and the free amount above. */
    private void differences() throws IOException {
        List<JudgedDifference> all = report.assessment().differences();
        if (all.isEmpty()) {
            return;
        }
        section("By difference");
        for (int i = 0; i < all.size(); i++) {
            JudgedDifference judged = all.get(i);
            Result of = judged.difference().row();
            String seen = Words.brief(of.flags());
            sheet.row(row++, 2 + LINE_PT * ChecksSheet.lines(seen, (int) (double) widths.get(last() - 1)));
            sheet.text(0, of.name() + ", " + of.analyte(), CELL_WRAPPED);
            String cell = ResultPlaces.cell(draft.results().rowOfDifference(i), ResultColumns.VALUE);
            String formula = "IF(" + cell + "=\"\",\"no value\"," + cell + ")";
            Look look = CELL.face(Look.Face.BOLD).align(Look.Align.RIGHT);
            if (of.value().isPresent()) {
                double value = of.value().getAsDouble();
                sheet.formula(value(), formula, value, look.format(Looks.digits(value, DIGITS)));
            } else {
                sheet.formula(value(), formula, "no value", look);
            }
            int at = value() + 1;
            sheet.text(at++, of.unit().symbol(), CELL.align(Look.Align.TOP));
            sheet.number(at++, of.n(), top("0"));
            sheet.blank(at++, CELL);
            sheet.text(
                    at++,
                    judged.verdict().word(),
                    ResultsSheet.verdict(judged.verdict()).align(Look.Align.TOP).edge(Look.Edge.UNDER));
            sheet.text(at, seen, CELL_WRAPPED);
        }
    }

    private void result(Judgement judgement, boolean recovered) throws IOException {
        Result result = judgement.result();
        int from = draft.results().row(result);
        String seen = Words.brief(result.flags());
        String name = result.name();
        double width = widths.get(0);
        sheet.row(
                row++, 2 + LINE_PT * ChecksSheet.lines(name, (int) width, seen, (int) (double) widths.get(last() - 1)));
        sheet.text(0, name, CELL_WRAPPED);
        if (several) {
            sheet.text(1, result.analyte(), CELL.align(Look.Align.TOP));
        }
        value(judgement, from);
        int at = value() + 1;
        sheet.text(at++, result.unit().symbol(), CELL.align(Look.Align.TOP));
        sheet.formula(at++, ResultPlaces.cell(from, ResultColumns.N), result.n(), top("0"));
        String cv = ResultPlaces.cell(from, ResultColumns.CV_PERCENT);
        sheet.formula(at++, "IF(" + cv + "=\"\",\"\"," + cv + ")", result.cvPercent(), top("0.0"));
        sheet.text(
                at++,
                judgement.verdict().word(),
                ResultsSheet.verdict(judgement.verdict()).align(Look.Align.TOP).edge(Look.Edge.UNDER));
        sheet.text(at++, seen, CELL_WRAPPED);
        if (recovered) {
            recovery(at, result, from);
        } else {
            sheet.text(at, Words.advice(judgement), CELL_WRAPPED);
        }
    }

    private static Look top(String format) {
        return CELL.align(Look.Align.TOP).format(format);
    }

    private void value(Judgement judgement, int from) {
        Result result = judgement.result();
        String cell = ResultPlaces.cell(from, ResultColumns.VALUE);
        String otherwise = bound(judgement);
        Look look = CELL.face(Look.Face.BOLD).wrapped().align(Look.Align.RIGHT);
        String formula = "IF(" + cell + "=\"\",\"" + otherwise + "\"," + cell + ")";
        if (result.value().isPresent()) {
            double value = result.value().getAsDouble();
            sheet.formula(value(), formula, value, look.format(Looks.digits(value, DIGITS)));
        } else {
            sheet.formula(value(), formula, otherwise, look);
        }
    }

    /** What can be said of a value that could not be determined. */
    private String bound(Judgement judgement) {
        boolean above = judgement.result().flags().contains(Flag.ABOVE_STANDARDS);
        boolean below = judgement.result().flags().contains(Flag.BELOW_STANDARDS);
        OptionalDouble bound = above == below ? OptionalDouble.empty() : new ResultScale(draft, judgement).bound(above);
        return bound.isPresent() ? (above ? "> " : "< ") + Numbers.rounded(bound.getAsDouble(), DIGITS) : "no value";
    }

    private void recovery(int column, Result result, int from) {
        String cell = ResultPlaces.cell(from, ResultColumns.RECOVERY_PERCENT);
        if (result.recoveryPercent().isEmpty()) {
            sheet.text(column, "not assessed", CELL.align(Look.Align.TOP));
            return;
        }
        String of = result.assigned().isPresent()
                ? " % of " + Numbers.plain(result.assigned().getAsDouble()) + " " + result.unit()
                : " % of what was added";
        sheet.formula(
                column,
                "IF(" + cell + "=\"\",\"\"," + cell + ")",
                result.recoveryPercent().getAsDouble(),
                top("0.0\"" + of + "\"").align(Look.Align.LEFT));
    }

    private void cautions() throws IOException {
        section("Cautions");
        List<String> cautions =
                new ArrayList<>(report.analysis().assay().method().cautions());
        cautions.add("Not for diagnosis.");
        cautions.add(
                "Results that decide on safety or on a label need review by a qualified person before they are used.");
        for (String caution : cautions) {
            sheet.row(row++, 2 + LINE_PT * ChecksSheet.lines(caution, (int) (total() * 1.05)));
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
        sheet.row(row++, 6);
        sheet.row(row++);
        sheet.text(0, "input: as read or typed", Looks.INPUT);
        sheet.banner(1, value() + 3, "formula: follows the input", Looks.TEXT.edge(Look.Edge.BOX));
        sheet.banner(
                value() + 4,
                last(),
                "computed value: no cell formula can give it; verdicts and flags do not follow",
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
