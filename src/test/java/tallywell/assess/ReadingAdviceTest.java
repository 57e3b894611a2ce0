package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.notice.InputException;
import tallywell.trace.EndPointSchedule;
import tallywell.trace.ReadingScatter;

/** The number of readings that a plate is advised is one that whole plates of that scatter pass with. */
class ReadingAdviceTest {
    private static final double FIRST_S = 300;

    @ParameterizedTest
    @ValueSource(doubles = {0.0001, 0.0003, 0.001})
    void platesReadAsAdvisedPass(double noise) throws InputException {
        EndPointSchedule advised = EndPointSchedule.of(new ReadingScatter(noise, 50), 0.05, FIRST_S)
                .orElseThrow();
        double[] t = IntStream.range(0, advised.count())
                .mapToDouble(i -> FIRST_S + i * advised.everyS())
                .toArray();

        EndPointPlate.Outcome outcome = new EndPointPlate("absorptivity", 0.05, noise, t).draw(4, 20260601);

        assertThat(outcome.passed()).isGreaterThan(0.93);
    }

    @Test
    void moreScatterAsksForMoreReadings() {
        int quiet = EndPointSchedule.of(new ReadingScatter(0.0001, 50), 0.05, FIRST_S)
                .orElseThrow()
                .count();
        int noisy = EndPointSchedule.of(new ReadingScatter(0.001, 50), 0.05, FIRST_S)
                .orElseThrow()
                .count();

        assertThat(quiet).isLessThan(noisy);
    }

    @Test
    void theObservationSaysItWithTheScatterOfThePlate() throws InputException {
        Assessment assessment = new EndPointPlate("absorptivity", 0.05, 0.001, 300, 600, 900).assessed(1);

        String found = assessment.observations().stream()
                .filter(each -> each.name().equals("reactions were over"))
                .findFirst()
                .orElseThrow()
                .found();
        assertThat(found).containsPattern("\\d readings \\d+ min apart, the first 5.0 min after the trigger, would");
        double scatter = OptionalDouble.of(
                        Double.parseDouble(found.replaceAll("(?s).*a scatter of ([0-9.]+) mA.*", "$1")))
                .getAsDouble();
        assertThat(scatter).isBetween(0.8, 1.3);
    }
}
