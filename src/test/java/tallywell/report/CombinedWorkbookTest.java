package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;

class CombinedWorkbookTest {
    private static final List<String> FOLDERS =
            List.of("cider-l-malic", "puree-citric-solids", "juice-glucose-fructose", "cuvette-typed");

    private static byte[] write(List<Report> reports) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CombinedWorkbook workbook = new CombinedWorkbook()) {
            for (Report report : reports) {
                workbook.add(report);
            }
            workbook.finish(out);
        }
        return out.toByteArray();
    }

    private static List<Report> reports() throws Exception {
        List<Report> reports = new ArrayList<>();
        for (String folder : FOLDERS) {
            reports.add(SampleRuns.report(folder));
        }
        return reports;
    }

    private static XSSFWorkbook read(byte[] workbook) throws Exception {
        return new XSSFWorkbook(new ByteArrayInputStream(workbook));
    }

    @Test
    void resultsAreThoseOfTheTableOneRowEach() throws Exception {
        List<Report> reports = reports();
        StringBuilder text = new StringBuilder();
        try (ResultsTable table = new ResultsTable(text)) {
            for (Report report : reports) {
                table.add(report);
            }
        }
        List<CSVRecord> expected = TablesTest.parse(text.toString());
        try (XSSFWorkbook book = read(write(reports))) {
            Sheet results = book.getSheet("Results");
            assertThat(results.getLastRowNum()).isEqualTo(expected.size());
            for (int row = 0; row < expected.size(); row++) {
                for (int column = 0; column < ResultColumns.count(); column++) {
                    assertThat(shown(
                                    results.getRow(row + 1).getCell(column),
                                    expected.get(row).get(column)))
                            .as("row " + row + " " + ResultColumns.at(column).title())
                            .isEqualTo(expected.get(row).get(column));
                }
            }
        }
    }

    private static String shown(Cell cell, String wanted) {
        if (cell.getCellType() == CellType.NUMERIC) {
            assertThat(cell.getNumericCellValue()).isEqualTo(Double.parseDouble(wanted));
            return wanted;
        }
        return cell.getStringCellValue();
    }

    @Test
    void budgetHasARowForEachValueAndRecoveryWithItsParts() throws Exception {
        List<Report> reports = reports();
        try (XSSFWorkbook book = read(write(reports))) {
            Sheet sheet = book.getSheet("Budget");
            int row = 1;
            for (Report report : reports) {
                for (int i = 0; i < report.analysis().results().size(); i++) {
                    Row cells = sheet.getRow(row++);
                    var result = report.analysis().results().get(i);
                    assertThat(cells.getCell(3).getStringCellValue()).isEqualTo(result.name());
                    var budget = report.assessment().budget().results().get(i);
                    if (budget.isPresent()) {
                        assertThat(cells.getCell(8).getNumericCellValue())
                                .isEqualTo(budget.get().byBudget());
                        double sum = 0;
                        for (String part :
                                cells.getCell(15).getStringCellValue().split("; ")) {
                            sum += Double.parseDouble(part.substring(part.lastIndexOf(' ') + 1));
                        }
                        // Each part is rounded to a tenth of a per cent.
                        assertThat(sum).isBetween(99.5, 100.5);
                    } else {
                        assertThat(cells.getCell(16).getStringCellValue()).matches("no (u: .*|value)");
                    }
                }
                row += report.assessment().differences().size();
                for (var result : report.analysis().results()) {
                    if (result.recoveryPercent().isPresent()) {
                        Row cells = sheet.getRow(row++);
                        assertThat(cells.getCell(5).getStringCellValue()).isEqualTo("recovery");
                        assertThat(cells.getCell(6).getNumericCellValue())
                                .isEqualTo(result.recoveryPercent().getAsDouble());
                    }
                }
            }
            assertThat(sheet.getLastRowNum()).isEqualTo(row - 1);
        }
    }

    @Test
    void holdsValuesAndOneRowForEachRun() throws Exception {
        try (XSSFWorkbook book = read(write(reports()))) {
            assertThat(book.getSheet("Runs").getLastRowNum()).isEqualTo(FOLDERS.size());
            assertThat(book.getSheet("Summary").getRow(0).getCell(0).getStringCellValue())
                    .isEqualTo("Summary of 4 runs");
            for (Sheet sheet : book) {
                for (Row row : sheet) {
                    for (Cell cell : row) {
                        assertThat(cell.getCellType()).isNotEqualTo(CellType.FORMULA);
                    }
                }
            }
        }
    }

    @Test
    void sameRunsGiveTheSameBytes() throws Exception {
        byte[] once = write(reports());
        assertThat(write(reports())).isEqualTo(once);
    }

    @Test
    void resultsByDifferenceStandBehindTheOthers() throws Exception {
        Report report = SampleRuns.report(Variants.named("pairs"));
        try (XSSFWorkbook book = read(write(List.of(report)))) {
            Sheet results = book.getSheet("Results");
            assertThat(results.getRow(results.getLastRowNum()).getCell(2).getStringCellValue())
                    .isEqualTo("difference");
        }
    }

    /** Rows wait in files: what a run leaves in memory is next to nothing. */
    @Test
    void manyRunsDoNotFillTheMemory() throws Exception {
        Report report = SampleRuns.report("juice-glucose-fructose");
        try (CombinedWorkbook workbook = new CombinedWorkbook()) {
            for (int i = 0; i < 50; i++) {
                workbook.add(report);
            }
            long before = used();
            for (int i = 0; i < 200; i++) {
                workbook.add(report);
            }
            // 200 runs are 15,000 rows of 20 cells, some 16 MB as objects.
            assertThat(used() - before).isLessThan(4_000_000);
            workbook.finish(java.io.OutputStream.nullOutputStream());
        }
    }

    private static long used() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
