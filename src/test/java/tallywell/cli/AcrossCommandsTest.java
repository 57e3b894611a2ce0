package tallywell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.Published;

/** {@code compare}, {@code combine} and {@code review} as a person types them. */
class AcrossCommandsTest {
    @TempDir
    private Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private Path first;
    private Path second;

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

    @BeforeEach
    void makeTwoRunsOfTheSameSamples() throws IOException {
        first = copy("first", 0).resolve("run.yaml");
        second = copy("second", 0.004).resolve("run.yaml");
    }

    /** The cider run, its readings moved by a relative scatter. */
    private Path copy(String name, double scatter) throws IOException {
        Path to = Files.createDirectories(folder.resolve(name));
        try (Stream<Path> files = Files.list(Path.of("samples/cider-l-malic"))) {
            for (Path each : files.filter(file -> file.toString().matches(".*[.](yaml|csv)"))
                    .toList()) {
                Files.copy(each, to.resolve(each.getFileName()));
            }
        }
        Path run = to.resolve("run.yaml");
        Files.writeString(
                run,
                Files.readString(run)
                        .replace("../..", Path.of("").toAbsolutePath().toString()));
        Random random = new Random(20260309);
        for (String file : List.of("before.csv", "after.csv")) {
            Path path = to.resolve(file);
            Files.writeString(
                    path,
                    Files.readString(path, StandardCharsets.ISO_8859_1)
                            .lines()
                            .map(line -> scatter > 0 ? moved(line, scatter, random) : line)
                            .collect(Collectors.joining("\n", "", "\n")),
                    StandardCharsets.ISO_8859_1);
        }
        return to;
    }

    private static String moved(String line, double scatter, Random random) {
        String[] cells = line.split(",", -1);
        if (!cells[0].matches("[A-H]")) {
            return line;
        }
        for (int i = 1; i < cells.length; i++) {
            double value = Double.parseDouble(cells[i]) * (1 + scatter * random.nextGaussian());
            cells[i] = Double.toString(Math.round(value * 1e4) / 1e4);
        }
        return String.join(",", cells);
    }

    private void edit(Path file, String from, String to) throws IOException {
        String text = Files.readString(file);
        assertThat(text).contains(from);
        Files.writeString(file, text.replace(from, to));
    }

    private List<CSVRecord> rows() throws IOException {
        return CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(out()))
                .getRecords();
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    @Test
    void comparisonStandsOnStandardOutput() throws Exception {
        assertThat(run("compare", first.toString(), second.toString())).isEqualTo(ExitStatus.DONE);
        assertThat(out())
                .contains("Tank 2 must", "agree", "cider control, high (control)")
                .contains("agree within the expanded uncertainty of the difference (95 %)")
                .contains("No source of uncertainty is shared between plates");
    }

    /** What docs/checks/make-samples.R made: the perry blend lost 9 %, all else is the same. */
    @Test
    void repeatOfTheSampleRunDiffersOnlyWhereItWasMadeTo() throws Exception {
        assertThat(run("compare", "--csv", "samples/cider-l-malic/run.yaml", "samples/cider-l-malic-repeat/run.yaml"))
                .isEqualTo(ExitStatus.DONE);
        for (CSVRecord row : rows()) {
            if (!row.get("remark").isEmpty()) {
                assertThat(row.get("remark")).matches("only in .*|no value in samples/cider-l-malic/run.yaml");
            } else if (row.get("sample").equals("Perry blend")) {
                assertThat(row.get("judgement")).isEqualTo("differ");
                assertThat(Math.abs(number(row, "difference") + 0.15)).isLessThan(number(row, "difference_U"));
            } else {
                assertThat(row.get("judgement")).as(row.get("sample")).isEqualTo("agree");
            }
        }
    }

