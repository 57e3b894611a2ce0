package tallywell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** "Lees 12" of the kinetic sample run has not finished when the readings end: that it holds little is not known. */
class UnfinishedHasNoUpperBoundTest {
    @TempDir
    private Path folder;

    @Test
    void summaryAndDocumentSayThatItIsNotDetermined() throws IOException {
        Path book = folder.resolve("run.xlsx");
        Path pages = folder.resolve("run.pdf");
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
        assertThat(Cli.run(
                        new Console(out, out, false),
                        "workup",
                        "samples/cider-malic-kinetic/run.yaml",
                        "-o",
                        book.toString(),
                        "--pdf",
                        pages.toString()))
                .as(said.toString(StandardCharsets.UTF_8))
                .isEqualTo(ExitStatus.DONE);
        assertThat(summaryRow(book, "Lees 12")).contains("not known").doesNotContain("<");
        try (var document = Loader.loadPDF(Files.readAllBytes(pages))) {
            PDFTextStripper text = new PDFTextStripper();
            text.setEndPage(1);
            assertThat(text.getText(document).replaceAll("\\s+", " "))
                    .contains("Lees 12 not known")
                    .doesNotContain("< 1.00");
        }
    }

    private static String summaryRow(Path book, String name) throws IOException {
        StringBuilder found = new StringBuilder();
        try (XSSFWorkbook poi = new XSSFWorkbook(Files.newInputStream(book))) {
            for (Row row : poi.getSheet("Summary")) {
                StringBuilder line = new StringBuilder();
                for (Cell cell : row) {
                    line.append(cell).append(" | ");
                }
                if (line.toString().contains(name + " |")) {
                    found.append(line);
                }
            }
        }
        return found.toString();
    }
}
