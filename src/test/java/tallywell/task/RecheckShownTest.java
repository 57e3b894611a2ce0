package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.SheetConditionalFormatting;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a workbook holds is the same, and what a reader sees is not. */
class RecheckShownTest {
    @TempDir
    private Path folder;

    private Path report;

    @BeforeEach
    void workUp() throws Exception {
        report = folder.resolve("run.xlsx");
        new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(Path.of("samples/cuvette-typed/run.yaml")),
                                Optional.empty(),
                                Wanted.summary(report),
                                Instant.EPOCH,
                                ZoneOffset.UTC,
                                Optional.empty()),
                        Progress.SILENT);
    }

    private interface Change {
        void to(XSSFWorkbook book);
    }

    private List<String> linesAfter(Change change) throws Exception {
        try (InputStream in = Files.newInputStream(report);
                XSSFWorkbook book = new XSSFWorkbook(in)) {
            change.to(book);
            try (OutputStream out = Files.newOutputStream(report)) {
                book.write(out);
            }
        }
        return new Recheck().run(report, Optional.empty()).lines();
    }

    private static Cell number(XSSFWorkbook book) {
        for (var row : book.getSheet("Results")) {
            for (Cell cell : row) {
                if (cell.getCellType() == org.apache.poi.ss.usermodel.CellType.FORMULA
                        && cell.getCachedFormulaResultType() == org.apache.poi.ss.usermodel.CellType.NUMERIC
                        && cell.getNumericCellValue() > 0) {
                    return cell;
                }
            }
        }
        throw new AssertionError("no number on the sheet Results");
    }

    private static void format(XSSFWorkbook book, String format) {
        Cell cell = number(book);
        CellStyle style = book.createCellStyle();
        style.cloneStyleFrom(cell.getCellStyle());
        style.setDataFormat(book.createDataFormat().getFormat(format));
        cell.setCellStyle(style);
    }

    @Test
    void workbookThatWasOnlySavedAgainShowsTheSame() throws Exception {
        assertThat(linesAfter(book -> {})).isEmpty();
    }

    @Test
    void numberFormatThatShowsAnotherNumberIsFound() throws Exception {
        assertThat(linesAfter(book -> format(book, "\"0.91\"")))
                .singleElement()
                .asString()
                .startsWith("shown: Results")
                .contains("the number format '\"0.91\"' stands in place of")
                .endsWith("and shows something else");
    }

    @Test
    void numberFormatThatHidesTheNumberIsFound() throws Exception {
        assertThat(linesAfter(book -> format(book, ";;;")))
                .singleElement()
                .asString()
                .startsWith("shown: Results");
    }

    @Test
    void hiddenSheetIsFound() throws Exception {
        assertThat(linesAfter(
                        book -> book.setSheetVisibility(book.getSheetIndex("Checks"), SheetVisibility.VERY_HIDDEN)))
                .containsExactly("shown: the sheet Checks is hidden");
    }

    @Test
    void mergedCellsAreFound() throws Exception {
        assertThat(linesAfter(book -> book.getSheet("Results").addMergedRegion(CellRangeAddress.valueOf("S6:T7"))))
                .containsExactly("shown: the sheet Results has S6:T7 merged into one cell");
    }

    @Test
    void conditionalFormatsAreFound() throws Exception {
        assertThat(linesAfter(book -> {
                    SheetConditionalFormatting formats =
                            book.getSheet("Results").getSheetConditionalFormatting();
                    var rule = formats.createConditionalFormattingRule("TRUE");
                    rule.createFontFormatting().setFontColorIndex((short) 9);
                    formats.addConditionalFormatting(new CellRangeAddress[] {CellRangeAddress.valueOf("S6:T7")}, rule);
                }))
                .containsExactly("shown: the sheet Results has conditional formats");
    }

    @Test
    void precisionAsDisplayedIsFound() throws Exception {
        assertThat(linesAfter(book -> {
                    var settings = book.getCTWorkbook().isSetCalcPr()
                            ? book.getCTWorkbook().getCalcPr()
                            : book.getCTWorkbook().addNewCalcPr();
                    settings.setFullPrecision(false);
                }))
                .singleElement()
                .asString()
                .startsWith("shown: the workbook has numbers cut to what is shown");
    }
}
