package tallywell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RecheckCommandTest {
    private static final String RUN = "samples/cuvette-typed/run.yaml";

    @TempDir
    private Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... args) {
        out.reset();
        err.reset();
        return Cli.run(
                new Console(
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        false),
                args);
    }

    private String out() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String err() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void saysIdenticalOrEachDifferenceAndThatItShowsAccidentNotIntent() throws Exception {
        Path report = folder.resolve("report.xlsx");
        run("workup", RUN, "-o", report.toString());
        assertThat(run("recheck", report.toString(), "--against", "samples/cuvette-typed"))
                .as(err())
                .isZero();
        assertThat(out()).isEmpty();
        assertThat(err()).contains("report.xlsx: identical; 1 run worked up again", "accident, not intent");
        byte[] bytes = Files.readAllBytes(report);
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(bytes));
                OutputStream to = Files.newOutputStream(report)) {
            book.getSheet("Readings").getRow(6).getCell(2).setCellValue(0.9);
            book.write(to);
        }
        assertThat(run("recheck", report.toString(), "--quiet")).isEqualTo(3);
        assertThat(out())
                .startsWith("reading: Readings!C7 (well ")
                .contains("is 0.9")
                .hasLineCount(1);
        assertThat(err()).isEmpty();
        assertThat(run("recheck", report.toString())).isEqualTo(3);
        assertThat(err()).contains("report.xlsx: differs (1 × reading)");
    }

    @Test
    void refusesWhatIsNoSummaryAndAFolderThatIsNotThere() throws Exception {
        assertThat(run("recheck", RUN)).isEqualTo(1);
        assertThat(err()).contains(RUN + ": found no whole xlsx file; expected a workbook that 'workup' wrote");
        Path report = folder.resolve("report.xlsx");
        run("workup", RUN, "-o", report.toString());
        assertThat(run("recheck", report.toString(), "--against", "nowhere")).isEqualTo(1);
        assertThat(err()).contains("nowhere: the folder does not exist");
        assertThat(out()).isEmpty();
        assertThat(run("recheck")).isEqualTo(2);
    }

    @Test
    void helpSaysWhatItShowsAndHowItEnds() {
        assertThat(run("recheck", "--help")).isZero();
        assertThat(out()).contains("accident, not intent", "--against=DIR", "3 differs");
        assertThat(run("--help")).isZero();
        assertThat(out()).contains("recheck");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-10-02",
                "2026-10-02T14:05:00",
                "14:05",
                "2026-13-02T14:05:00Z",
                "02.10.2026 14:05",
                "99999-01-01T00:00:00Z",
                "0001-01-01T00:00:00Z",
                ""
            })
    void timeWithoutAllItsPartsIsRefused(String time) {
        assertThat(run("workup", RUN, "-o", folder.resolve("x.xlsx").toString(), "--time", time))
                .isEqualTo(2);
        assertThat(err()).contains("found --time " + time, "expected a");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void givenTimeAndItsOffsetStandInTheSummary() throws Exception {
        Path report = folder.resolve("report.xlsx");
        run("workup", RUN, "-o", report.toString(), "--time", "2026-10-02T14:05:00+05:45");
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(report))) {
            assertThat(book.getSheet("Provenance").getRow(2).getCell(1).getStringCellValue())
                    .isEqualTo("2026-10-02 14:05:00 (UTC+05:45)");
            assertThat(book.getProperties().getCoreProperties().getCreated().toInstant())
                    .hasToString("2026-10-02T08:20:00Z");
        }
    }
}
