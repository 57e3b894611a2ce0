package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of U where nothing but scatter is in it, and of a dilution that the list forgot, on every way out. */
class ScatterOnlyTest {
    private static final String PROMISE = "In 95 of 100 cases";

    @TempDir
    private Path folder;

    private record Out(String results, String json, String workbook, String document, String console) {}

    private Out workUp(String method, String samples) throws Exception {
        Path source = Path.of("samples/cider-l-malic");
        for (String name : List.of("before.csv", "after.csv")) {
            Files.copy(source.resolve(name), folder.resolve(name));
        }
        Files.copy(Path.of("plate-layouts/thirty-six-with-controls.yaml"), folder.resolve("layout.yaml"));
        Files.writeString(folder.resolve("method.yaml"), method);
        Files.writeString(folder.resolve("samples.csv"), samples);
        Files.writeString(folder.resolve("run.yaml"), """
                tallywell: run/1
                method: method.yaml
                layout: layout.yaml
                samples: samples.csv
                readings:
                  - {file: before.csv}
                  - {file: after.csv, trigger: before}
                """);
        Path book = folder.resolve("out.xlsx");
        Wanted wanted = new Wanted(
                Optional.of(book),
                Optional.of(folder.resolve("tables")),
                Optional.empty(),
                Optional.of(folder.resolve("out.pdf")),
                Optional.of(folder.resolve("package")),
                false);
        WorkUp.Outcome done = new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(folder.resolve("run.yaml")),
                                Optional.empty(),
                                wanted,
                                Instant.EPOCH,
                                ZoneOffset.UTC,
                                Optional.empty()),
                        Progress.SILENT);
        return new Out(
                Files.readString(folder.resolve("tables/results.csv")),
                Files.readString(folder.resolve("package/results.json")),
                cells(book),
                text(folder.resolve("out.pdf")),
                String.join("\n", done.lines()));
    }

    private static String cells(Path book) throws IOException {
        StringBuilder text = new StringBuilder();
        DataFormatter format = new DataFormatter(java.util.Locale.ROOT);
        try (var workbook = WorkbookFactory.create(book.toFile())) {
            for (String name : List.of("Summary", "Results", "Budget")) {
                workbook.getSheet(name)
                        .forEach(row -> row.forEach(cell ->
                                text.append(format.formatCellValue(cell)).append('\n')));
            }
        }
        return text.toString();
    }

    private static String text(Path document) throws IOException {
        try (var pages = Loader.loadPDF(document.toFile())) {
            return new PDFTextStripper().getText(pages).replaceAll("\\s+", " ");
        }
    }

    private static String method(String uncertainty) throws IOException {
        return Files.readString(Path.of("samples/cider-l-malic/method.yaml")) + uncertainty;
    }

    private static String samples() throws IOException {
        return Files.readString(Path.of("samples/cider-l-malic/samples.csv"));
    }

    /** The absorptivity is stated, but standards make the calibration, so that it does not act. */
    @Test
    void sourceThatDoesNotActLeavesScatterOnlyOnEveryWayOut() throws Exception {
        Out out = workUp(method("uncertainty: {absorptivity: {tolerance: 1.3 %}}\n"), samples());
        assertThat(out.results().lines().skip(1).filter(line -> line.contains(",,,scatter only")))
                .hasSizeGreaterThan(30);
        assertThat(out.results()).doesNotContain(",budget");
        assertThat(out.json()).contains("\"uBasis\": \"scatter only\"").doesNotContain("\"uBasis\": \"budget\"");
        assertThat(out.workbook()).contains("± U, scatter only").doesNotContain(PROMISE, "95 % coverage");
        assertThat(out.document()).contains("± U, scatter only").doesNotContain(PROMISE, "95 % coverage");
        assertThat(out.console()).contains("Every U is scatter only.");
    }

    @Test
    void sourceThatActsMakesABudget() throws Exception {
        Out out = workUp(method("uncertainty: {standard: {expanded: 1 %}}\n"), samples());
        assertThat(out.results()).contains(",budget").doesNotContain("scatter only");
        assertThat(out.json()).contains("\"uBasis\": \"budget\"").doesNotContain("scatter only");
        assertThat(out.workbook()).contains(PROMISE).doesNotContain("scatter only");
        assertThat(out.document()).contains("95 % coverage").doesNotContain("scatter only");
        assertThat(out.console()).doesNotContain("scatter only");
    }

    /** The dilution acts on diluted samples only: the others are named, and nothing is promised of all. */
    @Test
    void undilutedSamplesAreNamedWhereOnlyTheDilutionIsStated() throws Exception {
        Out out = workUp(method("uncertainty: {dilution: {standard: 1 %}}\n"), samples());
        assertThat(out.results()).contains(",budget", ",scatter only");
        assertThat(out.workbook()).contains("± U scatter only").doesNotContain(PROMISE);
        assertThat(out.document()).contains("± U scatter only");
        assertThat(out.console()).containsPattern("U of \\d+ of \\d+ results is scatter only\\.");
    }

    @Test
    void forgottenDilutionIsToBeCheckedOnEveryWayOutAndAStatedOneIsNot() throws Exception {
        Out out = workUp(method(""), samples().replace("1,Tank 1 must,1+19,", "1,Tank 1 must,,"));
        assertThat(out.results().lines().filter(line -> line.contains("dilution-assumed")))
                .singleElement()
                .satisfies(line -> assertThat(line).contains("Tank 1 must").contains(",check,"));
        assertThat(out.json()).contains("dilution-assumed");
        assertThat(out.workbook()).contains("no dilution in the sample list", "Dilution");
        assertThat(out.document()).contains("no dilution in", "Dilution");
    }

    @Test
    void listWithoutAnyDilutionIsToBeCheckedOnlyWhereTheMethodDilutesEverything() throws Exception {
        String bare = samples().replaceAll("(?m)^(\\d+,(?:\"[^\"]*\"|[^,]*)),[^,]*,", "$1,,");
        assertThat(workUp(method(""), bare).results()).doesNotContain("dilution-assumed");
    }

    @Test
    void listWithoutAnyDilutionIsFlaggedWhereTheMethodDilutesEverything() throws Exception {
        String bare = samples().replaceAll("(?m)^(\\d+,(?:\"[^\"]*\"|[^,]*)),[^,]*,", "$1,,");
        String usual = "dilutions:\n  - {matrix: cider, content: 0.1-8 g/L, dilution: 20}\n";
        assertThat(workUp(method(usual), bare).results().lines().skip(1).filter(line -> line.contains(",sample,")))
                .allMatch(line -> line.contains("dilution-assumed"));
    }
}
