package tallywell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Commands as a person types them: what they print where, what they write, and how they end. */
class CliTest {
    private static final String SAMPLE = "samples/cider-l-malic/";

    @TempDir
    private Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

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

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(each -> each.getFileName().toString()).sorted().toList();
        }
    }

    private Path copied;

    @BeforeEach
    void copySample() throws IOException {
        copied = Files.createDirectories(folder.resolve("in"));
        try (Stream<Path> files = Files.list(Path.of(SAMPLE))) {
            // A summary that someone has made beside the sample is none of its inputs.
            for (Path each :
                    files.filter(file -> !file.toString().endsWith(".xlsx")).toList()) {
                Files.copy(each, copied.resolve(each.getFileName()));
            }
        }
        Path run = copied.resolve("run.yaml");
        Path layouts = Path.of("plate-layouts").toAbsolutePath();
        Files.writeString(run, Files.readString(run).replace("../../plate-layouts", layouts.toString()));
    }

    private void change(String file, String from, String to) throws IOException {
        Path path = copied.resolve(file);
        String text = Files.readString(path);
        assertThat(text).contains(from);
        Files.writeString(path, text.replace(from, to));
    }

    @Test
    void worksARunUpBesideItself() {
        Path run = copied.resolve("run.yaml");
        assertThat(run("workup", run.toString())).isEqualTo(ExitStatus.DONE);
        assertThat(copied.resolve("run.xlsx")).isNotEmptyFile();
        assertThat(out()).isEmpty();
        assertThat(err()).contains("passes its acceptance").contains("written: ");
    }

    @Test
    void drawsStandBesideTheBudgetsAndFollowFromTheirSeed() {
        String run = copied.resolve("run.yaml").toString();
        assertThat(run("workup", "--monte-carlo", "1000", "--force", run)).isEqualTo(ExitStatus.DONE);
        assertThat(out()).isEmpty();
        String line = draws();
        assertThat(line)
                .contains("Monte Carlo with 1000 draws: u differs from that of the budget by ", " % at most ('");
        assertThat(run("workup", "--monte-carlo", "1000", "--seed", "1", "--force", run))
                .isEqualTo(ExitStatus.DONE);
        assertThat(draws()).isEqualTo(line);
        run("workup", "--monte-carlo", "1000", "--seed", "2", "--force", run);
        assertThat(draws()).isNotEqualTo(line);
        run("workup", "--monte-carlo", "1000", "--quiet", "--force", run);
        assertThat(err()).doesNotContain("Monte Carlo");
    }

    private String draws() {
        return err().lines()
                .filter(each -> each.contains("Monte Carlo"))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--monte-carlo 999",
                "--monte-carlo 1000001",
                "--monte-carlo many",
                "--monte-carlo -1",
                "--seed 3",
                "--monte-carlo 1000 --seed x"
            })
    void drawsThatCannotBeAreWrongUsage(String options) {
        List<String> args = new ArrayList<>(List.of("workup"));
        args.addAll(List.of(options.split(" ")));
        args.add(copied.resolve("run.yaml").toString());
        assertThat(run(args.toArray(String[]::new))).isEqualTo(ExitStatus.USAGE);
        assertThat(err())
                .contains(
                        options.contains("999")
                                ? "from 1000 to 1000000"
                                : options.contains("x") ? "--seed" : options.split(" ")[0]);
        assertThat(copied.resolve("run.xlsx")).doesNotExist();
    }

    @Test
    void existingSummaryIsKeptWithoutForce() throws IOException {
        Path run = copied.resolve("run.yaml");
        Path summary = Files.writeString(copied.resolve("run.xlsx"), "mine");
        assertThat(run("workup", run.toString())).isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("run.xlsx").contains("--force");
        assertThat(run("workup", "--force", run.toString())).isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("run.xlsx: was not written by this program");
        assertThat(summary).hasContent("mine");
        Files.delete(summary);
        assertThat(run("workup", run.toString())).isEqualTo(ExitStatus.DONE);
        assertThat(run("workup", "--force", run.toString())).isEqualTo(ExitStatus.DONE);
    }

    @Test
    void worksUpWithoutARunFile() {
        String[] args = {
            "workup",
            "--method",
            copied.resolve("method.yaml").toString(),
            "--layout",
            "plate-layouts/thirty-six-with-controls.yaml",
            "--samples",
            copied.resolve("samples.csv").toString(),
            "-o",
            folder.resolve("out.xlsx").toString(),
            "--tables",
            folder.resolve("tables").toString(),
            copied.resolve("before.csv").toString(),
            copied.resolve("after.csv").toString()
        };
        assertThat(run(args)).isEqualTo(ExitStatus.DONE);
        assertThat(folder.resolve("out.xlsx")).isNotEmptyFile();
        assertThat(folder.resolve("tables/results.csv")).isNotEmptyFile();
        assertThat(folder.resolve("tables/wells.csv")).isNotEmptyFile();
    }

    @Test
    void aDilutionLeftOutAmongOthersIsSaidWithItsSample() throws IOException {
        change("samples.csv", "2,Tank 2 must,1+19,", "2,Tank 2 must,,");
        assertThat(run("workup", copied.resolve("run.yaml").toString())).isEqualTo(ExitStatus.DONE);
        assertThat(err()).contains("no dilution for 2 (Tank 2 must), while others have one");
        Path list = copied.resolve("samples.csv");
        Files.writeString(list, Files.readString(list).replaceAll("(?m)^(\\d+,[^,]*),[^,]*,", "$1,,"));
        assertThat(run("workup", "--force", copied.resolve("run.yaml").toString()))
                .isEqualTo(ExitStatus.DONE);
        assertThat(err()).doesNotContain("no dilution");
    }

    @Test
    void failedBatchIsWrittenAndEndsWithThree() throws IOException {
        change("method.yaml", "blank-delta-a: {most: 0.060}", "blank-delta-a: {most: 0.0001}");
        assertThat(run("workup", copied.resolve("run.yaml").toString())).isEqualTo(ExitStatus.FAILED_ACCEPTANCE);
        assertThat(copied.resolve("run.xlsx")).isNotEmptyFile();
        assertThat(err()).contains("fails its acceptance");
    }

    @Test
    void brokenInputWritesNothingAndEndsWithOne() throws IOException {
        change("run.yaml", "after.csv", "nothing.csv");
        int before = names().size();
        assertThat(run(
                        "workup",
                        copied.resolve("run.yaml").toString(),
                        "--tables",
                        folder.resolve("tables").toString()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("nothing.csv");
        assertThat(out()).isEmpty();
        assertThat(copied.resolve("run.xlsx")).doesNotExist();
        assertThat(names()).hasSize(before);
    }

    @Test
    void swappedReadingsAreNoticed() throws IOException {
        Files.move(copied.resolve("after.csv"), copied.resolve("x.csv"));
        Files.move(copied.resolve("before.csv"), copied.resolve("after.csv"));
        Files.move(copied.resolve("x.csv"), copied.resolve("before.csv"));
        assertThat(run("workup", copied.resolve("run.yaml").toString())).isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("probably swapped");
    }

    @Test
    void sameFileTwiceIsNoticed() throws IOException {
        change("run.yaml", "after.csv", "before.csv");
        assertThat(run("workup", copied.resolve("run.yaml").toString())).isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("before.csv stands twice among the readings");
    }

    @Test
    void manyRunsMakeOneSummaryAndLeaveOutWhatIsBroken() throws IOException {
        Path good = copied.resolve("run.yaml");
        Path bad = copied.resolve("bad.yaml");
        Files.writeString(bad, Files.readString(good).replace("after.csv", "nothing.csv"));
        Path all = folder.resolve("all.xlsx");
        String tables = folder.resolve("tables").toString();
        assertThat(run(
                        "workup",
                        good.toString(),
                        "samples/juice-glucose-fructose/run.yaml",
                        "-o",
                        all.toString(),
                        "--tables",
                        tables))
                .isEqualTo(ExitStatus.DONE);
        assertThat(all).isNotEmptyFile();
        assertThat(run("workup", "--force", good.toString(), bad.toString(), "-o", all.toString()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("nothing.csv").contains("bad.yaml: this run cannot be worked up and is left out");
        Files.delete(all);
        assertThat(run("workup", bad.toString(), bad.toString(), "-o", all.toString()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(all).doesNotExist();
    }

    @Test
    void manyRunsNeedAName() {
        assertThat(run("workup", "a.yaml", "b.yaml")).isEqualTo(ExitStatus.USAGE);
        assertThat(err()).contains("-o ALL.xlsx");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "nonsense",
                "workup",
                "workup --frobnicate x",
                "read",
                "layout",
                "workup --method m a b",
                "workup --layout l a b",
                "read --block 0 x",
                "read --block two x",
                "workup --samples s a",
                "workup --method m --layout l one.csv",
                "workup --method m --layout l --trigger-at 225 one.csv",
                "workup --method m --layout l --trigger-at 225s one.csv two.csv"
            })
    void wrongUsageEndsWithTwo(String line) {
        assertThat(run(line.isEmpty() ? new String[0] : line.split(" "))).isEqualTo(ExitStatus.USAGE);
        assertThat(err()).startsWith("tallywell: ").contains("--help");
        assertThat(out()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"--help", "workup --help", "read --help", "layout --help", "methods --help", "--version"})
    void helpGoesToStandardOutput(String line) {
        assertThat(run(line.split(" "))).isEqualTo(ExitStatus.DONE);
        assertThat(out()).isNotBlank();
        assertThat(err()).isEmpty();
    }

    @Test
    void versionNamesProgramAndJava() {
        run("--version");
        assertThat(out()).contains("tallywell ").contains("Java ");
    }

    @Test
    void layoutsArePrintedAsPlates() {
        assertThat(run("layout", "plate-layouts/thirty-six-with-controls.yaml")).isEqualTo(ExitStatus.DONE);
        assertThat(out().lines()).anyMatch(line -> line.startsWith("A ")).anyMatch(line -> line.startsWith("H "));
        assertThat(out()).contains("36 sample slots");
    }

    @Test
    void oneRefusedLayoutKeepsStandardOutputEmpty() throws IOException {
        Path bad = Files.writeString(folder.resolve("bad.yaml"), "tallywell: layout/1\nplate: 96\n");
        assertThat(run("layout", "plate-layouts/triplicates.yaml", bad.toString()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("bad.yaml");
    }

    @Test
    void builtInMethodIsPrintedAsAFile() {
        assertThat(run("methods")).isEqualTo(ExitStatus.DONE);
        assertThat(out()).contains("l-malic-340");
        assertThat(run("methods", "l-malic-340")).isEqualTo(ExitStatus.DONE);
        assertThat(out()).contains("\ntallywell: method/1\n");
        assertThat(run("methods", "none")).isEqualTo(ExitStatus.INPUT);
        assertThat(err()).contains("expected one of");
    }

    @Test
    void readExplainsAndListsReadings() {
        assertThat(run("read", SAMPLE + "before.csv")).isEqualTo(ExitStatus.DONE);
        assertThat(out()).contains("96");
        assertThat(run("read", "--csv", SAMPLE + "before.csv")).isEqualTo(ExitStatus.DONE);
        assertThat(out().lines().findFirst())
                .contains("file,block,plate,label,wavelength_nm,time_s,well,absorbance,mark");
        assertThat(out().lines()).hasSize(97);
        assertThat(run("read", "--csv", SAMPLE + "before.csv", "none.csv")).isEqualTo(ExitStatus.INPUT);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("none.csv");
    }

    @Test
    void stackTracesShowOnlyWhenAsked() {
        run("workup", folder.resolve("none.yaml").toString());
        assertThat(err()).doesNotContain("\tat ");
        run("--debug", "workup", folder.resolve("none.yaml").toString());
        assertThat(err()).contains("\tat ");
    }
}
