package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.assess.Assessment;
import tallywell.assess.Assessor;
import tallywell.assess.Check;
import tallywell.assess.Verdict;
import tallywell.notice.InputException;
import tallywell.workup.Flag;
import tallywell.workup.Workup;

/** The cider plate read before, and another or the turned one read after it, without any name or time in the files. */
class OtherPlateTest {
    private static final Path CIDER = Path.of("samples/cider-l-malic");

    @TempDir
    private Path folder;

    @BeforeEach
    void copySample() throws IOException {
        for (String name : List.of("before.csv", "after.csv", "samples.csv", "method.yaml")) {
            Files.copy(CIDER.resolve(name), folder.resolve(name));
        }
        run("");
    }

    private void run(String samePlate) throws IOException {
        Files.writeString(
                folder.resolve("run.yaml"),
                Files.readString(CIDER.resolve("run.yaml"))
                        .replace(
                                "../../plate-layouts",
                                Path.of("plate-layouts").toAbsolutePath().toString())
                        .replace("trigger: before}", "trigger: before" + samePlate + "}"));
    }

    private Assessment assessed() throws InputException {
        return new Assessor()
                .assess(new Workup()
                        .analyse(
                                new RunLoader().load(folder.resolve("run.yaml")).assay()));
    }

    private static Check pattern(Assessment assessment) {
        return assessment.observations().stream()
                .filter(each -> each.name().startsWith("pattern of the wells"))
                .findFirst()
                .orElseThrow();
    }

    private double[][] grid(String file) throws IOException {
        double[][] grid = new double[8][12];
        List<String> lines = Files.readAllLines(folder.resolve(file));
        for (int row = 0; row < 8; row++) {
            String[] cells = lines.get(row + 1).split(",");
            for (int column = 0; column < 12; column++) {
                grid[row][column] = Double.parseDouble(cells[column + 1]);
            }
        }
        return grid;
    }

    private void write(String file, double[][] grid) throws IOException {
        StringBuilder text = new StringBuilder(",1,2,3,4,5,6,7,8,9,10,11,12\n");
        for (int row = 0; row < 8; row++) {
            text.append((char) ('A' + row));
            for (double each : grid[row]) {
                text.append(',').append(String.format(java.util.Locale.ROOT, "%.4f", each));
            }
            text.append('\n');
        }
        Files.writeString(folder.resolve(file), text);
    }

    /** Wells of 8 mA besides what the sample has; those of the later reading are other ones where it is another plate. */
    private void wells(boolean other) throws IOException {
        Random random = new Random(21);
        double[][] before = grid("before.csv");
        double[][] after = grid("after.csv");
        for (int row = 0; row < 8; row++) {
            for (int column = 0; column < 12; column++) {
                double own = 0.008 * random.nextGaussian();
                before[row][column] += own;
                after[row][column] += other ? 0.008 * random.nextGaussian() : own;
            }
        }
        write("before.csv", before);
        write("after.csv", after);
    }

    private static void areAllToBeChecked(Assessment assessment) {
        assertThat(assessment.judgements()).allMatch(each -> each.verdict() != Verdict.REPORT);
        assertThat(assessment.judgements())
                .allMatch(each -> each.result().flags().contains(Flag.OTHER_PLATE));
    }

    @Test
    void onePlateComesBack() throws InputException, IOException {
        assertThat(pattern(assessed()).state()).isEqualTo(Check.State.PASSED);

        wells(false);

        Assessment assessment = assessed();
        assertThat(pattern(assessment).state()).isEqualTo(Check.State.PASSED);
        assertThat(pattern(assessment).name()).isEqualTo("pattern of the wells of before.csv in after.csv");
        assertThat(assessment.judgements())
                .noneMatch(each -> each.result().flags().contains(Flag.OTHER_PLATE));
    }

    @Test
    void everyResultOfAnotherPlateIsToBeChecked() throws InputException, IOException {
        wells(true);

        Assessment assessment = assessed();

        areAllToBeChecked(assessment);
        assertThat(pattern(assessment).state()).isEqualTo(Check.State.FAILED);
        assertThat(pattern(assessment).found()).startsWith("it does not come back: another plate is ");
    }

    @Test
    void aPersonCanSayThatItIsThePlate() throws InputException, IOException {
        wells(true);
        run(", same-plate: \"wells wiped dry between the readings\"");

        Assessment assessment = assessed();

        assertThat(pattern(assessment).state()).isEqualTo(Check.State.NOT_ASSESSED);
        assertThat(pattern(assessment).found())
                .endsWith("accepted with 'same-plate': \"wells wiped dry between the readings\"");
        assertThat(assessment.judgements())
                .noneMatch(each -> each.result().flags().contains(Flag.OTHER_PLATE));
    }

    @Test
    void aTurnedPlateIsSaidToBeTurned() throws InputException, IOException {
        double[][] after = grid("after.csv");
        double[][] turned = new double[8][12];
        for (int i = 0; i < 96; i++) {
            turned[i / 12][i % 12] = after[7 - i / 12][11 - i % 12];
        }
        write("after.csv", turned);

        Assessment assessment = assessed();

        areAllToBeChecked(assessment);
        assertThat(pattern(assessment).found()).startsWith("it comes back with the later plate turned by 180 degrees");
    }
}
