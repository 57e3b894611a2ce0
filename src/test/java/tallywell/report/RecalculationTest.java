package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.notice.InputException;
import tallywell.plate.Well;
import tallywell.workup.Assay;
import tallywell.workup.Ref;

/**
 * Lets an independent spreadsheet program compute every formula of the workbooks, and compares what it finds with our
 * numbers: as written, after a reading was changed, and after a well was taken out.
 */
class RecalculationTest {
    private static final List<String> RESULTS =
            List.of("value", "n", "cv_percent", "dilution", "value_all", "assigned", "recovery_percent");
    private static final List<String> WELLS =
            List.of("a_before", "a_after", "creep_per_min", "delta_a", "net_delta_a", "value", "path_cm");

    /** Enough to touch every kind of formula; a build that must have the other program takes all. */
    private static final Set<String> CORE = Set.of(
            "cider-changed",
            "cider-no",
            "coupled",
            "difference",
            "excluded-no",
            "groups",
            "juice-changed",
            "kinetic-changed",
            "kinetic-staggered",
            "logistic-4-none",
            "measured-path",
            "measured-path-changed",
            "measured-path-no",
            "measured-path-standards",
            "measured-path-standards-changed",
            "other-form",
            "other-form-millimoles",
            "puree-no",
            "quadratic-1-y-no",
            "vinegar-scarce");

    /** A workbook, what is done to its readings and to its wells, and what it must come to then. */
    private static final class Case {
        private final byte[] workbook;
        private final UnaryOperator<String> readings;
        private final UnaryOperator<String> wells;
        private final Report expected;

        Case(byte[] workbook, UnaryOperator<String> readings, UnaryOperator<String> wells, Report expected) {
            this.workbook = workbook;
            this.readings = readings;
            this.wells = wells;
            this.expected = expected;
        }
    }

    /** A reading that is typed over. */
    private record Typed(int entry, String well, int index, double value) {}

    @TempDir
    Path folder;

