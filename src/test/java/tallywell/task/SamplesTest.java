package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Holds the tables of every sample run to results that an independent R script computed from the same files
 * (docs/checks/expected-results.R; tool and version stand in the head of each file), to 1e-9 relative.
 */
class SamplesTest {
    private static final double RELATIVE = 1e-9;

    @TempDir
    private Path folder;

    static Stream<Path> runs() throws IOException {
        try (Stream<Path> folders = Files.list(Path.of("samples"))) {
            return folders.filter(each -> Files.exists(each.resolve("expected.csv"))).sorted().toList().stream();
        }
    }

    private void workUp(Path sample) throws Exception {
        new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(sample.resolve("run.yaml")),
                                Optional.empty(),
                                Wanted.summary(folder.resolve("out.xlsx")).withTables(folder.resolve("tables")),
                                Instant.EPOCH,
                                ZoneOffset.UTC,
                                Optional.empty()),
                        Progress.SILENT);
    }

    @ParameterizedTest
    @MethodSource("runs")
    void resultsAgreeWithTheIndependentCalculation(Path sample) throws Exception {
        workUp(sample);
        List<CSVRecord> ours = table(folder.resolve("tables/results.csv"));
        List<CSVRecord> expected = table(sample.resolve("expected.csv"));
        assertThat(ours).hasSameSizeAs(expected);
        for (CSVRecord wanted : expected) {
            CSVRecord found = only(ours, wanted, List.of("role", "slot", "sample", "analyte"));
            for (String column : List.of("value", "cv_percent", "dilution", "assigned", "recovery_percent")) {
                compare(sample + " " + wanted.get("sample") + " " + column, found.get(column), wanted.get(column));
            }
            assertThat(found.get("unit")).isEqualTo(wanted.get("unit"));
            assertThat(found.get("n")).isEqualTo(wanted.get("n"));
        }
    }

    @ParameterizedTest
    @MethodSource("runs")
    void wellsAgreeWithTheIndependentCalculation(Path sample) throws Exception {
        workUp(sample);
        List<CSVRecord> ours = table(folder.resolve("tables/wells.csv"));
        for (CSVRecord wanted : table(sample.resolve("expected-wells.csv"))) {
            CSVRecord found = only(ours, wanted, List.of("well", "step"));
            for (String column : List.of("a_before", "a_after", "delta_a", "net_delta_a", "value")) {
                if (!wanted.get(column).isEmpty()) {
                    compare(sample + " " + wanted.get("well") + " " + column, found.get(column), wanted.get(column));
                }
            }
        }
    }

    /**
     * The traces of the kinetic run were made from known changes (docs/checks/make-samples.R: Michaelis and Menten, integrated
     * numerically, with linear creep and 0.5 mA of noise). Of those that are not flagged, nine in ten must hold the truth
     * within twice the stated uncertainty, and none may miss it by more than 3 mA.
     */
    @Test
    void kineticTracesComeBackAtTheTruth() throws Exception {
        Path sample = Path.of("samples/cider-malic-kinetic");
        workUp(sample);
        List<CSVRecord> ours = table(folder.resolve("tables/wells.csv"));
        int held = 0;
        int told = 0;
        for (CSVRecord truth : table(sample.resolve("expected-true.csv"))) {
            CSVRecord found = only(ours, truth, List.of("well"));
            if (found.get("flags").contains("reaction-incomplete")) {
                continue;
            }
            double error = Double.parseDouble(found.get("delta_a")) - Double.parseDouble(truth.get("delta_a"));
            told++;
            held += Math.abs(error) <= 2 * Double.parseDouble(found.get("u_delta_a")) ? 1 : 0;
            assertThat(error).as(truth.get("well")).isBetween(-0.003, 0.003);
        }
        assertThat(told).as("traces that are not flagged").isGreaterThanOrEqualTo(88);
        assertThat(held).isGreaterThanOrEqualTo((int) Math.ceil(0.9 * told));
    }

    /** Slot 12 is inhibited, and its reaction still runs when the readings end. */
    @Test
    void unfinishedReactionIsFlagged() throws Exception {
        workUp(Path.of("samples/cider-malic-kinetic"));
        assertThat(table(folder.resolve("tables/results.csv")))
                .filteredOn(row -> row.get("slot").equals("12"))
                .singleElement()
                .satisfies(row -> {
                    assertThat(row.get("flags")).contains("reaction-incomplete");
                    assertThat(row.get("verdict")).isEqualTo("repeat");
                    assertThat(row.get("advice")).isEqualTo("read-longer");
                });
    }

    private static CSVRecord only(List<CSVRecord> rows, CSVRecord wanted, List<String> keys) {
        List<CSVRecord> found = new ArrayList<>();
        for (CSVRecord row : rows) {
            if (keys.stream().allMatch(key -> row.get(key).equals(wanted.get(key)))) {
                found.add(row);
            }
        }
        assertThat(found).as("rows like " + wanted).hasSize(1);
        return found.get(0);
    }

    private static void compare(String what, String found, String wanted) {
        if (wanted.isEmpty() || found.isEmpty()) {
            assertThat(found).as(what).isEqualTo(wanted);
            return;
        }
        double value = Double.parseDouble(wanted);
        // A standard deviation of equal values is 0 up to rounding on both sides.
        assertThat(Double.parseDouble(found))
                .as(what)
                .isCloseTo(value, org.assertj.core.data.Offset.offset(RELATIVE * Math.abs(value) + 1e-11));
    }

    private static List<CSVRecord> table(Path file) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var in = Files.newBufferedReader(file)) {
            return format.parse(in).getRecords();
        }
    }
}
