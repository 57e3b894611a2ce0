package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.task.Progress;
import tallywell.task.Wanted;
import tallywell.task.WorkUp;

/**
 * Every workbook made from {@code samples/} follows the transitional schemas of ECMA-376-1:2016 (ISO/IEC 29500-4:2016),
 * compiled in poi-ooxml-full (Apache Licence 2.0).
 */
class OoxmlSchemasTest {
    private static OoxmlSchemas schemas;

    @TempDir
    private Path folder;

    @BeforeAll
    static void load() throws Exception {
        schemas = OoxmlSchemas.load();
    }

    private byte[] workUp(List<Path> runs) throws Exception {
        Path target = folder.resolve("out.xlsx");
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
        return Files.readAllBytes(target);
    }

    private static List<Path> runs() throws Exception {
        try (Stream<Path> folders = Files.list(Path.of("samples"))) {
            return folders.map(each -> each.resolve("run.yaml"))
                    .filter(Files::exists)
                    .sorted()
                    .toList();
        }
    }

    @Test
    void workbooksOfTheSamplesFollowTheSchemas() throws Exception {
        for (Path run : runs()) {
            List<String> checked = new ArrayList<>();
            assertThat(schemas.errors(workUp(List.of(run)), checked))
                    .as("%s", run)
                    .isEmpty();
            assertThat(checked)
                    .as("parts checked of %s", run)
                    .contains("xl/workbook.xml", "xl/styles.xml", "xl/worksheets/sheet1.xml", "docProps/app.xml");
        }
    }

    @Test
    void combinedWorkbookFollowsTheSchemas() throws Exception {
        List<String> checked = new ArrayList<>();
        assertThat(schemas.errors(workUp(runs()), checked)).isEmpty();
        assertThat(checked).contains("xl/workbook.xml", "xl/worksheets/sheet7.xml");
    }

    @Test
    void errorsAreFound() throws Exception {
        List<String> checked = new ArrayList<>();
        java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
        try (java.util.zip.ZipOutputStream zip = new java.util.zip.ZipOutputStream(out)) {
            zip.putNextEntry(new java.util.zip.ZipEntry("xl/worksheets/sheet1.xml"));
            zip.write(("<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>"
                            + "<row r=\"1\"><c r=\"A1\" s=\"-1\"><v>1</v></c></row></sheetData><cols/></worksheet>")
                    .getBytes(StandardCharsets.UTF_8));
        }
        assertThat(schemas.errors(out.toByteArray(), checked)).hasSizeGreaterThanOrEqualTo(2);
    }
}