    @Test
    void everyFormulaGivesOurNumbersInAnotherProgram() throws Exception {
        Optional<Path> program = Office.program();
        if (program.isEmpty() && Office.isRequired()) {
            fail("no soffice on the path, but TALLYWELL_REQUIRE_OFFICE=1 asks for it");
        }
        assumeTrue(program.isPresent(), "no soffice on the path: formulas are not recalculated by another program");
        Map<String, Case> cases = cases();
        Path from = Files.createDirectories(folder.resolve("from"));
        Path to = Files.createDirectories(folder.resolve("to"));
        for (Map.Entry<String, Case> each : cases.entrySet()) {
            Case one = each.getValue();
            Files.write(from.resolve(each.getKey() + ".xlsx"), edited(one));
        }
        Office.recalculate(program.get(), from, to, Files.createDirectories(folder.resolve("profile")));
        for (Map.Entry<String, Case> each : cases.entrySet()) {
            Path result = to.resolve(each.getKey() + ".xlsx");
            assertThat(result).exists();
            try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(result))) {
                compare(each.getKey(), book, each.getValue().expected);
                Formulas.assertNoErrors(each.getKey(), book);
            }
        }
    }

    private static Map<String, Case> cases() throws InputException, IOException {
        Map<String, Case> cases = new TreeMap<>();
        for (Map.Entry<String, Assay> each : Variants.all().entrySet()) {
            Report report = SampleRuns.report(each.getValue());
            byte[] workbook = write(report);
            cases.put(each.getKey(), new Case(workbook, UnaryOperator.identity(), UnaryOperator.identity(), report));
            changes(each.getKey(), each.getValue(), workbook, cases);
        }
        cases.keySet().removeIf(name -> !isWanted(name));
        return cases;
    }

    private static boolean isWanted(String name) {
        return Office.isRequired() || CORE.contains(name);
    }

    private static void changes(String name, Assay assay, byte[] workbook, Map<String, Case> cases)
            throws InputException, IOException {
        switch (name) {
            case "cider", "excluded", "line-1-y", "quadratic-none", "quadratic-1-y", "line-through-zero-1-x" -> {
                // A sample, a blank and a standard.
                List<Typed> typed = List.of(
                        new Typed(1, "B1", 0, 0.8123), new Typed(0, "F7", 0, 0.1011), new Typed(1, "C2", 0, 0.5399));
                cases.put(name + "-changed", changed(assay, workbook, typed));
                cases.put(name + "-no", without(assay, workbook, List.of("C1", "C6", "B7")));
            }
            case "puree" -> {
                cases.put(name + "-changed", changed(assay, workbook, List.of(new Typed(1, "C2", 0, 1.36))));
                cases.put(name + "-no", without(assay, workbook, List.of("C2")));
            }
            case "juice" ->
                cases.put(name + "-changed", changed(assay, workbook, List.of(new Typed(1, "B1", 0, 0.3512))));
            case "kinetic" -> {
                // By little, so that the same finished part is chosen.
                double after = assay.readings().get(0).series().absorbance(new Well(1, 2), 80);
                List<Typed> typed = List.of(new Typed(0, "B3", 5, 0.1066), new Typed(0, "B3", 80, after + 0.0002));
                cases.put(name + "-changed", changed(assay, workbook, typed));
                cases.put(name + "-no", without(assay, workbook, List.of("B3")));
            }
            case "measured-path", "measured-path-standards" -> {
                // Both readings of a light path, one of a blank's, and an absorbance.
                List<Typed> typed = List.of(
                        new Typed(2, "B1", 0, 0.2201),
                        new Typed(3, "B1", 0, 0.0622),
                        new Typed(2, "A1", 0, 0.2111),
                        new Typed(1, "B2", 0, 0.603));
                cases.put(name + "-changed", changed(assay, workbook, typed));
                cases.put(name + "-no", without(assay, workbook, List.of("B2")));
            }
            default -> {}
        }
    }

    private static Case changed(Assay assay, byte[] workbook, List<Typed> typed) throws InputException, IOException {
        Assay other = assay;
        for (Typed each : typed) {
            other = Variants.changed(
                    other, each.entry(), Well.parse(each.well()).orElseThrow(), each.index(), each.value());
        }
        Report expected = SampleRuns.report(other);
        ReadingGrid grid = new ReadingGrid(expected.analysis());
        UnaryOperator<String> change = xml -> {
            String now = xml;
            for (Typed each : typed) {
                Well well = Well.parse(each.well()).orElseThrow();
                String cell =
                        grid.cell(well, new Ref(each.entry(), each.index())).replace("Readings!", "");
                now = number(now, cell, each.value());
            }
            return now;
        };
        return new Case(workbook, change, UnaryOperator.identity(), expected);
    }

    private static Case without(Assay assay, byte[] workbook, List<String> wells) throws InputException {
        StringBuilder all = new StringBuilder(String.join(" ", wells));
        assay.exclusions().keySet().forEach(each -> all.append(' ').append(each));
        Report expected = SampleRuns.report(Variants.excluding(assay, all.toString(), "typed into the workbook"));
        WellPlaces places = new WellPlaces(expected.analysis());
        UnaryOperator<String> change = xml -> {
            String now = xml;
            for (String well : wells) {
                for (int step = 1; step <= expected.analysis().steps().size(); step++) {
                    int row = places.row(step, Well.parse(well).orElseThrow());
                    now = unused(now, At.cell(row, WellColumns.USED.column()));
                }
            }
            return now;
        };
        return new Case(workbook, UnaryOperator.identity(), change, expected);
    }

    private static String unused(String xml, String cell) {
        String changed = xml.replaceFirst("(<c r=\"" + cell + "\"[^>]*><is><t[^>]*>)yes(</t>)", "$1no$2");
        assertThat(changed).as("used in " + cell).isNotEqualTo(xml);
        return changed;
    }

    private static String number(String xml, String cell, double value) {
        String changed = xml.replaceFirst("(<c r=\"" + cell + "\"[^>]*><v>)[^<]*", "$1" + value);
        assertThat(changed).as("reading in " + cell).isNotEqualTo(xml);
        return changed;
    }

    private static byte[] write(Report report) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new SummaryWorkbook().write(report, out);
        return out.toByteArray();
    }

    /** Takes the results of all formulas out, so that the other program must compute them, and makes one change. */
    private static byte[] edited(Case one) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(one.workbook));
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                byte[] bytes = in.readAllBytes();
                if (entry.getName().startsWith("xl/worksheets/sheet")) {
                    String xml = new String(bytes, StandardCharsets.UTF_8);
                    if (entry.getName().endsWith("sheet3.xml")) {
                        xml = one.wells.apply(xml);
                    } else if (entry.getName().endsWith("sheet5.xml")) {
                        xml = one.readings.apply(xml);
                    }
                    bytes = xml.replaceAll("</f><v>[^<]*</v>", "</f>").getBytes(StandardCharsets.UTF_8);
                }
                zip.putNextEntry(new ZipEntry(entry.getName()));
                zip.write(bytes);
                zip.closeEntry();
            }
        }
        return out.toByteArray();
    }

    private static void compare(String name, XSSFWorkbook book, Report expected) throws Exception {
        compare(name, book.getSheet("Results"), TablesTest.parse(TablesTest.results(expected)), RESULTS);
        compare(name, book.getSheet("Wells"), TablesTest.parse(TablesTest.wells(expected)), WELLS);
    }

    private static void compare(String name, XSSFSheet sheet, List<CSVRecord> expected, List<String> columns) {
        Row head = sheet.getRow(0);
        for (int i = 0; i < expected.size(); i++) {
            Row row = sheet.getRow(i + 1);
            for (Cell title : head) {
                String column = title.getStringCellValue();
                if (columns.contains(column)) {
                    String what = name + ", " + sheet.getSheetName() + " "
                            + new org.apache.poi.ss.util.CellReference(i + 1, title.getColumnIndex()).formatAsString()
                            + " (" + column + ")";
                    agree(
                            what,
                            row.getCell(title.getColumnIndex()),
                            expected.get(i).get(column));
                }
            }
        }
    }

    private static void agree(String what, Cell cell, String expected) {
        CellType type = cell == null
                ? CellType.BLANK
                : cell.getCellType() == CellType.FORMULA ? cell.getCachedFormulaResultType() : cell.getCellType();
        if (expected.isEmpty()) {
            assertThat(type == CellType.BLANK
                            || type == CellType.STRING
                                    && cell.getStringCellValue().isEmpty())
                    .as(what + " is empty but was " + cell)
                    .isTrue();
            return;
        }
        assertThat(type).as(what + ", " + expected + " against " + cell).isEqualTo(CellType.NUMERIC);
        double wanted = Double.parseDouble(expected);
        double tolerance = Math.max(1e-9 * Math.abs(wanted), 1e-13);
        assertThat(cell.getNumericCellValue())
                .as(what)
                .isCloseTo(wanted, org.assertj.core.data.Offset.offset(tolerance));
    }
}
