package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tallywell.files.LayoutReader;
import tallywell.files.MethodReader;
import tallywell.method.SampleList;
import tallywell.notice.InputException;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/** A plate of 24 wells read every 15 s for 3 min before and 20 min after the trigger, columns 15 s apart. */
class PlateDriftTest {
    private static final String METHOD = """
            tallywell: method/1
            id: ramp
            title: "Kinetic, for a test"
            source: "made for a test"
            signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm, direction: rises}
            steps:
              - analyte: {name: acid, formula: C4H6O5, signal-per-analyte: 1}
                volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
                timing: {before: 3 min, after: 20 min, trigger-to-first-read: 15 s, stagger-per-column: 15 s}
            light-path: {beam: fixed, length: 1 cm}
            creep: {correct: %s}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            """;

    private static final String LAYOUT = """
            tallywell: layout/1
            name: twenty-four
            plate: 24
            wells:
              A: o o o o o o
              B: 1 1 2 2 3 3
              C: 4 4 5 5 6 6
              D: 7 7 8 8 9 9
            legend:
              o: {role: blank}
            """;

    @TempDir
    Path folder;

    private StepAnalysis worked(String creep, double driftMilli) throws IOException, InputException {
        PlateFormat format = new PlateFormat(4, 6);
        ReadingSeries.Builder series = ReadingSeries.timed(format);
        Random random = new Random(11);
        double[] t = new double[92];
        for (int i = 0; i < t.length; i++) {
            t[i] = 15.0 * i;
        }
        for (Well well : format.all()) {
            double change = well.row() == 0 ? 0.004 : 0.2 + 0.03 * well.column();
            double[] y = new double[t.length];
            for (int i = 0; i < t.length; i++) {
                double after = t[i] - 187 - 15 * well.column();
                double burst = after < 0 ? 0 : change * -Math.expm1(-0.02 * after) + 0.001 * after / 60;
                double lamp = 0.001 * driftMilli * Math.sin(2 * Math.PI * t[i] / 1400);
                y[i] = 0.15 + burst + lamp + 0.0005 * random.nextGaussian();
            }
            series.add(well, t, y, null);
        }
        Path file = folder.resolve("layout.yaml");
        Files.writeString(file, LAYOUT);
        Layout layout = new LayoutReader().read(file);
        Taken taken = new Taken("trace.csv", false, List.of(187.0), OptionalDouble.empty(), series.build());
        Assay assay = new Assay(
                "run.yaml",
                "",
                "",
                "",
                new MethodReader().parse(Path.of("method.yaml"), METHOD.formatted(creep)),
                layout,
                SampleList.plain(layout.slots()),
                List.of(taken),
                Map.of(),
                Map.of());
        return new Workup().analyse(assay).steps().get(0);
    }

    @Test
    void lampThatDriftsIsFlaggedOnTheWellsOfThePlate() throws IOException, InputException {
        for (String creep : List.of("extrapolate", "progress-curve")) {
            StepAnalysis step = worked(creep, 1);
            int unsaid = 0;
            for (WellResult well : step.wells()) {
                double change = well.well().row() == 0
                        ? 0.004
                        : 0.2 + 0.03 * well.well().column();
                double error = well.trace().deltaA().orElseThrow() - change;
                boolean covered = Math.abs(error) < 2 * well.trace().uDeltaA().orElseThrow();
                unsaid += covered || !well.flags().isEmpty() ? 0 : 1;
            }

            assertThat(step.drift().orElseThrow().wells()).isGreaterThan(20);
            assertThat(step.driftOfDeltaA().orElseThrow()).as(creep).isBetween(0.0008, 0.008);
            assertThat(step.where(well -> well.flags().contains(Flag.PLATE_DRIFTS)))
                    .as(creep)
                    .isNotEmpty();
            // A lamp that moves ΔA by several times its uncertainty is either covered by it or said.
            assertThat(unsaid).as(creep).isLessThanOrEqualTo(2);
        }
    }

    @Test
    void steadyPlateIsNotFlagged() throws IOException, InputException {
        for (String creep : List.of("extrapolate", "progress-curve")) {
            StepAnalysis step = worked(creep, 0);

            assertThat(step.drift().orElseThrow().isSeen()).as(creep).isFalse();
            assertThat(step.where(well -> well.flags().contains(Flag.PLATE_DRIFTS)))
                    .isEmpty();
        }
    }

    @Test
    void withoutTracesThereIsNothingToCompare() throws IOException, InputException {
        assertThat(worked("none", 1).drift()).isEmpty();
    }
}