    @Test
    void numbersOfTheTableGoTogether() throws Exception {
        assertThat(run("compare", "--csv", first.toString(), second.toString())).isEqualTo(ExitStatus.DONE);
        List<CSVRecord> rows = rows();
        assertThat(rows).hasSize(38);
        int judged = 0;
        for (CSVRecord row : rows) {
            if (!row.get("score").isEmpty()) {
                judged++;
                double difference = number(row, "second") - number(row, "first");
                // No source in common: u² is the sum of both squares.
                double u = Math.hypot(number(row, "first_u"), number(row, "second_u"));
                assertThat(Published.agreement(number(row, "difference_u"), u)).isGreaterThan(12);
                assertThat(number(row, "difference")).isEqualTo(difference);
                assertThat(Published.agreement(number(row, "score"), difference / (u * number(row, "difference_k"))))
                        .isGreaterThan(12);
                assertThat(row.get("judgement")).isEqualTo(Math.abs(number(row, "score")) <= 1 ? "agree" : "differ");
            }
        }
        assertThat(judged).isEqualTo(36);
    }

    /** 2 % of the standard and 1 % of the pipette are stated for both plates: they cancel, and are named. */
    @Test
    void statedSourcesAreTakenOutUnlessTheUserSaysOtherwise() throws Exception {
        String stated = "\nuncertainty:\n  standard: {standard: 2 %}\n  dilution: {standard: 1 %}\n";
        for (Path run : List.of(first, second)) {
            Path method = run.resolveSibling("method.yaml");
            Files.writeString(method, Files.readString(method) + stated);
        }
        run("compare", "--csv", first.toString(), second.toString());
        CSVRecord shared = rows().get(1);
        assertThat(shared.get("shared")).isEqualTo("assigned value of the standard (L-malic acid); dilution 20");
        run("compare", "--csv", "--not-shared", "standard,dilution", first.toString(), second.toString());
        CSVRecord apart = rows().get(1);
        assertThat(apart.get("shared")).isEmpty();
        double more = Math.hypot(number(apart, "first"), number(apart, "second")) * Math.hypot(0.02, 0.01);
        double less = (number(shared, "second") - number(shared, "first")) * Math.hypot(0.02, 0.01);
        double own = Math.sqrt(Math.pow(number(apart, "difference_u"), 2) - more * more);
        assertThat(Published.agreement(number(shared, "difference_u"), Math.hypot(own, less)))
                .isGreaterThan(10);
        run("combine", "--csv", first.toString(), second.toString());
        CSVRecord mean = rows().stream()
                .filter(each ->
                        each.get("row").equals("combined") && each.get("sample").equals(shared.get("sample")))
                .findFirst()
                .orElseThrow();
        double common = number(mean, "value") * Math.hypot(0.02, 0.01);
        assertThat(Published.agreement(number(mean, "u"), Math.hypot(own / 2, common)))
                .isGreaterThan(10);
    }

    @Test
    void combinationListsWhatCountsAndWhatDoesNot() throws Exception {
        assertThat(run("combine", "--csv", first.toString(), second.toString())).isEqualTo(ExitStatus.DONE);
        List<CSVRecord> rows = rows();
        CSVRecord combined = rows.get(0);
        assertThat(combined.get("row")).isEqualTo("combined");
        assertThat(combined.get("rule")).isEqualTo("mean");
        assertThat(number(combined, "value"))
                .isEqualTo((number(rows.get(1), "value") + number(rows.get(2), "value")) / 2);
        assertThat(Published.agreement(
                        number(combined, "u"), Math.hypot(number(rows.get(1), "u"), number(rows.get(2), "u")) / 2))
                .isGreaterThan(12);
        assertThat(rows)
                .filteredOn(row ->
                        row.get("row").equals("single") && row.get("verdict").equals("repeat"))
                .isNotEmpty()
                .allMatch(row ->
                        row.get("counts").equals("no") && !row.get("remark").isEmpty());
    }

