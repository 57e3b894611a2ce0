package tallywell.task;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.desk.RunStore;
import tallywell.notice.InputException;
import tallywell.notice.Notice;

/** A run whose light paths are measured, from the files to every way out. */
class MeasuredPathRunTest {
    @TempDir
    private Path folder;

    @BeforeEach
    void files() throws Exception {
        write("method.yaml", """
                tallywell: method/1
                id: small
                signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm}
                light-path: {beam: measured, well-area: 33.2 mm2}
                calibration: {by: absorptivity}
                report: {unit: g/L}
                steps:
                  - analyte: {name: malic acid, molar-mass: 134.087 g/mol}
                    volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
                """);
        write("layout.yaml", """
                tallywell: layout/1
                plate: 6
                wells:
                  A: o 1 2
                  B: o 1 2
                legend:
                  o: {role: blank}
                """);
        write("before.csv", "Wavelength: 340 nm\n,1,2,3\nA,0.1,0.1,0.1\nB,0.1,0.1,0.1\n");
        write("after.csv", """
                Wavelength: 340 nm
                ,1,2,3
                A,0.16,0.6,0.4
                B,0.161,0.602,0.403

                Wavelength: 977 nm
                ,1,2,3
                A,0.2156,0.2064,0.2201
                B,0.2150,0.2071,0.2195

                Wavelength: 900 nm
                ,1,2,3
                A,0.06,0.06,0.06
                B,0.06,0.06,0.06
                """);
        write("run.yaml", """
                tallywell: run/1
                method: method.yaml
                layout: layout.yaml
                readings:
                  - {file: before.csv}
                  - {file: after.csv, trigger: before, wavelength: 340 nm}
                path-reading:
                  peak: {file: after.csv, wavelength: 977 nm}
                  beside: {file: after.csv, wavelength: 900 nm}
                  one-centimetre: {peak: 0.341, beside: 0.158}
                  uncertainty: {standard: 1 %}
                """);
    }

    private void write(String name, String text) throws Exception {
        Files.writeString(folder.resolve(name), text);
    }

    private void edit(String name, String from, String to) throws Exception {
        String text = Files.readString(folder.resolve(name));
        assertThat(text).contains(from);
        write(name, text.replace(from, to));
    }

    private WorkUp.Outcome workUp() throws Exception {
        Wanted wanted = new Wanted(
                Optional.of(folder.resolve("out.xlsx")),
                Optional.of(folder.resolve("tables")),
                Optional.empty(),
                Optional.of(folder.resolve("out.pdf")),
                Optional.of(folder.resolve("package")),
                true);
        return new WorkUp()
                .run(
                        new WorkUp.Request(
                                List.of(folder.resolve("run.yaml")),
                                Optional.empty(),
                                wanted,
                                Instant.EPOCH,
                                ZoneOffset.UTC,
                                Optional.of(new Draws(10_000, 1))),
                        Progress.SILENT);
    }

    private List<String> row(String table, int number) throws Exception {
        return Arrays.asList(Files.readAllLines(folder.resolve("tables").resolve(table))
                .get(number)
                .split(",", -1));
    }

    private double cell(String table, int row, String column) throws Exception {
        return Double.parseDouble(row(table, row).get(row(table, 0).indexOf(column)));
    }

    @Test
    void theLastColumnOfTheWellsIsThePathAndTheValueFollowsFromIt() throws Exception {
        WorkUp.Outcome done = workUp();
        assertThat(done.notices()).isEmpty();
        assertThat(row("wells.csv", 0)).endsWith("flags", "path_cm");
        // A2, by hand: (0.2064 - 0.06) / (0.341 - 0.158) = 0.8 cm.
        assertThat(cell("wells.csv", 2, "path_cm")).isCloseTo(0.8, within(1e-9));
        // By hand, each ΔA over its own path: A1 0.06 / 0.850273, B1 0.061 / 0.846995, mean 0.0712925 per cm; A2 0.5 /
        // 0.8 = 0.625,
        // so (0.625 - 0.0712925) · 290 · 134.087 / (6300 · 20) = 0.170881 g/L.
        assertThat(cell("wells.csv", 2, "value")).isCloseTo(0.170881, within(1e-6));
        assertThat(row("results.csv", 1)).contains("budget");
        // The reading of 1 cm is 1 % uncertain, so the result is at least that.
        double u = cell("results.csv", 1, "u") / cell("results.csv", 1, "value");
        assertThat(u).isBetween(0.01, 0.013);
        assertThat(done.lines().get(1)).contains("differs from that of the budget by");
        assertThat(Double.parseDouble(done.lines().get(1).replaceAll(".*budget by ([0-9.]+) %.*", "$1")))
                .isLessThan(2.5);
        assertThat(Files.readAllLines(folder.resolve("package/readings.csv"))).hasSize(1 + 4 * 6);
    }

    @Test
    void theSummaryIsRecheckedFromWhatItCarries() throws Exception {
        workUp();
        Recheck.Outcome outcome = new Recheck().run(folder.resolve("out.xlsx"), Optional.empty());
        assertThat(outcome.lines()).isEmpty();
        assertThat(outcome.sentence()).startsWith("identical; 1 run");
    }

    @Test
    void aLostPathIsSaidAndTheResultIsToBeChecked() throws Exception {
        edit("after.csv", "0.2064", "OVER");
        WorkUp.Outcome done = workUp();
        assertThat(done.notices())
                .extracting(Notice::text)
                .anyMatch(text -> text.startsWith("the light path of A2 cannot be measured"));
        assertThat(row("results.csv", 1)).contains("check").anyMatch(word -> word.contains("readings-missing"));
    }

    @Test
    void aDoubtfulPathIsToBeChecked() throws Exception {
        edit("after.csv", "0.2064", "0.1764");
        workUp();
        assertThat(row("results.csv", 1)).contains("check").anyMatch(word -> word.contains("path-doubtful"));
    }

    @Test
    void aWavelengthThatIsNotThereIsRefused() throws Exception {
        edit("run.yaml", "900 nm", "905 nm");
        assertThatThrownBy(this::workUp).isInstanceOf(InputException.class).hasMessageContaining("block 3: 900 nm");
    }

    @Test
    void readingsOfAnotherPlateAreRefused() throws Exception {
        write("nir.csv", "Plate: P2\nWavelength: 977 nm\n,1,2,3\nA,0.2156,0.2064,0.2201\nB,0.2150,0.2071,0.2195\n");
        edit("before.csv", "Wavelength", "Plate: P1\nWavelength");
        edit("run.yaml", "peak: {file: after.csv", "peak: {file: nir.csv");
        assertThatThrownBy(this::workUp).isInstanceOf(InputException.class).hasMessageContaining("one plate");
    }

    @Test
    void theWindowDoesNotOpenWhatItCannotKeep() {
        assertThatThrownBy(() -> new RunStore().open(folder.resolve("run.yaml")))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("work this one up with 'tallywell workup'");
    }
}
