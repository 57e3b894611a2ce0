package tallywell.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.report.Report;
import tallywell.report.SampleRuns;

class SummaryDocumentTest {
    static Stream<String> samples() throws IOException {
        try (Stream<Path> folders = Files.list(Path.of("samples"))) {
            return folders.filter(each -> Files.exists(each.resolve("run.yaml")))
                    .map(each -> each.getFileName().toString())
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    static byte[] written(Report... reports) throws IOException {
        try (SummaryDocument document = new SummaryDocument()) {
            for (Report report : reports) {
                document.add(report);
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.write("run.xlsx", "0123456789abcdef".repeat(4), out);
            return out.toByteArray();
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void summaryOfEverySampleConformsToPdfAAndPdfUa(String sample) throws Exception {
        byte[] document = written(SampleRuns.report(sample));
        Files.write(Path.of("target", sample + ".pdf"), document);
        assertThat(Checker.faults(document)).isEmpty();
    }
}
