package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.recheck.Difference;
import tallywell.recheck.Difference.Kind;
import tallywell.report.CarriedFile;

class RecheckTest {
    private static final Instant TIME = Instant.parse("2026-10-02T12:05:00Z");
    private static final Path TYPED = Path.of("samples/cuvette-typed/run.yaml");
    private static final List<String> FILES =
            List.of("run.yaml", "method.yaml", "samples.csv", "before.csv", "after.csv");

    private static final int CHANGES = 300;

    private static byte[] small = {};

    @TempDir
    private Path folder;

    @BeforeAll
    static void workUpOnce(@TempDir Path once) throws Exception {
        RecheckTest test = new RecheckTest();
        test.folder = once;
        small = Files.readAllBytes(test.workUp(TYPED));
    }

    /** Something that is done to a workbook. */
    private interface Change {
        void to(XSSFWorkbook book) throws IOException;
    }

    private Path workUp(Path... runs) throws Exception {
        return workUp(List.of(runs), Optional.empty(), Optional.empty());
    }

    private Path workUp(List<Path> runs, Optional<AdHocRun> adHoc, Optional<Draws> draws) throws Exception {
        Path target = folder.resolve("report.xlsx");
        new WorkUp()
                .run(
                        new WorkUp.Request(
                                runs,
                                adHoc,
                                Wanted.summary(target).overwriting(),
                                TIME,
                                ZoneId.of("Europe/Zurich"),
                                draws),
                        Progress.SILENT);
        return target;
    }

    private static Recheck.Outcome recheck(Path workbook) throws Exception {
        return new Recheck().run(workbook, Optional.empty());
    }

    /** The summary of the small sample, made once. */
    private Path typed() throws Exception {
        return Files.write(folder.resolve("report.xlsx"), small);
    }

    private Recheck.Outcome changed(Path run, Change change) throws Exception {
        Path workbook = run.equals(TYPED) ? typed() : workUp(run);
        edit(workbook, change);
        return recheck(workbook);
    }

