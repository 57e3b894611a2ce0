package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.notice.OutputException;

/** Pictures that come with a run: which files, which sheet, and nothing by halves. */
class ChartsTest {
    private static final Path KINETIC = Path.of("samples/cider-malic-kinetic/run.yaml");
    private static final Path END_POINT = Path.of("samples/cider-l-malic/run.yaml");

    @TempDir
    private Path folder;

    private WorkUp.Outcome run(String charts, Path... runs) throws Exception {
        return new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(runs),
                                Optional.empty(),
                                new Wanted(
                                        Optional.of(folder.resolve("out.xlsx")),
                                        Optional.empty(),
                                        charts.isEmpty() ? Optional.empty() : Optional.of(folder.resolve(charts)),
                                        Optional.empty(),
                                        Optional.empty(),
                                        false),
                                Instant.EPOCH,
                                ZoneOffset.UTC,
                                Optional.empty()),
                        Progress.SILENT);
    }

    private List<String> names(Path in) throws IOException {
        try (Stream<Path> files = Files.list(in)) {
            return files.map(each -> each.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void plateAndFlaggedWellsAreWrittenInBothForms() throws Exception {
        WorkUp.Outcome outcome = run("charts", KINETIC);
        List<String> names = names(folder.resolve("charts"));
        assertThat(names)
                .contains("plate-traces.png", "plate-traces.svg", "trace-E8.png", "trace-H2.svg", "trace-H8.png")
                .doesNotContain("trace-A1.png")
                .allMatch(name -> name.matches("(plate-traces|trace-[A-H]\\d+)[.](png|svg)"));
        assertThat(outcome.written())
                .hasSize(1 + names.size())
                .allSatisfy(each -> assertThat(each).isNotEmptyFile());
    }

    @Test
    void endPointsHaveNoTraceWhichIsSaidAndNothingIsWritten() throws Exception {
        WorkUp.Outcome outcome = run("charts", END_POINT);
        assertThat(outcome.notices())
                .singleElement()
                .satisfies(notice ->
                        assertThat(notice.toString()).contains("cider-l-malic").contains("there is no trace to draw"));
        assertThat(names(folder)).containsExactly("out.xlsx");
    }

    @Test
    void manyRunsGetAFolderEach() throws Exception {
        WorkUp.Outcome outcome = run("charts", END_POINT, KINETIC);
        assertThat(names(folder.resolve("charts"))).containsExactly("cider-malic-kinetic-run");
        assertThat(names(folder.resolve("charts/cider-malic-kinetic-run"))).contains("plate-traces.png");
        assertThat(outcome.notices()).anyMatch(notice -> notice.toString().contains("no trace to draw"));
    }

    @Test
    void onePictureInTheWayStopsEverything() throws Exception {
        Files.createDirectories(folder.resolve("charts"));
        Path mine = Files.writeString(folder.resolve("charts/trace-H2.svg"), "mine");
        assertThatThrownBy(() -> run("charts", KINETIC))
                .isInstanceOf(OutputException.class)
                .hasMessageContaining("trace-H2.svg")
                .hasMessageContaining("--force");
        assertThat(mine).hasContent("mine");
        assertThat(names(folder.resolve("charts"))).containsExactly("trace-H2.svg");
        assertThat(names(folder)).containsExactly("charts");
    }

    @Test
    void workbookOfAKineticRunHasItsTracesAndStaysSmall() throws Exception {
        run("", KINETIC);
        Path first = Files.move(folder.resolve("out.xlsx"), folder.resolve("first.xlsx"));
        run("", KINETIC);
        assertThat(folder.resolve("out.xlsx")).hasSameBinaryContentAs(first);
        assertThat(Files.size(first)).isLessThan(1_200_000);
        try (InputStream in = Files.newInputStream(first);
                XSSFWorkbook book = new XSSFWorkbook(in)) {
            List<String> sheets = new ArrayList<>();
            book.forEach(sheet -> sheets.add(sheet.getSheetName()));
            assertThat(sheets).endsWith("Plate", "Checks", "Provenance", "Budget", "Traces", "Inputs");
            assertThat(book.getAllPictures().size())
                    .isEqualTo(book.getSheet("Traces")
                            .getDrawingPatriarch()
                            .getShapes()
                            .size())
                    .isBetween(4, 25);
        }
    }

    @Test
    void workbookOfEndPointsHasNoSuchSheet() throws Exception {
        run("", END_POINT);
        try (InputStream in = Files.newInputStream(folder.resolve("out.xlsx"));
                XSSFWorkbook book = new XSSFWorkbook(in)) {
            assertThat(book.getSheet("Traces")).isNull();
        }
    }

    @Test
    void foldersAreNamedByAsMuchAsTellsRunsApart() {
        assertThat(ChartFolders.of(List.of(Path.of("a/monday.yaml"), Path.of("a/tuesday.yaml"))))
                .containsExactly("monday", "tuesday");
        assertThat(ChartFolders.of(List.of(Path.of("x/a/run.yaml"), Path.of("x/b/run.yaml"))))
                .containsExactly("a-run", "b-run");
        assertThat(ChartFolders.of(List.of(Path.of("x/a/run.yaml"), Path.of("x/a/run.yaml"))))
                .doesNotHaveDuplicates()
                .containsExactly("a-run", "a-run-2");
    }
}