    /** Two runs that hold scatter only say so; a source that one of them states makes that one, and the mean, a budget. */
    @Test
    void whatUncertaintyRestsOnGoesAcrossRuns() throws Exception {
        assertThat(run("compare", "--csv", first.toString(), second.toString())).isEqualTo(ExitStatus.DONE);
        assertThat(rows())
                .filteredOn(row ->
                        !row.get("first_U").isEmpty() && !row.get("second_U").isEmpty())
                .isNotEmpty()
                .allMatch(row -> row.get("first_U_basis").equals("scatter only")
                        && row.get("second_U_basis").equals("scatter only"));
        assertThat(run("compare", first.toString(), second.toString())).isEqualTo(ExitStatus.DONE);
        assertThat(out()).contains("Every U is scatter only.");

        edit(
                second.resolveSibling("method.yaml"),
                "calibration: {",
                "uncertainty:\n  standard: {standard: 1 %}\ncalibration: {");
        assertThat(run("combine", "--csv", first.toString(), second.toString())).isEqualTo(ExitStatus.DONE);
        List<CSVRecord> rows = rows();
        assertThat(rows.subList(0, 3).stream().map(row -> row.get("U_basis")))
                .containsExactly("budget", "scatter only", "budget");
        assertThat(run("combine", first.toString(), second.toString())).isEqualTo(ExitStatus.DONE);
        assertThat(out()).doesNotContain("Every U is scatter only.");
    }

