package tallywell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a bad spike, one name for two samples and one barcode for two names do to results, all the way. */
class SpikesAndNamesTest {
    /** 1 g/L of the solution pipetted makes a net ΔA of 5: V M / (ε d v) = 1 · 126 / (6300 · 1 · 0.1). */
    private static final String METHOD = """
            tallywell: method/1
            id: acid
            signal: {absorptivity: 6300 L/mol/cm, direction: rises}
            steps:
              - analyte: {name: acid, molar-mass: 126 g/mol}
                volumes: {sample: 100 µL, before-trigger: 1 mL, after-trigger: 1 mL}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            accept:
              spike-recovery: {least: 80 %, most: 120 %}
            """;

    /** Spikes of 0.02 g/L, which make 0.1: the one on slot 1 is found whole, of that on slot 2 one fifth. */
    private static final String LAYOUT = """
            tallywell: layout/1
            name: spikes
            plate: 24
            wells:
              A: o 1 1 2 2 3
              B: o 3 4 4 p p
              C: o r r 5 5 6
              D: o 6 7 7 . .
            legend:
              o: {role: blank}
              p: {role: spike, of: 1, added: 0.02 g/L}
              r: {role: spike, of: 2, added: 0.02 g/L}
            """;

    private static final String AFTER = """
            ,1,2,3,4,5,6
            A,0.100,0.400,0.401,0.500,0.502,0.600
            B,0.101,0.602,0.400,0.402,0.500,0.501
            C,0.100,0.520,0.522,0.600,0.601,0.300
            D,0.102,0.301,0.450,0.452,,
            """;

    private static final String SAMPLES = """
            slot,sample,dilution,id
            1,Tank 1,5,X1
            2,Tank 2,5,X2
            3,Perry,5,X3
            4,Perry,5,X4
            5,Tank 5,5,X5
            6,Tank 6,5,X5
            7,Tank 7,5,X7
            """;

    @TempDir
    private Path folder;

    private String messages = "";

    @BeforeEach
    void files() throws IOException {
        Files.writeString(folder.resolve("method.yaml"), METHOD);
        Files.writeString(folder.resolve("layout.yaml"), LAYOUT);
        Files.writeString(folder.resolve("samples.csv"), SAMPLES);
        Files.writeString(folder.resolve("after.csv"), AFTER);
        Files.writeString(folder.resolve("before.csv"), AFTER.replaceAll("0\\.[0-9]{3}", "0.100"));
        Files.writeString(folder.resolve("run.yaml"), """
                tallywell: run/1
                method: method.yaml
                layout: layout.yaml
                samples: samples.csv
                readings:
                  - {file: before.csv}
                  - {file: after.csv, trigger: before}
                """);
    }

    /** Rows by role and slot or word. */
    private Map<String, CSVRecord> workUp() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Cli.run(
                new Console(
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        false),
                "workup",
                "--force",
                folder.resolve("run.yaml").toString(),
                "--tables",
                folder.resolve("tables").toString());
        messages = err.toString(StandardCharsets.UTF_8) + out.toString(StandardCharsets.UTF_8);
        assertThat(status).as(messages).isEqualTo(ExitStatus.FAILED_ACCEPTANCE);
        List<CSVRecord> rows = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(folder.resolve("tables/results.csv")))
                .getRecords();
        return rows.stream()
                .collect(Collectors.toMap(row -> row.get("role") + row.get("slot") + row.get("sample"), row -> row));
    }

    private static void holds(CSVRecord row, String verdict, String flags) {
        assertThat(row.get("flags")).as(row.toString()).isEqualTo(flags);
        assertThat(row.get("verdict")).as(row.toString()).isEqualTo(verdict);
    }

    @Test
    void badSpikePutsItsOwnSampleInDoubtAndNoOther() throws IOException {
        Map<String, CSVRecord> rows = workUp();
        holds(rows.get("spikeTank 2"), "check", "recovery-out");
        holds(rows.get("sample2Tank 2"), "check", "spike-out");
        holds(rows.get("sample1Tank 1"), "report", "");
        holds(rows.get("sample7Tank 7"), "report", "");
    }

    /** A spike beyond the reader has no recovery: its sample is no less in doubt for that. */
    @Test
    void spikeWithoutAValuePutsItsOwnSampleInDoubt() throws IOException {
        Files.writeString(folder.resolve("after.csv"), AFTER.replace("0.520,0.522", "OVER,OVER"));
        Map<String, CSVRecord> rows = workUp();
        holds(rows.get("sample2Tank 2"), "check", "spike-out");
        holds(rows.get("sample1Tank 1"), "report", "");
    }

    @Test
    void spikeOfTheBatchPutsAllSamplesInDoubt() throws IOException {
        Files.writeString(
                folder.resolve("method.yaml"), METHOD.replace("most: 120 %}", "most: 120 %, speaks-for: batch}"));
        Map<String, CSVRecord> rows = workUp();
        holds(rows.get("sample1Tank 1"), "check", "spike-out");
        holds(rows.get("sample7Tank 7"), "check", "spike-out");
    }

    @Test
    void spikeOfAGroupPutsTheGroupInDoubt() throws IOException {
        Files.writeString(
                folder.resolve("method.yaml"), METHOD.replace("most: 120 %}", "most: 120 %, speaks-for: group}"));
        Files.writeString(
                folder.resolve("layout.yaml"), LAYOUT.replace("D: o", "D: m") + "  m: {role: blank, group: must}\n");
        Files.writeString(
                folder.resolve("samples.csv"),
                SAMPLES.replace("dilution,id", "dilution,id,group")
                        .replaceAll("(X[1-6])", "$1,")
                        .replace("X7", "X7,must"));
        Map<String, CSVRecord> rows = workUp();
        holds(rows.get("sample1Tank 1"), "check", "spike-out");
        holds(rows.get("sample7Tank 7"), "report", "");
    }

    @Test
    void rowsOfOneNameOrOneBarcodeThatDifferAreLookedAt() throws IOException {
        Map<String, CSVRecord> rows = workUp();
        for (String key : List.of("sample3Perry", "sample4Perry", "sample5Tank 5", "sample6Tank 6")) {
            holds(rows.get(key), "check", "samples-disagree");
        }
        assertThat(messages).contains("the id 'X5' for 5 (Tank 5), 6 (Tank 6)");
        // The same two rows with one content agree.
        Files.writeString(folder.resolve("after.csv"), AFTER.replace("0.602,0.400,0.402", "0.602,0.600,0.602"));
        holds(workUp().get("sample3Perry"), "report", "");
    }
}
