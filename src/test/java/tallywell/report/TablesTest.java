package tallywell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.Published;
import tallywell.notice.InputException;

class TablesTest {
    private static final String RESULTS = "run,plate,role,slot,sample,analyte,value,unit,u,U,k,n,cv_percent,dilution,"
            + "value_all,assigned,recovery_percent,verdict,flags,advice,at_most,advice_for,U_basis";
    private static final String WELLS = "run,plate,well,role,group,slot,sample,step,analyte,a_before,a_after,"
            + "creep_per_min,delta_a,u_delta_a,net_delta_a,value,unit,used,flags,path_cm";

    @Test
    void headersAreThoseOfTheFormat() throws Exception {
        Report report = SampleRuns.report("cider-l-malic");
        assertThat(results(report).lines().findFirst()).hasValue(RESULTS);
        assertThat(wells(report).lines().findFirst()).hasValue(WELLS);
    }

    /** Expected results: base R 4.2.2, docs/checks/expected-results.R. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "cider-l-malic",
                "puree-citric-solids",
                "juice-glucose-fructose",
                "cuvette-typed",
                "nectar-sucrose",
                "dairy-lactose",
                "vinegar-acetic-coupled"
            })
    void valuesOfTheSampleRunsAreThoseComputedByR(String folder) throws Exception {
        List<CSVRecord> ours = parse(results(SampleRuns.report(folder)));
        List<CSVRecord> expected = parse(expected(folder, "expected.csv"));
        assertThat(ours).hasSameSizeAs(expected);
        for (CSVRecord row : expected) {
            CSVRecord same = ours.stream()
                    .filter(each -> List.of("role", "slot", "sample", "analyte").stream()
                            .allMatch(key -> each.get(key).equals(row.get(key))))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no row for " + row));
            for (String column : List.of("value", "n", "cv_percent", "dilution", "assigned", "recovery_percent")) {
                agree(folder + " " + row.get("sample") + " " + column, same.get(column), row.get(column));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "cider-l-malic",
                "puree-citric-solids",
                "juice-glucose-fructose",
                "cuvette-typed",
                "nectar-sucrose",
                "dairy-lactose",
                "vinegar-acetic-coupled"
            })
    void wellsOfTheSampleRunsAreThoseComputedByR(String folder) throws Exception {
        List<CSVRecord> ours = parse(wells(SampleRuns.report(folder)));
        List<CSVRecord> expected = parse(expected(folder, "expected-wells.csv"));
        assertThat(ours).hasSameSizeAs(expected);
        for (int i = 0; i < ours.size(); i++) {
            assertThat(ours.get(i).get("well")).isEqualTo(expected.get(i).get("well"));
            for (String column : List.of("step", "a_before", "a_after", "delta_a", "net_delta_a", "value")) {
                agree(
                        folder + " " + ours.get(i).get("well") + " " + column,
                        ours.get(i).get(column),
                        expected.get(i).get(column));
            }
        }
    }

    @Test
    void namesWithDelimitersAndQuotesAreQuotedAsRfc4180Says() throws Exception {
        Report report = HostileRun.report("a,\"b\"\r\nc", "");
        String text = results(report);
        assertThat(text).contains("\"a,\"\"b\"\"\r\nc\"");
        assertThat(parse(text).get(0).get("sample")).isEqualTo("a,\"b\"\r\nc");
    }

    private static void agree(String what, String ours, String expected) {
        if (ours.isEmpty() || expected.isEmpty()) {
            assertThat(ours).as(what).isEqualTo(expected);
        } else {
            double value = Double.parseDouble(ours);
            double wanted = Double.parseDouble(expected);
            if (Math.abs(value - wanted) > 1e-15) {
                assertThat(Published.agreement(value, wanted)).as(what).isGreaterThanOrEqualTo(9);
            }
        }
    }

    private static String expected(String folder, String file) throws IOException {
        return Files.readString(Path.of("samples", folder, file))
                .lines()
                .filter(line -> !line.startsWith("#"))
                .collect(java.util.stream.Collectors.joining("\n"));
    }

    static List<CSVRecord> parse(String text) throws IOException {
        return CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(text))
                .getRecords();
    }

    static String results(Report report) throws IOException, InputException {
        StringBuilder text = new StringBuilder();
        try (ResultsTable table = new ResultsTable(text)) {
            table.add(report);
        }
        return text.toString();
    }

    static String wells(Report report) throws IOException, InputException {
        StringBuilder text = new StringBuilder();
        try (WellsTable table = new WellsTable(text)) {
            table.add(report);
        }
        return text.toString();
    }
}
