package tallywell.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadMomentTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Read 2026-03-09 14:05:22 | 2026-03-09T14:05:22",
                "Date: 9.3.2026; Time: 14:05 | 2026-03-09T14:05",
                "Date: 09/03/26; 2:05:22 PM | 2026-03-09T14:05:22",
                "03/25/2026 12:10 am | 2026-03-25T00:10",
                "2026-03-09; 99:99; 14:05 | 2026-03-09T14:05"
            })
    void aMomentIsReadInTheSpellingsOfExports(String line, String expected) {
        assertThat(ReadMoment.in(List.of("Absorbance 340 nm", line))).hasValue(LocalDateTime.parse(expected));
    }

    @Test
    void theTimeMayStandInTheNextRowAndIsNotTakenFromElsewhere() {
        assertThat(ReadMoment.in(Arrays.asList("Date 2026-03-09", "Time 14:05:22")))
                .hasValue(LocalDateTime.parse("2026-03-09T14:05:22"));
        assertThat(ReadMoment.in(Arrays.asList("Date 2026-03-09", "", "00:00:15")))
                .isEmpty();
        assertThat(ReadMoment.in(List.of("00:00:15", "31.02.2026 10:00"))).isEmpty();
    }
}
