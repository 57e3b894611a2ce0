package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;
import tallywell.plate.Well;

/** Times from the trigger of each well, worked by hand after docs/formats.md. */
class TimelineTest {
    private static final String ONE = """
            tallywell: method/1
            id: by-hand
            signal: {absorptivity: 6300 L/mol/cm}
            steps:
              - analyte: {name: acid, molar-mass: 63 g/mol}
                volumes: {sample: 10 µL, before-trigger: 90 µL, after-trigger: 100 µL}
                timing: {trigger-to-first-read: 30 s, stagger-per-column: 5 s}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            """;

    private static final String TWO = ONE.replace(
            "light-path:",
            "  - analyte: {name: other, molar-mass: 63 g/mol}\n"
                    + "    volumes: {sample: 10 µL, before-trigger: 100 µL, after-trigger: 110 µL}\n"
                    + "    timing: {stagger-per-column: 2 s}\n"
                    + "light-path:");

    private static Plates plate(String method) {
        return Plates.small().method(method).layout("o 1 1", "2 2 2", "o: {role: blank}");
    }

    private static Plates series(Plates plate, boolean triggerBefore, List<Double> triggers, double... times) {
        double[][] wells = new double[6][];
        for (int i = 0; i < wells.length; i++) {
            wells[i] = new double[times.length];
            for (int j = 0; j < times.length; j++) {
                // Every reading of every series is another number, so that no two files look the same.
                wells[i][j] = 0.1 * triggers.size() + (triggerBefore ? 0.5 : 0) + 0.001 * j + times[0] * 1e-5;
            }
        }
        return plate.series(triggerBefore, triggers, times, wells);
    }

    private static List<Double> after(Assay assay, String well, int step) throws InputException {
        return new Timeline(assay)
                .of(Well.parse(well).orElseThrow(), step).after().stream()
                        .map(WellReadings.Point::timeS)
                        .toList();
    }

    private static List<Double> before(Assay assay, String well) throws InputException {
        return new Timeline(assay)
                .of(Well.parse(well).orElseThrow(), 0).baseline().stream()
                        .map(WellReadings.Point::timeS)
                        .toList();
    }

    @Test
    void separateFilesCountFromTheFirstReadingAfterTheTrigger() throws InputException {
        Assay assay = series(series(plate(ONE), false, List.of(), 7, 22), true, List.of(), 100, 115, 130)
                .assay();
        assertThat(after(assay, "A1", 0)).containsExactly(30.0, 45.0, 60.0);
        assertThat(after(assay, "A3", 0)).containsExactly(20.0, 35.0, 50.0);
        assertThat(before(assay, "A1")).containsExactly(-15.0, 0.0);
    }

    @Test
    void triggerInsideASeriesCutsEachColumnAtItsOwnTime() throws InputException {
        Assay assay = series(plate(ONE), false, List.of(15.0), 0, 10, 20, 30).assay();
        assertThat(before(assay, "A1")).containsExactly(-15.0, -5.0);
        assertThat(after(assay, "A1", 0)).containsExactly(5.0, 15.0);
        // column 3 was triggered at 25 s
        assertThat(before(assay, "A3")).containsExactly(-25.0, -15.0, -5.0);
        assertThat(after(assay, "A3", 0)).containsExactly(5.0);
    }

    @Test
    void additionsFromTheRightReachTheLastColumnFirst() throws InputException {
        String right = ONE.replace("stagger-per-column: 5 s", "stagger-per-column: 5 s, stagger-from: right");
        Assay assay = series(plate(right), false, List.of(15.0), 0, 10, 20, 30).assay();
        assertThat(after(assay, "A3", 0)).containsExactly(5.0, 15.0);
        assertThat(after(assay, "A1", 0)).containsExactly(5.0);
    }

    @Test
    void readingsBeforeThePlateHasSettledAreDropped() throws InputException {
        String settle = ONE.replace("stagger-per-column: 5 s", "stagger-per-column: 5 s, settle: 8 s");
        // last addition 10 s after the first, at 25 s; settled at 33 s
        Assay assay = series(plate(settle), false, List.of(15.0), 0, 10, 20, 30, 33, 40)
                .assay();
        assertThat(after(assay, "A1", 0)).containsExactly(18.0, 25.0);
        assertThat(before(assay, "A1")).containsExactly(-15.0, -5.0);
    }

    @Test
    void twoTriggersInsideASeriesMakeTwoSteps() throws InputException {
        Assay assay = series(plate(TWO), false, List.of(15.0, 35.0), 0, 10, 20, 30, 40, 50)
                .assay();
        assertThat(after(assay, "A1", 0)).containsExactly(5.0, 15.0);
        assertThat(after(assay, "A1", 1)).containsExactly(5.0, 15.0);
        // column 3: first trigger at 25 s, second at 39 s
        assertThat(after(assay, "A3", 0)).containsExactly(5.0);
        assertThat(after(assay, "A3", 1)).containsExactly(1.0, 11.0);
        assertThat(new Timeline(assay).of(new Well(0, 2), 0).nextTriggerS()).isEqualTo(14);
    }

    @Test
    void statedTimesOfEndPointsCountFromTheFirstTrigger() throws InputException {
        Assay assay = plate(ONE)
                .read(false, "0 0 0 0 0 0")
                .read(true, OptionalDouble.of(120), "1 1 1 1 1 1")
                .read(false, OptionalDouble.of(240), "2 2 2 2 2 2")
                .assay();
        assertThat(after(assay, "A1", 0)).containsExactly(120.0, 240.0);
        assertThat(after(assay, "A3", 0)).containsExactly(110.0, 230.0);
    }

    @Test
    void furtherSeriesOfTheSameStepNeedsItsTime() {
        Plates plate = series(
                series(series(plate(ONE), false, List.of(), 0, 10), true, List.of(), 0, 10), false, List.of(), 1, 2);
        assertThatThrownBy(() -> new Timeline(plate.assay())).hasMessageContaining("expected 'time:'");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            late    | found a trigger at 99 s, outside the series
            early   | found a trigger at 0 s, outside the series
            untimed | readings after the same trigger without times
            none    | found no trigger among the readings
            many    | found 2 triggers among the readings, but the method 'by-hand' has 1 step
            first   | found no reading before the first trigger
            """)
    void saysWhatIsWrongWithTheOrderOfReadings(String what, String message) {
        Plates plate = plate(ONE);
        Plates wrong = switch (what) {
            case "late" -> series(plate, false, List.of(99.0), 0, 10, 20);
            case "early" -> series(plate, false, List.of(0.0), 0, 10, 20);
            case "untimed" ->
                plate.read(false, "0 0 0 0 0 0").read(true, "1 1 1 1 1 1").read(false, "2 2 2 2 2 2");
            case "none" -> plate.read(false, "0 0 0 0 0 0");
            case "many" -> series(plate, false, List.of(5.0, 15.0), 0, 10, 20);
            case "first" -> plate.read(true, "0 0 0 0 0 0");
            default -> throw new IllegalArgumentException(what);
        };
        assertThatThrownBy(() -> new Timeline(wrong.assay()))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("run.yaml")
                .hasMessageContaining(message);
    }
}