    private static void edit(Path workbook, Change change) throws IOException {
        byte[] bytes = Files.readAllBytes(workbook);
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(bytes));
                OutputStream out = Files.newOutputStream(workbook)) {
            change.to(book);
            book.write(out);
        }
    }

    private static Cell cell(XSSFWorkbook book, String sheet, String address) {
        CellReference at = new CellReference(address);
        return book.getSheet(sheet).getRow(at.getRow()).getCell(at.getCol());
    }

    private static Cell holding(XSSFWorkbook book, String sheet, String text) {
        for (Row row : book.getSheet(sheet)) {
            for (Cell cell : row) {
                if (cell.getCellType() == CellType.STRING
                        && cell.getStringCellValue().contains(text)) {
                    return cell;
                }
            }
        }
        throw new AssertionError("no cell of " + sheet + " holds " + text);
    }

    /** Types a text over a cell; setting a text that stands in its cell would leave the old one beside the new. */
    private static void type(Cell cell, String text) {
        cell.getRow().createCell(cell.getColumnIndex()).setCellValue(text);
    }

    private static List<Kind> kinds(Recheck.Outcome outcome) {
        return outcome.differences().stream().map(Difference::kind).toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"juice-glucose-fructose", "puree-citric-solids"})
    void untouchedSummaryIsIdentical(String sample) throws Exception {
        Path workbook = workUp(Path.of("samples", sample, "run.yaml"));
        Recheck.Outcome outcome = new Recheck().run(workbook, Optional.of(Path.of("samples", sample)));
        assertThat(outcome.lines()).isEmpty();
        assertThat(outcome.notices()).isEmpty();
        assertThat(outcome.sentence()).startsWith("identical; 1 run");
    }

    @Test
    void summaryOfManyRunsIsIdentical() throws Exception {
        Path workbook = workUp(TYPED, Path.of("samples/puree-citric-solids/run.yaml"));
        assertThat(recheck(workbook).lines()).isEmpty();
        assertThat(recheck(workbook).sentence()).startsWith("identical; 2 runs");
        edit(workbook, book -> cell(book, "Results", "G3").setCellValue(9.99));
        assertThat(recheck(workbook).lines()).singleElement().asString().contains("Results!G3", "is 9.99");
    }

    @Test
    void runWithoutRunFileIsIdentical() throws Exception {
        Path samples = TYPED.resolveSibling("samples.csv");
        AdHocRun run = new AdHocRun(
                TYPED.resolveSibling("method.yaml").toString(),
                Path.of("plate-layouts/24-nine-in-duplicate.yaml"),
                Optional.of(samples),
                List.of(TYPED.resolveSibling("before.csv"), TYPED.resolveSibling("after.csv")),
                List.of());
        Path workbook = workUp(List.of(), Optional.of(run), Optional.of(new Draws(1000, 7)));
        assertThat(recheck(workbook).lines()).isEmpty();
    }

    @Test
    void workbookStandsAloneWhereverItsInputsWere() throws Exception {
        Path home = Files.createDirectory(folder.resolve("home"));
        for (String name : FILES) {
            Files.copy(TYPED.resolveSibling(name), home.resolve(name));
        }
        Path layout = Files.copy(Path.of("plate-layouts/24-nine-in-duplicate.yaml"), home.resolve("drawn.yaml"));
        String run = Files.readString(home.resolve("run.yaml")).replaceAll("layout: .*", "layout: drawn.yaml");
        Files.writeString(home.resolve("run.yaml"), run);
        Path workbook = workUp(home.resolve("run.yaml"));
        assertThat(new Recheck().run(workbook, Optional.of(home)).lines()).isEmpty();
        Files.writeString(layout, Files.readString(layout) + "\n");
        assertThat(new Recheck().run(workbook, Optional.of(home)).lines())
                .singleElement()
                .asString()
                .startsWith("input: ")
                .contains("drawn.yaml", "is not the file that was read", "SHA-256 was ");
        Files.delete(layout);
        assertThat(new Recheck().run(workbook, Optional.of(home)).lines())
                .singleElement()
                .asString()
                .contains("drawn.yaml", "is not found in");
        assertThat(recheck(workbook).lines()).isEmpty();
    }

    @Test
    void changedReadingIsNamedWithItsWell() throws Exception {
        Recheck.Outcome outcome = changed(TYPED, book -> {
            Cell cell = cell(book, "Readings", "C10");
            cell.setCellValue(cell.getNumericCellValue() + 0.0001);
        });
        assertThat(kinds(outcome)).containsExactly(Kind.READING);
        assertThat(outcome.lines())
                .singleElement()
                .asString()
                .matches(
                        "reading: Readings!C10 \\(well [A-H][0-9]+\\): the reading was changed: was [0-9.]+, is [0-9.]+");
    }

    @Test
    void overwrittenFormulaIsToldFromAChangedOne() throws Exception {
        Recheck.Outcome outcome = changed(TYPED, book -> {
            Cell cell = cell(book, "Results", "G4");
            double value = cell.getNumericCellValue();
            cell.removeFormula();
            cell.setCellValue(value);
            cell(book, "Results", "G5").setCellFormula("G6*1");
        });
        assertThat(kinds(outcome)).startsWith(Kind.OVERWRITTEN, Kind.FORMULA);
        assertThat(outcome.lines().get(0))
                .contains("Results!G4 (sample ", "value): a formula was overwritten: it gave");
        assertThat(outcome.lines().get(1))
                .contains("Results!G5 (sample ", "the formula was changed: was =", "is =G6*1");
    }

    @Test
    void resultTypedOverIsFound() throws Exception {
        Recheck.Outcome outcome = changed(TYPED, book -> {
            Cell u = cell(book, "Results", "I4");
            u.setCellValue(u.getNumericCellValue() / 2);
            type(cell(book, "Results", "R4"), "report!");
        });
        assertThat(kinds(outcome)).containsExactly(Kind.VALUE, Kind.VALUE);
        assertThat(outcome.lines()).anySatisfy(line -> assertThat(line).contains("Results!I4 (sample ", ", u): was "));
    }

    @Test
    void changedReasonOfAnExclusionIsFound() throws Exception {
        Path home = Files.createDirectory(folder.resolve("home"));
        for (String name : FILES.subList(1, FILES.size())) {
            Files.copy(TYPED.resolveSibling(name), home.resolve(name));
        }
        String layouts = Path.of("plate-layouts").toAbsolutePath().toString().replace('\\', '/');
        String run = Files.readString(TYPED).replace("../../plate-layouts", layouts);
        String excluded = run + "\nexclude:\n  - {wells: \"C5\", reason: \"seen by eye\", by: \"J. Doe\"}\n";
        Files.writeString(home.resolve("run.yaml"), excluded);
        Recheck.Outcome outcome =
                changed(home.resolve("run.yaml"), book -> type(holding(book, "Provenance", "seen by eye"), "bubble"));
        assertThat(outcome.lines())
                .singleElement()
                .asString()
                .startsWith("value: Provenance!B")
                .contains("was 'seen by eye', is 'bubble'");
    }

    @Test
    void otherVersionIsSaidAndIsNoDifferenceByItself() throws Exception {
        Recheck.Outcome outcome = changed(TYPED, book -> {
            List<Cell> cells = new ArrayList<>();
            for (Sheet sheet : book) {
                for (Row row : sheet) {
                    for (Cell cell : row) {
                        if (cell.getCellType() == CellType.STRING
                                && cell.getStringCellValue().contains(Version.text())
                                && (!sheet.getSheetName().equals("Inputs")
                                        || row.getCell(1).toString().equals("version"))) {
                            cells.add(cell);
                        }
                    }
                }
            }
            cells.forEach(cell -> type(cell, cell.getStringCellValue().replace(Version.text(), "0.0.7")));
        });
        assertThat(outcome.lines()).isEmpty();
        assertThat(outcome.notices()).singleElement().asString().contains("version 0.0.7", "version " + Version.text());
    }

    @Test
    void changedInputIsFoundAndWhatFollowsFromIt() throws Exception {
        Recheck.Outcome outcome = changed(TYPED, book -> {
            type(holding(book, "Inputs", "operator:"), "operator: \"A. Nother\"");
        });
        assertThat(outcome.lines().get(0))
                .startsWith("input: Inputs: ")
                .contains("run.yaml (run) was changed in the workbook: SHA-256 was ");
        assertThat(outcome.lines()).anySatisfy(line -> assertThat(line).contains("Provenance!", "A. Nother"));
    }

    @Test
    void inputThatCannotBeReadAnyMoreIsADifferenceToo() throws Exception {
        Recheck.Outcome outcome =
                changed(TYPED, book -> type(holding(book, "Inputs", "tallywell: run/1"), "tallywell: ruin/1"));
        assertThat(kinds(outcome)).containsExactly(Kind.INPUT);
        assertThat(outcome.notices())
                .anySatisfy(notice -> assertThat(notice.toString()).startsWith(TYPED.toString()))
                .anySatisfy(notice -> assertThat(notice.toString()).contains("cannot be worked up again"));
    }

    @Test
    void missingAndAddedSheetsAreNamed() throws Exception {
        Recheck.Outcome outcome = changed(TYPED, book -> {
            book.removeSheetAt(book.getSheetIndex("Checks"));
            book.createSheet("Notes of mine").createRow(0).createCell(0).setCellValue("hello");
        });
        assertThat(outcome.lines())
                .containsExactly("sheet: the sheet Checks is missing", "sheet: the sheet 'Notes of mine' was added");
    }

    @Test
    void everyNumberChangedAtRandomIsFound() throws Exception {
        long seed = 20261002;
        Random random = new Random(seed);
        Path workbook = workUp(Path.of("samples/cider-l-malic/run.yaml"));
        List<String> changed = new ArrayList<>();
        edit(workbook, book -> {
            List<Cell> numbers = new ArrayList<>();
            for (Sheet sheet : book) {
                for (Row row : sheet) {
                    row.forEach(cell -> {
                        if (isNumber(cell) && !sheet.getSheetName().equals("Inputs")) {
                            numbers.add(cell);
                        }
                    });
                }
            }
            for (int i = 0; i < CHANGES; i++) {
                Cell cell = numbers.remove(random.nextInt(numbers.size()));
                double value = cell.getNumericCellValue();
                double other = value == 0 ? 1e-6 : value * (1 + (random.nextBoolean() ? 1e-6 : -1e-6));
                cell.setCellValue(other);
                changed.add(cell.getSheet().getSheetName() + "!" + cell.getAddress());
            }
        });
        List<String> found = recheck(workbook).differences().stream()
                .map(each -> each.text().split("[ :]", 2)[0])
                .toList();
        assertThat(found).as("seed %d", seed).containsExactlyInAnyOrderElementsOf(changed);
    }

    private static boolean isNumber(Cell cell) {
        // A value written into a formula cell stays beside its formula; creep and the like near nothing are let pass.
        boolean shown = cell.getCellType() == CellType.NUMERIC
                || cell.getCellType() == CellType.FORMULA && cell.getCachedFormulaResultType() == CellType.NUMERIC;
        return shown && (cell.getNumericCellValue() == 0 || Math.abs(cell.getNumericCellValue()) > 1e-5);
    }

    @Test
    void truncatedFileIsRefused() throws Exception {
        Path workbook = typed();
        byte[] bytes = Files.readAllBytes(workbook);
        for (int length : new int[] {0, 10, 2000, bytes.length / 2, bytes.length - 30}) {
            Files.write(workbook, Arrays.copyOf(bytes, length));
            assertThatThrownBy(() -> recheck(workbook))
                    .isInstanceOf(InputException.class)
                    .hasMessageContaining(
                            "report.xlsx: found no whole xlsx file; expected a workbook that 'workup' wrote");
        }
    }

    @Test
    void workbookOfAnotherOriginIsRefused() throws Exception {
        Path other = folder.resolve("other.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(other)) {
            book.createSheet("Inputs").createRow(0).createCell(0).setCellValue("run of the mill");
            book.write(out);
        }
        assertThatThrownBy(() -> recheck(other))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found no sheet 'Inputs' that names a run");
        assertThatThrownBy(() -> recheck(folder.resolve("nowhere.xlsx")))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("the file does not exist");
    }

    @Test
    void inputTakenOutIsMissedUnlessItsOriginalIsAtHand() throws Exception {
        Path workbook = typed();
        edit(workbook, book -> {
            Row file = null;
            for (Row row : book.getSheet("Inputs")) {
                if (row.getCell(3) != null && row.getCell(3).toString().equals("before.csv")) {
                    file = row;
                }
            }
            type(file.getCell(5), "left out");
            file.getCell(7).setCellValue(0);
        });
        assertThatThrownBy(() -> recheck(workbook))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("the workbook does not hold")
                .hasMessageContaining("--against");
        assertThat(new Recheck().run(workbook, Optional.of(TYPED.getParent())).lines())
                .allSatisfy(line -> assertThat(line).startsWith("value: Inputs!"));
    }

    @Test
    void nothingUnpackedIsLeftBehind() throws Exception {
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        Path workbook = typed();
        List<Path> before = unpacked(temporary);
        recheck(workbook);
        assertThat(unpacked(temporary)).isEqualTo(before);
    }

    @Test
    void nothingIsLeftBehindWhereAFileCannotBeUnpacked() throws Exception {
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        List<Path> before = unpacked(temporary);
        CarriedFile good = new CarriedFile("run", "a", "a.yaml", "", new byte[3]);
        // Longer than any file system allows.
        CarriedFile bad = new CarriedFile("layout", "b", "b".repeat(5000), "", new byte[3]);
        assertThatThrownBy(() -> new CarriedFiles(folder, List.of(good, bad)))
                .isInstanceOf(OutputException.class)
                .hasMessageContaining("what the workbook carries cannot be unpacked");
        assertThat(unpacked(temporary)).isEqualTo(before);
    }

    private static List<Path> unpacked(Path temporary) throws IOException {
        try (Stream<Path> files = Files.list(temporary)) {
            return files.filter(each -> each.getFileName().toString().startsWith("tallywell"))
                    .sorted()
                    .toList();
        }
    }
}
