package tallywell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The document that comes with a summary: where it goes, what it says of the workbook, and nothing by halves. */
class PdfOptionTest {
    private static final String RUN = "samples/cuvette-typed/run.yaml";

    @TempDir
    private Path folder;

    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... args) {
        err.reset();
        return Cli.run(
                new Console(
                        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        false),
                args);
    }

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    private String[] names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(each -> each.getFileName().toString()).sorted().toArray(String[]::new);
        }
    }

    private String text() throws IOException {
        try (PDDocument read = Loader.loadPDF(folder.resolve("out.pdf").toFile())) {
            return new PDFTextStripper().getText(read);
        }
    }

    private String hash(String name) throws Exception {
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(folder.resolve(name)));
        return HexFormat.of().formatHex(digest);
    }

    @Test
    void documentNamesTheWorkbookOfTheSameCallByItsHash() throws Exception {
        assertThat(run("workup", RUN, "-o", at("out.xlsx"), "--pdf", at("out.pdf")))
                .isZero();
        assertThat(names()).containsExactly("out.pdf", "out.xlsx");
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("written: " + at("out.pdf"));
        assertThat(text()).contains("out.xlsx, SHA-256 " + hash("out.xlsx"));
    }

    @Test
    void documentOfManyRunsNamesTheCombinedWorkbook() throws Exception {
        String other = "samples/puree-citric-solids/run.yaml";
        assertThat(run("workup", RUN, other, "-o", at("out.xlsx"), "--pdf", at("out.pdf")))
                .isZero();
        assertThat(text()).contains("Sweet whey", "Elderberry puree").contains("out.xlsx, SHA-256 " + hash("out.xlsx"));
    }

    @Test
    void documentThatExistsIsReplacedOnlyByForceAndThenTheWorkbookStaysToo() throws Exception {
        Files.writeString(folder.resolve("out.pdf"), "mine");
        assertThat(run("workup", RUN, "-o", at("out.xlsx"), "--pdf", at("out.pdf")))
                .isEqualTo(1);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("out.pdf: exists already; use --force");
        assertThat(names()).containsExactly("out.pdf");
        assertThat(folder.resolve("out.pdf")).hasContent("mine");
        Files.delete(folder.resolve("out.pdf"));
        for (String name : List.of("first.xlsx", "second.xlsx")) {
            assertThat(run("workup", RUN, "-o", at(name), "--pdf", at("out.pdf"), "--force"))
                    .isZero();
        }
        assertThat(text()).contains("page 1 of");
    }

    @Test
    void oneNameForTwoOutputsIsRefused() throws Exception {
        assertThat(run("workup", RUN, "-o", at("out.pdf"), "--pdf", at("out.pdf")))
                .isEqualTo(1);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("named for two outputs");
        assertThat(names()).isEmpty();
    }

    @Test
    void folderThatIsMissingIsSaid() throws Exception {
        assertThat(run("workup", RUN, "-o", at("out.xlsx"), "--pdf", at("none/out.pdf")))
                .isEqualTo(1);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("does not exist; make it first");
        assertThat(names()).isEmpty();
    }
}
