package tallywell.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MomentTest {
    private static final Interpretation FIRST = new Interpretation(DecimalMark.POINT, TimeUnit.SECOND, TimeUnit.SECOND);

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "0:00:30; 30; NOTHING",
                "00:10:05.5; 605.5; NOTHING",
                "26:10:05; 94205; NOTHING",
                "1:30; 90; PARTS",
                "1:30.5; 90.5; NOTHING",
                "30 s; 30; NOTHING",
                "30s; 30; NOTHING",
                "1.5 min; 90; NOTHING",
                "0,5 h; 1800; NOTHING",
                "2 Stunden; 7200; NOTHING",
                "1 min 30 s; 90; NOTHING",
                "1m30s; 90; NOTHING",
                "1h 0m 5s; 3605; NOTHING",
                "200 ms; 0.2; NOTHING",
                "1:00:30 PM; 46830; NOTHING",
                "12:00:30 am; 30; NOTHING"
            })
    void timesAreReadWithWhatTheyLeaveOpen(String text, double seconds, Moment.Open open) {
        Moment moment = Moment.parse(text).orElseThrow();
        assertThat(moment.seconds(FIRST)).isEqualTo(seconds);
        assertThat(moment.open()).isEqualTo(open);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0:75", "1:2", "30", "A1", "30 x", "1 s 30 min", "25 C", "12:30:75", ""})
    void otherWordsAreNoTimes(String text) {
        assertThat(Moment.parse(text)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "Time [s]; 30; 30",
                "time_s; 30; 30",
                "Zeit (min); 1,5; 90",
                "Time in hours; 2; 7200",
                "Time [mm:ss]; 1:30; 90",
                "Time (h:mm); 1:30; 5400",
                "Time [hh:mm:ss]; 0.5; 43200",
                "Time; 1 min; 60"
            })
    void headingGivesTheUnit(String heading, String cell, double seconds) {
        Optional<Moment> moment = TimeHeading.of(heading).read(cell);
        assertThat(moment.orElseThrow().seconds(FIRST)).isEqualTo(seconds);
        assertThat(moment.orElseThrow().open()).isEqualTo(Moment.Open.NOTHING);
    }
}
