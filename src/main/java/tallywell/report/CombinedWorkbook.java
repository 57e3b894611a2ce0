package tallywell.report;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.apache.poi.ss.util.CellRangeAddress;
import tallywell.assess.Assessment;
import tallywell.assess.Check;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.workup.Assay;

/**
 * Writes one Excel summary of many runs: values, one row a sample and analyte.
 *
 * <p>Rows go to files as the runs come, so that memory does not grow with their number. The sheet Runs has one row a run,
 * Results the columns of {@code results.csv}, Checks the criteria of every batch, Provenance the files.
 */
public final class CombinedWorkbook implements Closeable {
    /** The setting that says that a workbook is of this kind: {@code combined}. */
    public static final String SUMMARY = "summary";

    private static final List<String> RUNS = List.of(
            "run",
            "title",
            "plate",
            "operator",
            "method",
            "acceptance",
            "checks passed",
            "checks failed",
            "not assessed",
            "to report",
            "to check",
            "to repeat");
    private static final List<String> CHECKS = List.of("run", "check", "limit", "found", "state", "source");
    private static final List<String> FILES = List.of("run", "role", "file", "SHA-256");

    /** As many rows as a sheet has (ECMA-376-1:2016, 18.3.1.73). */
    private static final int MOST_ROWS = 1_048_576;

    private final Book book = new Book();
    private final Sheet summary;
    private final Sheet runs;
    private final Sheet results;
    private final Sheet checks;
    private final Sheet provenance;
    private final Sheet budget;
    private final InputsSheet inputs;
    private final long[] verdicts = new long[Verdict.values().length];
    private int added;
    private int failed;
    private String version = "";
    private String made = "";
    private String operators = "";
    private java.time.Instant time = java.time.Instant.EPOCH;

    /** Starts a summary. */
    public CombinedWorkbook() throws IOException {
        try {
            summary = book.add("Summary");
            runs = streamed("Runs", RUNS);
            results = streamed(ResultPlaces.SHEET, ResultColumns.titles());
            checks = streamed("Checks", CHECKS);
            provenance = streamed("Provenance", FILES);
            budget = streamed(BudgetSheet.NAME, CombinedBudget.TITLES);
            inputs = new InputsSheet(book.add(InputsSheet.NAME, new Store.Disk()));
        } catch (IOException e) {
            book.close();
            throw e;
        }
    }

    private Sheet streamed(String name, List<String> titles) throws IOException {
        Sheet sheet = book.add(name, new Store.Disk());
        sheet.row(0);
        sheet.heads(0, titles, Looks.HEAD);
        return sheet;
    }

    /** Starts the next row of a sheet. */
    static void next(Sheet sheet) throws IOException {
        int row = sheet.text().row() + 1;
        if (row >= MOST_ROWS) {
            throw new IOException("the sheet " + sheet.poi().getSheetName() + " would have more than " + MOST_ROWS
                    + " rows; write the tables instead, or fewer runs in one summary");
        }
        sheet.row(row);
    }

    /** Adds a run. */
    public void add(Report report) throws IOException {
        added++;
        Assessment assessment = report.assessment();
        failed += assessment.passed() ? 0 : 1;
        for (Judgement judgement : assessment.judgements()) {
            next(results);
            ResultColumns.write(report, judgement, new Row(results, judgement.verdict()));
        }
        for (JudgedDifference judged : assessment.differences()) {
            next(results);
            DifferenceRow.write(report, judged, new Row(results, judged.verdict()));
        }
        for (Check check : assessment.checks()) {
            next(checks);
            check(report, check);
        }
        for (InputFile input : report.provenance().inputs()) {
            next(provenance);
            texts(provenance, List.of(report.run(), input.role(), input.name(), input.sha256()));
        }
        CombinedBudget.add(report, budget);
        if (report.provenance().carried().isPresent()) {
            inputs.add(
                    report.run(),
                    report.provenance().carried().get(),
                    List.of(new Carried.Setting(SUMMARY, "combined")));
        }
        next(runs);
        run(report);
        version = report.provenance().version();
        made = report.provenance().madeText();
        time = report.provenance().made();
    }

    private void check(Report report, Check check) {
        texts(checks, List.of(report.run(), check.name(), check.limit(), check.found()));
        checks.text(4, check.state().words(), ChecksSheet.plain(check.state()));
        checks.text(5, check.source(), Looks.TEXT);
    }

    private void run(Report report) {
        Assay assay = report.analysis().assay();
        Assessment assessment = report.assessment();
        if (!operators.equals(assay.operator())) {
            operators = added == 1 ? assay.operator() : "";
        }
        texts(
                runs,
                List.of(
                        report.run(),
                        assay.title(),
                        assay.plate(),
                        assay.operator(),
                        assay.method().id()));
        Check.State state = assessment.passed()
                ? assessment.count(Check.State.PASSED) > 0 ? Check.State.PASSED : Check.State.NOT_ASSESSED
                : Check.State.FAILED;
        runs.text(5, state.words(), ChecksSheet.plain(state));
        int column = 6;
        for (Check.State each : List.of(Check.State.PASSED, Check.State.FAILED, Check.State.NOT_ASSESSED)) {
            runs.number(column++, (double) assessment.count(each), Looks.TEXT);
        }
        for (Verdict verdict : List.of(Verdict.REPORT, Verdict.CHECK, Verdict.REPEAT)) {
            long count = assessment.count(verdict);
            verdicts[column - 9] += count;
            runs.number(column++, (double) count, Looks.TEXT);
        }
    }

