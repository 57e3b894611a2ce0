package tallywell.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A few end points after the reaction, and wells in which nothing reacts.
 *
 * <p>The rule followed: read again every 2 to 5 min, 5 to 6 times, and extrapolate once the change per minute is constant
 * (GOST R 51938-2002, annex B; from memory). Its reader must get a result, and be told where the reaction was not over.
 */
class EndPointsTest {
    private static final int TRACES = 400;
    private static final AfterRule LINE = new AfterRule.Extrapolate(OptionalDouble.empty());
    private static final AfterRule CURVE = new AfterRule.ProgressCurve(OptionalDouble.empty());

    /** What became of the wells: parts of all that were flagged, covered by twice their uncertainty, more uncertain than 5 mA. */
    private record Outcome(double incomplete, double covered, double over5mA) {}

    private interface Left {
        double at(double t);
    }

    private static Outcome outcome(
            double[] t, double change, Left left, double creepPerMin, double noise, AfterRule rule) {
        Random random = new Random(20260102);
        int incomplete = 0;
        int covered = 0;
        int wide = 0;
        for (int k = 0; k < TRACES; k++) {
            double[] y = Arrays.stream(t)
                    .map(s -> 0.1 + change * (1 - left.at(s)) + creepPerMin * s / 60 + noise * random.nextGaussian())
                    .toArray();
            double[] before = IntStream.range(0, 3)
                    .mapToDouble(i -> 0.1 + noise * random.nextGaussian())
                    .toArray();
            Change found = DeltaA.of(new Baseline.Read(Series.untimed(before), BeforeRule.MEAN), Series.of(t, y), rule);
            double u = found.uDeltaA().orElseThrow();
            incomplete += found.flags().contains(TraceFlag.REACTION_INCOMPLETE) ? 1 : 0;
            covered += Math.abs(found.deltaA() - change) < 2 * u ? 1 : 0;
            wide += u > 0.005 ? 1 : 0;
        }
        return new Outcome((double) incomplete / TRACES, (double) covered / TRACES, (double) wide / TRACES);
    }

    private static double[] every(double minutes, int count, double firstMinutes) {
        return IntStream.range(0, count)
                .mapToDouble(i -> 60 * (firstMinutes + i * minutes))
                .toArray();
    }

    /** Creep up to 2 mA/min, as the rule is for; half an hour at most. */
    @ParameterizedTest
    @CsvSource({
        "2, 6, 10, 0.4, 0.0003, 0.03",
        "2, 6, 10, 0.4, 0.001, 0.10",
        "2, 6, 3, 0.4, 0.0003, 0.03",
        "5, 5, 10, 0.4, 0.0003, 0.10",
        "5, 6, 5, 0.4, 0.001, 0.05",
        "2, 6, 10, 0, 0.0003, 0.08",
        "2, 6, 10, 0, 0.001, 0.08",
        "5, 5, 10, 0, 0.001, 0.10"
    })
    void endPointsLongAfterTheReactionGiveAResult(
            double interval, int count, double first, double change, double noise, double mostFlagged) {
        Outcome outcome = outcome(every(interval, count, first), change, s -> Math.exp(-0.03 * s), 0.002, noise, LINE);

        assertThat(outcome.incomplete()).isLessThan(mostFlagged);
        assertThat(outcome.covered()).isGreaterThan(0.92);
    }

    /** At the first reading between 36 mA and 240 mA are left. */
    @ParameterizedTest
    @CsvSource({"2, 6, 10, 0.002", "2, 6, 10, 0.004", "5, 5, 10, 0.003", "2, 6, 2, 0.004", "3, 5, 3, 0.006"})
    void endPointsOfAReactionThatIsNotOverAreFlagged(double interval, int count, double first, double rate) {
        Outcome outcome = outcome(every(interval, count, first), 0.4, s -> Math.exp(-rate * s), 0.001, 0.0005, LINE);

        assertThat(outcome.incomplete()).isGreaterThan(0.98);
    }

    /** A blank, read for 8 to 30 min; noise would put the end of a burst that is not there anywhere. */
    @ParameterizedTest
    @CsvSource({"32, 0.0003", "32, 0.001", "120, 0.0003", "120, 0.001"})
    void wellsInWhichNothingReactsHaveAsSmallAnUncertaintyAsTheirNoise(int count, double noise) {
        double[] t = every(0.25, count, 0.25);
        for (AfterRule rule : new AfterRule[] {LINE, CURVE}) {
            Outcome outcome = outcome(t, 0, s -> 0, 0.0001, noise, rule);

            assertThat(outcome.incomplete()).isLessThan(0.02);
            assertThat(outcome.covered()).isGreaterThan(0.93);
            assertThat(outcome.over5mA()).isLessThan(0.02);
        }
    }

    /** Whether it is a slow reaction nobody can tell, so it may be flagged; but its ΔA is not to be tens of mA off. */
    @ParameterizedTest
    @CsvSource({"32, 0.0003", "32, 0.001", "120, 0.001"})
    void blanksThatCreepHaveAUsefulChange(int count, double noise) {
        double[] t = every(0.25, count, 0.25);
        for (AfterRule rule : new AfterRule[] {LINE, CURVE}) {
            Outcome outcome = outcome(t, 0, s -> 0, 0.001, noise, rule);

            assertThat(outcome.covered()).isGreaterThan(0.93);
            assertThat(outcome.over5mA()).isLessThan(0.15);
        }
    }

    /** Three readings of a baseline and a line know ΔA to 0.6 mA; a faint burst must not change that. */
    @Test
    void aFaintBurstIsNotLookedForInItsNoise() {
        Outcome outcome = outcome(every(0.25, 60, 0.25), 0.004, s -> Math.exp(-0.05 * s), 0.0001, 0.001, LINE);

        assertThat(outcome.over5mA()).isLessThan(0.01);
        assertThat(outcome.covered()).isGreaterThan(0.93);
    }
}