    @Test
    void workbooksAreWrittenAndNothingReplacedWithoutForce() throws Exception {
        Path book = folder.resolve("out.xlsx");
        assertThat(run("compare", "-o", book.toString(), first.toString(), second.toString()))
                .isEqualTo(ExitStatus.DONE);
        try (XSSFWorkbook poi = new XSSFWorkbook(Files.newInputStream(book))) {
            assertThat(poi.getSheet("Comparison").getLastRowNum()).isGreaterThan(38);
            assertThat(poi.getSheet("Files").getLastRowNum()).isGreaterThan(9);
        }
        assertThat(run("combine", "-o", book.toString(), first.toString(), second.toString()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("exists already; use --force");
        assertThat(run("combine", "--force", "-o", book.toString(), first.toString(), second.toString()))
                .isEqualTo(ExitStatus.DONE);
        try (XSSFWorkbook poi = new XSSFWorkbook(Files.newInputStream(book))) {
            assertThat(poi.getSheetName(0)).isEqualTo("Combined");
            assertThat(poi.getSheet("Single results").getLastRowNum()).isGreaterThan(70);
        }
    }

    @Test
    void runComparedWithItselfIsRefused() {
        assertThat(run("compare", first.toString(), first.toString())).isEqualTo(ExitStatus.INPUT);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("found the same readings as in").hasLineCount(1);
    }

    @Test
    void oneRunThatCannotBeWorkedUpIsNamed() throws Exception {
        Files.delete(second.resolveSibling("after.csv"));
        assertThat(run("compare", first.toString(), second.toString())).isEqualTo(ExitStatus.INPUT);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("after.csv: found no such file");
    }

    @Test
    void runsWithoutASampleInCommonAreRefused() throws Exception {
        Path list = second.resolveSibling("samples.csv");
        Files.writeString(
                list,
                Files.readString(list)
                        .lines()
                        .map(line -> line.replaceFirst("^([0-9]+,\"?)", "$1New "))
                        .collect(Collectors.joining("\n")));
        assertThat(run("combine", first.toString(), second.toString())).isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("found no sample in common with " + first);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            compare --shared pipette             | found --shared pipette; expected one of sample-volume, total-volume
            compare --shared plate               | found 'plate' among what plates share
            compare --shared mass --not-shared mass | found 'mass' with --shared and with --not-shared
            combine --rule best                  | found --rule best; expected one of mean, weighted, median, critical-range
            """)
    void wrongWordsAreWrongUsage(String words, String message) {
        String[] args = Stream.concat(Stream.of(words.split(" ")), Stream.of(first.toString(), second.toString()))
                .toArray(String[]::new);
        assertThat(run(args)).isEqualTo(ExitStatus.USAGE);
        assertThat(out()).isEmpty();
        assertThat(err()).contains(message);
    }

    @Test
    void oneRunIsNothingToCombine() {
        assertThat(run("combine", first.toString())).isEqualTo(ExitStatus.USAGE);
        assertThat(run("compare", first.toString())).isEqualTo(ExitStatus.USAGE);
    }

    @Test
    void reviewGoesFromDraftToApprovedAndBack() throws Exception {
        Path report = folder.resolve("run.xlsx");
        assertThat(run("workup", "--quiet", "-o", report.toString(), first.toString()))
                .isEqualTo(ExitStatus.DONE);
        assertThat(run("review", report.toString())).isEqualTo(ExitStatus.DONE);
        assertThat(out()).startsWith(report + ": draft\n");
        assertThat(run("review", "--approved-by", "M. Keller", report.toString()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(run("review", "--checked-by", "R. Haas", "--time", "2026-03-09T09:00:00Z", report.toString()))
                .isEqualTo(ExitStatus.DONE);
        assertThat(run("review", "--approved-by", "M. Keller", "--time", "2026-03-09T10:00:00Z", report.toString()))
                .isEqualTo(ExitStatus.DONE);
        assertThat(out()).startsWith(report + ": approved\n").contains("  checked by R. Haas, 2026-03-09 ");
        Files.delete(report);
        run("workup", "--quiet", "-o", report.toString(), second.toString());
        assertThat(run("review", report.toString())).isEqualTo(ExitStatus.FAILED_ACCEPTANCE);
        assertThat(out())
                .contains("draft; the workbook has changed since it was approved", "was approved by M. Keller");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --time 2026-03-09T09:00:00Z          | found --time without
            --checked-by A --approved-by B       | found --checked-by and --approved-by in one call
            --checked-by A --time yesterday      | found --time yesterday; expected a time with its offset
            """)
    void wrongOptionsOfReviewAreWrongUsage(String words, String message) {
        String[] args = Stream.concat(Stream.of("review", "run.xlsx"), Stream.of(words.split(" ")))
                .toArray(String[]::new);
        assertThat(run(args)).isEqualTo(ExitStatus.USAGE);
        assertThat(err()).contains(message);
    }

    @Test
    void packageIsWrittenWithTheSummary() throws Exception {
        Path made = folder.resolve("package");
        assertThat(run("workup", "--package", made.toString(), first.toString()))
                .isEqualTo(ExitStatus.DONE);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("written: " + made);
        assertThat(made.resolve("datapackage.json")).isNotEmptyFile();
        assertThat(run("workup", "--package", made.toString(), second.toString()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("the folder is not empty; use --force");
        assertThat(run("workup", "--package", first.toString(), "--force", second.toString()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("is a file; expected a folder, or a new name");
    }

    private void state(Path run, String rule) throws IOException {
        Path method = run.resolveSibling("method.yaml");
        Files.writeString(method, Files.readString(method) + "\nrepeats: " + rule + "\n");
    }

    @Test
    void ruleOfTheMethodHolds() throws Exception {
        state(first, "median");
        assertThat(run("combine", "--csv", first.toString(), second.toString())).isEqualTo(ExitStatus.DONE);
        assertThat(rows().get(0).get("rule")).isEqualTo("median");
        assertThat(run("combine", "--rule", "mean", first.toString(), second.toString()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(err())
                .contains("found --rule mean, and 'repeats: median' in the method; the rule of the method holds");
        state(second, "weighted");
        assertThat(run("combine", first.toString(), second.toString())).isEqualTo(ExitStatus.INPUT);
        assertThat(err())
                .contains("found 'repeats: weighted' in its method, and 'repeats: median' in that of " + first);
    }

    @Test
    void ruleThatIsNoneIsRefusedWithItsLine() throws Exception {
        state(first, "better-one");
        assertThat(run("combine", first.toString(), second.toString())).isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("found 'better-one'; expected one of mean, weighted, median, critical-range");
    }
}
