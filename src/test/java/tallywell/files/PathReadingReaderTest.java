package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.method.LightPath;
import tallywell.method.PathReading;
import tallywell.notice.InputException;

/** What a run and a method say of a light path that is measured. */
class PathReadingReaderTest {
    private static final String RUN = """
            tallywell: run/1
            method: m.yaml
            layout: l.yaml
            readings:
              - {file: before.csv}
              - {file: after.csv, trigger: before, wavelength: 340 nm}
            path-reading:
              peak: {file: after.csv, wavelength: 977 nm}
              beside: {file: after.csv, block: 3}
              one-centimetre: {peak: 0.341, beside: 0.158}
              uncertainty: {expanded: 2 %}
            """;

    private static final String METHOD = """
            tallywell: method/1
            id: small
            signal: {wavelength: 340 nm, absorptivity: 6300 L/mol/cm}
            light-path: {beam: measured, well-area: 33.2 mm2}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            steps:
              - analyte: {name: first, formula: C4H6O5}
                volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
              - analyte: {name: second, formula: C4H6O5}
                volumes: {sample: 20 µL, before-trigger: 290 µL, after-trigger: 290 µL}
            """;

    @TempDir
    private Path folder;

    private PathReading path(String text) throws InputException {
        return new RunReader()
                .read(FilesFixture.file(folder, "run.yaml", text))
                .pathReading()
                .orElseThrow();
    }

    @Test
    void readsEveryKey() throws InputException {
        PathReading path = path(RUN);
        assertThat(path.peak().file()).isEqualTo("after.csv");
        assertThat(path.peak().wavelengthNm()).hasValue(977);
        assertThat(path.beside().block()).hasValue(3);
        assertThat(path.peakOfOneCm()).isEqualTo(0.341);
        assertThat(path.besideOfOneCm()).isEqualTo(0.158);
        assertThat(path.spread().standardUncertainty()).isEqualTo(0.01);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            peak: 0.341, beside: 0.158 | peak: 0.158, beside: 0.341 | expected more at the peak than beside it
            peak: 0.341, beside: 0.158 | peak: 0.341                | 'beside'
            uncertainty: {expanded: 2 %} | # nothing                | 'uncertainty: {standard: 1 %}'
            block: 3                   | time: 3 min                | 'time'
            one-centimetre             | one-inch                   | 'one-inch'
            """)
    void saysWhatWouldBeRight(String right, String wrong, String message) {
        assertThat(RUN).contains(right);
        assertThatThrownBy(() -> path(RUN.replace(right, wrong)))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(message);
    }

    private LightPath method(String text) throws InputException {
        return new MethodReader().parse(Path.of("m.yaml"), text).lightPath().orElseThrow();
    }

    @Test
    void aMethodSaysThatThePathIsMeasured() throws InputException {
        assertThat(method(METHOD)).isEqualTo(new LightPath.Measured(33.2));
        // By hand: 290 mm³ / 33.2 mm² = 8.73494 mm.
        assertThat(method(METHOD).cm(290)).isCloseTo(0.873494, org.assertj.core.api.Assertions.within(1e-6));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            before-trigger: 290 µL, after-trigger: 290 µL | before-trigger: 290 µL, after-trigger: 310 µL | steps end at different volumes
            report: {unit: g/L} | 'trigger-dilution: correct\nreport: {unit: g/L}' | found 'trigger-dilution: correct' with a vertical beam
            , well-area: 33.2 mm2 | '' | well-area: 33.2 mm2
            """)
    void aMethodThatCannotMeasureItIsRefused(String right, String wrong, String message) {
        assertThat(METHOD).contains(right);
        assertThatThrownBy(() -> method(METHOD.replace(right, wrong == null ? "" : wrong)))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(message);
    }
}