    private static void texts(Sheet sheet, List<String> texts) {
        int column = 0;
        for (String text : texts) {
            sheet.text(column++, text, Looks.TEXT);
        }
    }

    /**
     * Writes the summary; nothing can be added any more.
     *
     * @param out where to; left open
     */
    public void finish(OutputStream out) throws IOException {
        table(runs, 2, 34, 60, 10, 18, 26, 14, 13, 13, 13, 11, 11, 11);
        table(results, 5, 34, 10, 8, 6, 26, 16, 11, 9, 9, 9, 6, 5, 11, 9, 11, 10, 16, 9, 36, 12, 10, 10, 12);
        table(checks, 1, 34, 44, 24, 34, 14, 40);
        table(provenance, 1, 34, 12, 44, 70);
        table(budget, 5, CombinedBudget.WIDTHS);
        budget.printWide(4, 1);
        inputs.finish("");
        summarise();
        book.describe("Summary of " + added + (added == 1 ? " run" : " runs"), operators, version, time);
        book.write(out);
    }

    private static void table(Sheet sheet, int columnsKept, double... widths) {
        sheet.widths(widths);
        sheet.freeze(1, columnsKept);
        sheet.poi().setAutoFilter(new CellRangeAddress(0, sheet.text().row(), 0, widths.length - 1));
        sheet.print(true, false, 1, sheet.poi().getSheetName());
    }

    private void summarise() throws IOException {
        int row = 0;
        summary.widths(26, 16, 60);
        summary.row(row++, 28);
        summary.text(0, "Summary of " + added + (added == 1 ? " run" : " runs"), Looks.TITLE);
        summary.row(row++, 6);
        row = line(row, "Report made", made + ", Tallywell " + version);
        row = line(
                row, "Runs", added + ", of which " + failed + (failed == 1 ? " fails" : " fail") + " the acceptance");
        row = line(
                row,
                "Samples",
                verdicts[0] + " to report, " + verdicts[1] + " to check, " + verdicts[2] + " to repeat");
        summary.row(row++, 6);
        row = link(row, "Runs", "one row a run: acceptance, and how many results to report, check and repeat");
        row = link(row, ResultPlaces.SHEET, "one row a sample, control or spike and analyte, as in results.csv");
        row = link(row, "Checks", "the criteria of every batch with what was found");
        row = link(row, "Provenance", "the files of every run with their SHA-256");
        row = link(row, BudgetSheet.NAME, "one row a value and a recovery: u, k, U, and what they come from");
        row = link(
                row, InputsSheet.NAME, "the files themselves, so that 'tallywell recheck' can work the runs up again");
        summary.row(row++, 6);
        for (String caution : List.of(
                "Values, not formulas: the summary of a single run is live down to its readings.",
                "Not for diagnosis.",
                "Results that decide on safety or on a label need review by a qualified person before they are used.")) {
            summary.row(row++);
            summary.banner(0, 2, caution, Looks.NOTE);
        }
        summary.print(false, true, 0, "");
    }

    private int line(int row, String label, String text) throws IOException {
        summary.row(row);
        summary.text(0, label, Looks.LABEL);
        summary.banner(1, 2, text, Looks.TEXT);
        return row + 1;
    }

    private int link(int row, String to, String what) throws IOException {
        summary.row(row);
        summary.text(0, to, Looks.LINK);
        summary.banner(1, 2, what, Looks.NOTE);
        summary.link(row, 0, to);
        return row + 1;
    }

    @Override
    public void close() throws IOException {
        book.close();
    }

    /** One row of the sheet Results. */
    private static final class Row implements Fields {
        private final Sheet sheet;
        private final Verdict verdict;
        private int column;

        Row(Sheet sheet, Verdict verdict) {
            this.sheet = sheet;
            this.verdict = verdict;
        }

        @Override
        public void text(String text) {
            ResultColumns what = ResultColumns.at(column);
            Look look = what == ResultColumns.VERDICT ? ResultsSheet.verdict(verdict) : Looks.TEXT;
            look = what.isIndented() ? look.align(Look.Align.INDENT) : look;
            sheet.text(column++, text, look);
        }

        @Override
        public void number(double number) {
            sheet.number(column, number, look(ResultColumns.at(column), number));
            column++;
        }

        private static Look look(ResultColumns what, double number) {
            return switch (what) {
                case VALUE, VALUE_ALL -> Look.PLAIN.format(Looks.digits(number, 4));
                case U_STANDARD, U_EXPANDED -> Look.PLAIN.format(Looks.digits(number, 2));
                case K, CV_PERCENT -> Look.PLAIN.format("0.00");
                case RECOVERY_PERCENT -> Look.PLAIN.format("0.0");
                default -> Looks.TEXT;
            };
        }

        @Override
        public void empty() {
            sheet.blank(column++, Looks.TEXT);
        }
    }
}
