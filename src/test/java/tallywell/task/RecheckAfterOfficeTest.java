package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.recheck.Difference;
import tallywell.recheck.Difference.Kind;
import tallywell.report.Office;

/** What another spreadsheet program has opened, computed anew and saved is still checked cell by cell. */
class RecheckAfterOfficeTest {
    @TempDir
    private Path folder;

    private void workUp(Path target, String... samples) throws Exception {
        List<Path> runs = java.util.Arrays.stream(samples)
                .map(sample -> Path.of("samples", sample, "run.yaml"))
                .toList();
        new WorkUp()
                .run(
                        new WorkUp.Request(
                                runs,
                                Optional.empty(),
                                Wanted.summary(target).overwriting(),
                                Instant.parse("2026-10-02T12:05:00Z"),
                                ZoneOffset.UTC,
                                Optional.empty()),
                        Progress.SILENT);
    }

    @Test
    void savedSummaryIsIdenticalAndAChangedReadingIsFoundWithWhatFollows() throws Exception {
        Optional<Path> program = Office.program();
        if (program.isEmpty() && Office.isRequired()) {
            fail("no soffice on the path, but TALLYWELL_REQUIRE_OFFICE=1 asks for it");
        }
        assumeTrue(program.isPresent(), "no soffice on the path: nothing is saved by another program");
        Path from = Files.createDirectories(folder.resolve("from"));
        Path to = Files.createDirectories(folder.resolve("to"));
        workUp(from.resolve("many.xlsx"), "puree-citric-solids", "cuvette-typed");
        workUp(from.resolve("changed.xlsx"), "cuvette-typed");
        // A build that must have the other program takes every sample.
        List<String> samples = Office.isRequired()
                ? List.of("cider-l-malic", "cider-malic-kinetic", "juice-glucose-fructose", "puree-citric-solids")
                : List.of();
        for (String sample : samples) {
            workUp(from.resolve(sample + ".xlsx"), sample);
        }
        byte[] bytes = Files.readAllBytes(from.resolve("changed.xlsx"));
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(bytes));
                OutputStream out = Files.newOutputStream(from.resolve("changed.xlsx"))) {
            Cell cell = book.getSheet("Readings").getRow(10).getCell(3);
            cell.setCellValue(cell.getNumericCellValue() + 0.01);
            book.write(out);
        }
        Office.recalculate(program.get(), from, to, Files.createDirectories(folder.resolve("profile")));
        assertThat(recheck(to.resolve("many.xlsx")).lines()).isEmpty();
        for (String sample : samples) {
            assertThat(recheck(to.resolve(sample + ".xlsx")).lines()).as(sample).isEmpty();
        }
        List<Kind> kinds = recheck(to.resolve("changed.xlsx")).differences().stream()
                .map(Difference::kind)
                .toList();
        assertThat(kinds).startsWith(Kind.READING, Kind.RESULT).hasSizeGreaterThan(3);
        assertThat(kinds).containsOnlyOnce(Kind.READING).containsOnly(Kind.READING, Kind.RESULT);
    }

    private static Recheck.Outcome recheck(Path workbook) throws Exception {
        return new Recheck().run(workbook, Optional.empty());
    }
}
