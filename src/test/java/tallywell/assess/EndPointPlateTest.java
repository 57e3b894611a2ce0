package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;

/**
 * Whole plates read three to sixty times after the trigger, from readings to verdicts: what was read too early is not to be
 * reported wrong, and what was over is to pass.
 */
class EndPointPlateTest {
    private static EndPointPlate plate(
            String by, double rate, double noiseMilli, int count, double firstMin, double everyMin) {
        double[] t = IntStream.range(0, count)
                .mapToDouble(i -> 60 * (firstMin + i * everyMin))
                .toArray();
        return new EndPointPlate(by, rate, noiseMilli / 1000, t);
    }

    /** Read three or four times while up to nearly half is still to come. */
    @ParameterizedTest
    @CsvSource({
        "0.008, 3, 5, 5",
        "0.008, 4, 5, 2",
        "0.006, 4, 5, 2",
        "0.004, 4, 5, 2",
        "0.006, 3, 3, 3",
        "0.002, 3, 3, 3",
        "0.002, 3, 5, 5",
        "0.004, 5, 5, 2",
        "0.006, 6, 3, 2",
        "0.008, 8, 2, 1",
        "0.012, 3, 5, 5",
        "0.015, 3, 3, 2",
        "0.006, 12, 2, 1",
        "0.004, 60, 0.25, 0.25"
    })
    void whatIsReadTooEarlyIsNotReportedWrong(double rate, int count, double first, double every)
            throws InputException {
        for (String by : new String[] {"absorptivity", "standards, model: line"}) {
            for (double noise : new double[] {0.3, 1}) {
                EndPointPlate.Outcome outcome =
                        plate(by, rate, noise, count, first, every).draw(4, 20260401);
                assertThat(outcome.wrong()).as(by + " " + noise).isLessThan(0.05);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0.03, 4, 5, 5, 0.90",
        "0.03, 5, 5, 5, 0.95",
        "0.03, 6, 5, 5, 0.95",
        "0.05, 8, 3, 2, 0.95",
        "0.03, 12, 5, 1, 0.95",
        "0.05, 60, 0.25, 0.25, 0.95"
    })
    void whatWasOverPasses(double rate, int count, double first, double every, double least) throws InputException {
        for (String by : new String[] {"absorptivity", "standards, model: line"}) {
            for (double noise : new double[] {0.3, 1}) {
                EndPointPlate.Outcome outcome =
                        plate(by, rate, noise, count, first, every).draw(4, 20260402);
                assertThat(outcome.passed()).as(by + " " + noise).isGreaterThan(least);
                assertThat(outcome.wrong()).as(by + " " + noise).isLessThan(0.05);
            }
        }
    }

    /** Three readings do with a quiet reader; five within 8 min do not with a noisy one, and say so. */
    @ParameterizedTest
    @CsvSource({"0.3, 3, 5, 5, 0.90", "1, 3, 5, 5, 0.4", "0.3, 5, 5, 2, 0.95", "1, 5, 5, 2, 0.7"})
    void fewReadingsPassAsFarAsTheyTell(double noise, int count, double first, double every, double least)
            throws InputException {
        EndPointPlate.Outcome outcome =
                plate("absorptivity", 0.03, noise, count, first, every).draw(4, 20260403);

        assertThat(outcome.passed()).isGreaterThan(least);
        assertThat(outcome.incomplete()).isLessThan(0.03);
        assertThat(outcome.wrong()).isLessThan(0.05);
    }
}
