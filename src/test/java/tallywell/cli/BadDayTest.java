package tallywell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Full disks, absurd numbers and files that never end: a message, an exit status, and the other runs all the same. */
class BadDayTest {
    @TempDir
    private Path folder;

    private final CallFixture call = new CallFixture();

    /** A disk with room for so many bytes. */
    private static OutputStream disk(int room) {
        return new OutputStream() {
            private int left = room;

            @Override
            public void write(int b) throws IOException {
                if (left == 0) {
                    throw new IOException("No space left on device");
                }
                left--;
            }
        };
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "read --csv samples/cider-l-malic/before.csv",
                "read samples/cider-l-malic/before.csv",
                "layout plate-layouts/thirty-six-in-duplicate.yaml",
                "methods l-malic-340",
                "compare --csv samples/cider-l-malic/run.yaml samples/cider-l-malic-repeat/run.yaml",
                "--help"
            })
    void fullDiskUnderStandardOutputIsNoSuccess(String line) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        PrintStream data = new PrintStream(disk(100), false, StandardCharsets.UTF_8);
        Console console = new Console(data, new PrintStream(err, true, StandardCharsets.UTF_8), false);
        assertThat(Cli.run(console, line.split(" "))).isEqualTo(ExitStatus.INPUT);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("standard output could not be written to its end");
    }

    /** What is changed, from what, to what, and the part of the message that says where. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            method.yaml  | after: 10 min       | after: 1e308 min       | method.yaml, line
            method.yaml  | formula: C4H6O5     | formula: (((C9999)9999)9999)9999 | method.yaml, line
            method.yaml  | absorptivity: 6300 L/mol/cm | absorptivity: 1e-320 L/mol/cm | method.yaml, line
            method.yaml  | sample: 20 µL       | sample: 1e308 µL       | method.yaml, line
            method.yaml  | delta-a: {least: 0.100, most: 1.200} | delta-a: {least: 1.2, most: 0.1} | 'least: 1.2' and 'most: 0.1'
            method.yaml  | delta-a: {least: 0.100, most: 1.200} | delta-a: {least: -1, most: 1.2} | expected 0 or more
            method.yaml  | absorbance: {most: 2.5} | absorbance: {most: 1e308} | method.yaml, line
            method.yaml  | absorbance: {most: 2.5} | absorbance: {most: Infinity} | method.yaml, line
            method.yaml  | absorbance: {most: 2.5} | absorbance: {most: NaN} | method.yaml, line
            samples.csv  | Tank 2 must,1+19    | Tank 2 must,1e308      | samples.csv, line
            samples.csv  | Tank 2 must,1+19    | Tank 2 must,+19        | samples.csv, line
            """)
    void absurdQuantityIsRefusedWithItsPlaceAndTheOtherRunIsKept(String file, String from, String to, String where)
            throws IOException {
        Path bad = CallFixture.copy("cider-l-malic", folder.resolve("bad"));
        CallFixture.change(bad.resolveSibling(file), from, to);
        Path all = folder.resolve("all.xlsx");
        assertThat(call.run("workup", bad, "samples/cuvette-typed/run.yaml", "-o", all))
                .as(call.err())
                .isEqualTo(ExitStatus.INPUT);
        assertThat(call.err()).contains(where).contains("this run cannot be worked up and is left out");
        assertThat(all).isNotEmptyFile();
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e308", "-1e308", "1e-320", "Infinity", "NaN", "1e400"})
    void absurdReadingNeitherTracesNorLosesTheOtherRun(String reading) throws IOException {
        Path bad = CallFixture.copy("cider-l-malic", folder.resolve("bad"));
        Path after = bad.resolveSibling("after.csv");
        String text = Files.readString(after);
        Files.writeString(after, text.replaceFirst("(?m)^A,[^,]*,", "A," + reading + ","));
        assertThat(Files.readString(after)).isNotEqualTo(text);
        Path all = folder.resolve("all.xlsx");
        int status = call.run("workup", bad, "samples/cuvette-typed/run.yaml", "-o", all);
        assertThat(status).as(call.err()).isIn(ExitStatus.DONE, ExitStatus.INPUT, ExitStatus.FAILED_ACCEPTANCE);
        assertThat(call.err()).doesNotContain("Exception").doesNotContain("fault of the program");
        assertThat(all).isNotEmptyFile();
    }

    @Test
    void pipeIsRefusedInsteadOfWaitedFor() throws Exception {
        Path pipe = folder.resolve("pipe.csv");
        org.junit.jupiter.api.Assumptions.assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")));
        assertThat(new ProcessBuilder("/usr/bin/mkfifo", pipe.toString())
                        .start()
                        .waitFor())
                .isZero();
        for (String command : new String[] {"read", "layout", "workup"}) {
            assertThat(call.run(command, pipe)).isEqualTo(ExitStatus.INPUT);
            assertThat(call.err()).contains("found a pipe or a device");
        }
    }
}
