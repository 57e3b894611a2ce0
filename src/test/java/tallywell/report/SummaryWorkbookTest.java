package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.ss.formula.FormulaParser;
import org.apache.poi.ss.formula.FormulaType;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFEvaluationWorkbook;
import org.apache.poi.xssf.usermodel.XSSFName;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SummaryWorkbookTest {
    private static final Pattern FUNCTION = Pattern.compile("([A-Z][A-Z0-9.]*)\\(");

    /** Functions that every spreadsheet program has, none of which computes anew without cause. */
    private static final List<String> PLAIN = List.of(
            "IF",
            "OR",
            "AND",
            "ISNUMBER",
            "COUNT",
            "COUNTIF",
            "COUNTIFS",
            "SUM",
            "SUMIFS",
            "SUMPRODUCT",
            "AVERAGE",
            "AVERAGEIFS",
            "STDEV",
            "SQRT",
            "ABS",
            "ROUND",
            "ROUND",
            "MIN",
            "MAX",
            "SLOPE",
            "INTERCEPT");

    static byte[] write(Report report) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new SummaryWorkbook().write(report, out);
        return out.toByteArray();
    }

    private static XSSFWorkbook read(Report report) throws IOException {
        return new XSSFWorkbook(new ByteArrayInputStream(write(report)));
    }

    private static Map<String, byte[]> parts(byte[] workbook) throws IOException {
        Map<String, byte[]> parts = new TreeMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(workbook))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                parts.put(entry.getName(), zip.readAllBytes());
            }
        }
        return parts;
    }

    @Test
    void sheetsStandInTheOrderOfTheFormat() throws Exception {
        try (XSSFWorkbook book = read(SampleRuns.report("cider-l-malic"))) {
            List<String> names = new ArrayList<>();
            book.forEach(sheet -> names.add(sheet.getSheetName()));
            assertThat(names)
                    .containsExactly(
                            "Summary",
                            "Results",
                            "Wells",
                            "Calibration",
                            "Readings",
                            "Plate",
                            "Checks",
                            "Provenance",
                            "Budget");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"cider-l-malic", "juice-glucose-fructose", "cider-malic-kinetic", "puree-citric-solids"})
    void tablesShowWhatTheCsvFilesHold(String folder) throws Exception {
        Report report = SampleRuns.report(folder);
        try (XSSFWorkbook book = read(report)) {
            same(book.getSheet("Results"), TablesTest.parse(TablesTest.results(report)), ResultColumns.titles());
            same(book.getSheet("Wells"), TablesTest.parse(TablesTest.wells(report)), WellColumns.titles());
        }
    }

    private static void same(Sheet sheet, List<CSVRecord> expected, List<String> titles) {
        for (int column = 0; column < titles.size(); column++) {
            assertThat(sheet.getRow(0).getCell(column).getStringCellValue()).isEqualTo(titles.get(column));
        }
        assertThat(sheet.getLastRowNum()).isEqualTo(expected.size());
        for (int i = 0; i < expected.size(); i++) {
            for (int column = 0; column < titles.size(); column++) {
                String wanted = expected.get(i).get(column);
                Cell cell = sheet.getRow(i + 1).getCell(column);
                assertThat(shown(cell, wanted))
                        .as(sheet.getSheetName() + " row " + (i + 1) + " " + titles.get(column))
                        .isEqualTo(wanted);
            }
        }
    }

    private static String shown(Cell cell, String wanted) {
        CellType type = cell.getCellType() == CellType.FORMULA ? cell.getCachedFormulaResultType() : cell.getCellType();
        return switch (type) {
            case NUMERIC -> {
                assertThat(cell.getNumericCellValue()).isEqualTo(Double.parseDouble(wanted));
                yield wanted;
            }
            case BLANK -> "";
            default -> cell.getStringCellValue();
        };
    }

    @Test
    void eachReadingStandsInExactlyOneCellAsANumberOrAWord() throws Exception {
        Report report = SampleRuns.report(Variants.named("marks"));
        try (XSSFWorkbook book = read(report)) {
            Sheet readings = book.getSheet("Readings");
            int numbers = 0;
            List<String> words = new ArrayList<>();
            for (int row = new ReadingGrid(report.analysis()).headRow() + 1; row <= readings.getLastRowNum(); row++) {
                for (int column = ReadingGrid.FIRST_COLUMN; column < 4; column++) {
                    Cell cell = readings.getRow(row).getCell(column);
                    if (cell.getCellType() == CellType.NUMERIC) {
                        numbers++;
                    } else {
                        words.add(cell.getStringCellValue());
                    }
                }
            }
            assertThat(numbers).isEqualTo(2 * 96 - 4);
            assertThat(words).containsExactlyInAnyOrder("over", "over", "missing", "missing");
        }
    }

    @Test
    void formulasAreOfAPlainSetAndShowNoError() throws Exception {
        for (String folder : List.of("cider-malic-kinetic", "juice-glucose-fructose", "puree-citric-solids")) {
            try (XSSFWorkbook book = read(SampleRuns.report(folder))) {
                Formulas.assertNoErrors(folder, book);
                XSSFEvaluationWorkbook all = XSSFEvaluationWorkbook.create(book);
                for (Sheet sheet : book) {
                    for (Row row : sheet) {
                        for (Cell cell : row) {
                            if (cell.getCellType() == CellType.FORMULA) {
                                check(cell, all, book.getSheetIndex(sheet));
                            }
                        }
                    }
                }
            }
        }
    }

    private static void check(Cell cell, XSSFEvaluationWorkbook all, int sheet) {
        String formula = cell.getCellFormula();
        Matcher functions = FUNCTION.matcher(formula.replaceAll("\"[^\"]*\"", ""));
        while (functions.find()) {
            assertThat(PLAIN).as(cell.getAddress() + ": " + formula).contains(functions.group(1));
        }
        assertThat(formula).doesNotContain("#REF").doesNotContain("[");
        assertThat(FormulaParser.parse(formula, all, FormulaType.CELL, sheet)).isNotEmpty();
    }

    @Test
    void sameReportGivesTheSameBytes() throws Exception {
        byte[] once = write(SampleRuns.report("cider-l-malic"));
        Thread.sleep(2100); // longer than the two seconds that times in a zip file are told apart by
        assertThat(write(SampleRuns.report("cider-l-malic"))).isEqualTo(once);
    }

    @Test
    void workbookIsTheSameAfterPreparing() throws Exception {
        byte[] once = write(SampleRuns.report("cuvette-typed"));
        SummaryWorkbook.prepare();
        assertThat(write(SampleRuns.report("cuvette-typed"))).isEqualTo(once);
    }

    @Test
    void namesThatLookLikeFormulasStayText() throws Exception {
        List<String> names = List.of("=1+1", "+A1", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "=cmd|' /C calc'!A0");
        try (XSSFWorkbook book = read(HostileRun.report(names, "=1"))) {
            for (Sheet sheet : book) {
                for (Row row : sheet) {
                    for (Cell cell : row) {
                        if (cell.getCellType() == CellType.STRING && names.contains(cell.getStringCellValue())) {
                            assertThat(cell.getCellStyle().getQuotePrefixed())
                                    .as(sheet.getSheetName() + " " + cell.getAddress())
                                    .isTrue();
                        }
                        if (cell.getCellType() == CellType.FORMULA) {
                            assertThat(cell.getCellFormula())
                                    .doesNotContain("cmd")
                                    .isNotEqualTo("1+1");
                        }
                    }
                }
            }
            Sheet results = book.getSheet("Results");
            for (int i = 0; i < names.size(); i++) {
                assertThat(results.getRow(i + 1).getCell(4).getStringCellValue())
                        .isEqualTo(names.get(i));
            }
        }
    }

    @Test
    void oddNamesComeBackAsTheyAre() throws Exception {
        List<String> names = List.of(
                "cider 🍏 two",
                "סיידר 12",
                "line\nbreak",
                "bell\u0007 and \u0001",
                "_x0041_ stays",
                "<b>&amp;</b>",
                "a]]>b",
                "Tank",
                "tank",
                "n".repeat(10_000));
        try (XSSFWorkbook book = read(HostileRun.report(names, "z".repeat(10_000)))) {
            Sheet results = book.getSheet("Results");
            for (int i = 0; i < names.size(); i++) {
                assertThat(results.getRow(i + 1).getCell(4).getStringCellValue())
                        .isEqualTo(names.get(i));
            }
        }
    }

    @Test
    void halfASurrogatePairDoesNotSpoilTheFile() throws Exception {
        try (XSSFWorkbook book = read(HostileRun.report("half \uD83C pair \uFFFE", ""))) {
            assertThat(book.getSheet("Results").getRow(1).getCell(4).getStringCellValue())
                    .isEqualTo("half \uFFFD pair \uFFFE");
        }
    }

    @Test
    void namesOfCellsLeadSomewhereAndNothingLeadsOutside() throws Exception {
        byte[] workbook = write(SampleRuns.report("juice-glucose-fructose"));
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(workbook))) {
            List<String> names = new ArrayList<>();
            for (XSSFName name : book.getAllNames()) {
                names.add(name.getNameName());
                assertThat(book.getSheet(name.getSheetName()))
                        .as(name.getNameName())
                        .isNotNull();
            }
            assertThat(names)
                    .contains(
                            "results_table", "wells_table", "blank_1", "blank_2", "slope_1", "slope_2", "intercept_2");
            assertThat(book.isMacroEnabled()).isFalse();
        }
        Map<String, byte[]> parts = parts(workbook);
        assertThat(parts.keySet()).noneMatch(name -> name.contains("externalLink") || name.contains("vba"));
        parts.forEach((name, bytes) -> assertThat(new String(bytes, StandardCharsets.UTF_8))
                .as(name)
                .doesNotContain("TargetMode=\"External\""));
    }

    @Test
    void sequentialRunHasAChartForEachStep() throws Exception {
        try (XSSFWorkbook book = read(SampleRuns.report("juice-glucose-fructose"))) {
            assertThat(book.getSheet("Calibration").getDrawingPatriarch().getCharts())
                    .hasSize(2);
        }
    }

    @Test
    void documentSaysWhatItIs() throws Exception {
        try (XSSFWorkbook book = read(SampleRuns.report("cider-l-malic"))) {
            var core = book.getProperties().getCoreProperties();
            assertThat(core.getTitle()).startsWith("Autumn cider");
            assertThat(core.getCreator()).isEqualTo("Odile Brandt");
            assertThat(core.getCreated().toInstant()).isEqualTo(SampleRuns.MADE);
            assertThat(core.getModified().toInstant()).isEqualTo(SampleRuns.MADE);
        }
    }

    @Test
    void extentOfEachSheetIsThatOfItsCells() throws Exception {
        try (XSSFWorkbook book = read(SampleRuns.report("cider-l-malic"))) {
            assertThat(book.getSheet("Readings").getDimension().formatAsString())
                    .isEqualTo("A1:D101");
        }
    }
}
