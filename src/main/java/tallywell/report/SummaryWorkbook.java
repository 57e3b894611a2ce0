package tallywell.report;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.List;
import tallywell.report.CalibrationPlaces.Fact;
import tallywell.report.CalibrationPlaces.Scope;
import tallywell.workup.StepAnalysis;

/**
 * Writes the Excel summary of one run: a page to hand on, and behind it everything that led there as live formulas, down to
 * the cells that hold the readings.
 *
 * <p>What no cell formula can do stands as a value and looks so. The same report gives the same bytes.
 */
public final class SummaryWorkbook {
    /** The setting that says whether there are pictures of traces: {@code drawn} or {@code none}. */
    public static final String TRACES = "traces";

    /**
     * Loads what the first workbook of a process needs, which takes longer than writing it. Meant for another thread, while
     * the run is still being read; workbooks are the same without it.
     */
    public static void prepare() throws IOException {
        try (Book book = new Book()) {
            Sheet sheet = book.add("Summary");
            sheet.row(0);
            sheet.text(0, "", Looks.HEAD);
            sheet.number(1, 1, Looks.INPUT.format(Looks.ABSORBANCE));
            sheet.merge(1, 1, 0, 1);
            sheet.link(0, 0, "Summary");
            sheet.print(true, true, 1, "");
            sheet.printArea(1, 1);
            CalibrationChart.prepare(sheet);
            PlateSheet.prepare(sheet);
            book.name("name_1", "Summary!$A$1");
            book.describe("", "", "", Instant.EPOCH);
            book.write(OutputStream.nullOutputStream());
        }
    }

    /**
     * Writes the workbook.
     *
     * @param out where to; left open
     */
    public void write(Report report, OutputStream out) throws IOException {
        write(report, List.of(), "", out);
    }

    /**
     * Writes the workbook with pictures of the traces on a sheet at the end.
     *
     * @param pictures in the order shown; without any there is no such sheet
     * @param note what the pictures show and leave out
     * @param out where to; left open
     */
    public void write(Report report, List<SheetPicture> pictures, String note, OutputStream out) throws IOException {
        Draft draft = Draft.of(report);
        try (Book book = new Book()) {
            Sheet summary = book.add("Summary");
            Sheet results = book.add(ResultPlaces.SHEET);
            Sheet wells = book.add(WellPlaces.SHEET);
            Sheet calibration = book.add(CalibrationPlaces.SHEET);
            Sheet readings = book.add(ReadingGrid.SHEET);
            Sheet plate = book.add("Plate");
            Sheet checks = book.add(ChecksSheet.NAME);
            Sheet provenance = book.add("Provenance");
            Sheet budget = book.add(BudgetSheet.NAME);
            SummarySheet.write(draft, summary);
            ResultsSheet.write(draft, results);
            WellsSheet.write(draft, wells);
            CalibrationSheet.write(draft, calibration);
            ReadingsSheet.write(draft, readings);
            PlateSheet.write(draft, plate);
            ChecksSheet.write(draft, checks);
            ProvenanceSheet.write(report, provenance);
            BudgetSheet.write(draft, budget);
            if (!pictures.isEmpty()) {
                TracesSheet.write(pictures, note, book.add(TracesSheet.NAME), report.run());
            }
            if (report.provenance().carried().isPresent()) {
                inputs(report, !pictures.isEmpty(), book.add(InputsSheet.NAME));
            }
            names(draft, book);
            describe(report, book);
            book.write(out);
        }
    }

    private static void inputs(Report report, boolean pictures, Sheet sheet) throws IOException {
        InputsSheet inputs = new InputsSheet(sheet);
        Carried.Setting traces = new Carried.Setting(TRACES, pictures ? "drawn" : "none");
        inputs.add(report.run(), report.provenance().carried().orElseThrow(), List.of(traces));
        inputs.finish(report.run());
    }

    private static void names(Draft draft, Book book) {
        book.name(
                "results_table",
                ResultPlaces.SHEET + "!" + At.fixed(0, 0) + ":"
                        + At.fixed(draft.results().lastRow(), ResultColumns.count() - 1));
        book.name(
                "wells_table",
                WellPlaces.SHEET + "!" + At.fixed(0, 0) + ":"
                        + At.fixed(draft.wells().lastRow(), WellColumns.count() - 1));
        ReadingGrid grid = draft.readings();
        int firstReading = grid.headRow() + 1;
        book.name(
                "readings_table",
                ReadingGrid.SHEET + "!" + At.fixed(firstReading, ReadingGrid.FIRST_COLUMN) + ":"
                        + At.fixed(
                                firstReading + grid.wells().size() - 1, ReadingGrid.FIRST_COLUMN + grid.columns() - 1));
        for (StepAnalysis step : draft.analysis().steps()) {
            CalibrationPlaces.Section section = draft.calibration().of(step.number());
            String suffix = "_" + step.number();
            section.blanks("").ifPresent(means -> book.name("blank" + suffix, means.cell(Scope.USED)));
            for (Fact fact : new Fact[] {Fact.SLOPE, Fact.INTERCEPT, Fact.FACTOR}) {
                if (section.has(fact)) {
                    book.name(fact.name().toLowerCase(java.util.Locale.ROOT) + suffix, section.cell(fact, Scope.USED));
                }
            }
        }
    }

    private static void describe(Report report, Book book) {
        String title = report.analysis().assay().title();
        book.describe(
                title.isEmpty() ? report.run() : title,
                report.analysis().assay().operator(),
                report.provenance().version(),
                report.provenance().made());
    }
}
