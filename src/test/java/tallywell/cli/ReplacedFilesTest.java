package tallywell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a call may not replace, with all the options that a person can give it. */
class ReplacedFilesTest {
    @TempDir
    private Path folder;

    private final CallFixture call = new CallFixture();
    private Path a;
    private Path b;

    @BeforeEach
    void copySamples() throws IOException {
        a = CallFixture.copy("cider-l-malic", folder.resolve("a"));
        b = CallFixture.copy("cuvette-typed", folder.resolve("b"));
    }

    @Test
    void batchNeverReplacesItsReadings() throws IOException {
        Path before = a.resolveSibling("before.csv");
        byte[] readings = Files.readAllBytes(before);
        Path link = Files.createSymbolicLink(folder.resolve("link.xlsx"), before);
        Path hard = Files.createLink(folder.resolve("hard.xlsx"), before);
        for (Path target : List.of(before, link, hard)) {
            assertThat(call.run("workup", "--force", a, b, "-o", target)).isEqualTo(ExitStatus.INPUT);
            assertThat(call.err()).contains(target.getFileName() + ": ");
            assertThat(before).hasBinaryContent(readings);
        }
    }

    @Test
    void tablesOfABatchNeverReplaceAListOfTheSameName() throws IOException {
        Path list = Files.move(b.resolveSibling("samples.csv"), b.resolveSibling("results.csv"));
        CallFixture.change(b, "samples.csv", "results.csv");
        byte[] samples = Files.readAllBytes(list);
        Path all = folder.resolve("all.xlsx");
        assertThat(call.run("workup", "--force", a, b, "-o", all, "--tables", list.getParent()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(call.err()).contains("results.csv: ");
        assertThat(list).hasBinaryContent(samples);
        assertThat(all).doesNotExist();
    }

    /** Our own table, read as an earlier result or list, looks like something that may be replaced. */
    @Test
    void fileOfARunThatIsLeftOutIsNotReplacedEither() throws IOException {
        Path list = b.resolveSibling("results.csv");
        Files.writeString(
                list,
                "slot,sample,dilution,volume,mass_g,extract_mL,density_g_per_mL,group,id,note,treatment\n"
                        + "1,Tank 1,1:10\n");
        CallFixture.change(b, "samples.csv", "results.csv");
        byte[] samples = Files.readAllBytes(list);
        assertThat(call.run("workup", "--force", a, b, "-o", folder.resolve("all.xlsx"), "--tables", list.getParent()))
                .isEqualTo(ExitStatus.INPUT);
        assertThat(call.err()).contains("results.csv: is one of the files read");
        assertThat(list).hasBinaryContent(samples);
    }

    @Test
    void everyOutputOfOursIsReplacedWhenAsked() throws IOException {
        Path run = CallFixture.copy("cider-malic-kinetic", folder.resolve("k"));
        Object[] words = {
            "workup",
            "--force",
            run,
            "-o",
            folder.resolve("k.xlsx"),
            "--pdf",
            folder.resolve("k.pdf"),
            "--tables",
            folder.resolve("tables"),
            "--charts",
            folder.resolve("charts"),
            "--package",
            folder.resolve("package")
        };
        int first = call.run(words);
        assertThat(first).as(call.err()).isIn(ExitStatus.DONE, ExitStatus.FAILED_ACCEPTANCE);
        assertThat(call.run(words)).as(call.err()).isEqualTo(first);
        Object[] plan = {"plan", "--force", a, "--samples", folder.resolve("list.csv"), "--pdf", folder.resolve("p.pdf")
        };
        assertThat(call.run(plan)).as(call.err()).isEqualTo(ExitStatus.DONE);
        assertThat(call.run(plan)).as(call.err()).isEqualTo(ExitStatus.DONE);
    }

    @Test
    void checkedSummaryIsNeverReplaced() throws IOException {
        Path summary = folder.resolve("a.xlsx");
        assertThat(call.run("workup", a, "-o", summary)).isEqualTo(ExitStatus.DONE);
        assertThat(call.run("review", summary, "--checked-by", "R. Haas")).isEqualTo(ExitStatus.DONE);
        byte[] checked = Files.readAllBytes(summary);
        assertThat(call.run("workup", "--force", a, "-o", summary)).isEqualTo(ExitStatus.INPUT);
        assertThat(call.err()).contains("has been checked or approved, as a.review.yaml says");
        assertThat(summary).hasBinaryContent(checked);
        Path record = folder.resolve("a.review.yaml");
        assertThat(call.run("plan", "--force", a, "--plan", record)).isEqualTo(ExitStatus.INPUT);
        assertThat(record).content().contains("R. Haas");
    }
}
