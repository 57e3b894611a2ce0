package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.method.Run;
import tallywell.notice.InputException;
import tallywell.plate.Well;

class RunReaderTest {
    private static final String SOUND = """
            tallywell: run/1
            title: "Autumn pressing, tanks 1 to 36"
            method: l-malic-340              # built-in id, or a path
            layout: ../layout.yaml
            samples: samples.csv
            operator: "J. Doe"
            readings:                        # in the order they were taken
              - {file: before.csv}                       # the baseline
              - {file: after.csv, trigger: before, block: 2, wavelength: 340 nm, time: 10 min, plate: P1}
            # - {file: trace.csv, trigger-at: 225 s}
            exclude:
              - {wells: "C5 D1-D3", reason: "bubble", by: "J. Doe"}
            finished-from:
              - {wells: "E4 F4", time: 9 min, reason: "bubble at 8 min", by: "J. Doe"}
            """;

    @TempDir
    private Path folder;

    private Run read(String text) throws InputException {
        return new RunReader().read(FilesFixture.file(folder, "run.yaml", text));
    }

    @Test
    void readsEveryKey() throws InputException {
        Run run = read(SOUND);
        assertThat(run.method()).isEqualTo("l-malic-340");
        assertThat(run.samples()).contains("samples.csv");
        Run.Reading after = run.readings().get(1);
        assertThat(after.triggerBefore()).isTrue();
        assertThat(after.block()).hasValue(2);
        assertThat(after.wavelengthNm()).hasValue(340);
        assertThat(after.timeS()).hasValue(600);
        assertThat(after.plate()).contains("P1");
        assertThat(run.exclusions().get(0).wells())
                .containsExactly(new Well(2, 4), new Well(3, 0), new Well(3, 1), new Well(3, 2));
        assertThat(run.finishedFrom().get(0).timeS()).isEqualTo(540);
    }

    @Test
    void triggersInsideASeriesAscend() throws InputException {
        String series = SOUND.replace("{file: before.csv}", "{file: trace.csv, trigger-at: [225 s, 15 min]}");
        assertThat(read(series).readings().get(0).triggerAtS()).containsExactly(225.0, 900.0);
        assertThatThrownBy(() -> read(series.replace("15 min", "1 min")))
                .hasMessageContaining("expected ascending times");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            trigger: before     | trigger: after      | line 9: found 'trigger: after'; expected 'trigger: before'
            block: 2            | block: 0            | found '0'; expected a whole number from 1
            wavelength: 340 nm  | wavelength: 340     | without a unit
            file: before.csv    | fiel: before.csv    | line 8: found the unknown key 'fiel'; expected one of file, trigger
            "C5 D1-D3"          | "C5 X99"            | found 'X99'; expected wells such as C5
            reason: "bubble",   |                     | line 12: found no key 'reason'
            operator: "J. Doe"  | operator: J. Doe # x | which would be cut off
            operator: "J. Doe"  | operator:           | line 6: found the key 'operator' without a value
            method: l-malic-340 | methd: l-malic-340  | found the unknown key 'methd'
            time: 9 min         | time: -9 min        | expected a time of 0 or more
            """)
    void saysWhereWhatAndWhatWouldBeRight(String right, String wrong, String message) {
        String text = SOUND.replace(right, wrong == null ? "" : wrong);
        assertThat(text).isNotEqualTo(SOUND);
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("run.yaml, line")
                .hasMessageContaining(message);
    }
}
