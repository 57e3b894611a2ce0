package tallywell.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.numeric.FisherF;

class BentCreepTest {
    private static final double[] T = times(60);

    private static double[] times(int n) {
        double[] t = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = 15.0 * (i + 1);
        }
        return t;
    }

    private interface Course {
        double at(double t);
    }

    private static double[] readings(Course course, double noise, long seed) {
        Random random = new Random(seed);
        double[] y = new double[T.length];
        for (int i = 0; i < y.length; i++) {
            y[i] = course.at(T[i]) + noise * random.nextGaussian();
        }
        return y;
    }

    private static BentCreep bent(double[] y) {
        BentCreep bent = BentCreep.of(LineFit.of(T, y, 0, T.length, null), T, y, 0, null);
        assertThat(bent).isNotNull();
        return bent;
    }

    @Test
    void straightCreepIsCalledBentOnceInAHundredTracesAtMost() {
        int sure = 0;
        int allowed = 0;
        for (int seed = 0; seed < 1000; seed++) {
            BentCreep bent = bent(readings(t -> 0.3 + 2e-5 * t, 0.0005, seed));
            sure += bent.isSure() ? 1 : 0;
            allowed += bent.allowance() > 0 ? 1 : 0;
        }
        assertThat(sure).isLessThan(10);
        // Of one degree of freedom of noise, a third lies beyond its variance.
        assertThat(allowed / 1000.0).isBetween(0.2, 0.4);
    }

    /** Without noise the size is known, and the allowance is the square of what it does to the line, by hand below. */
    @Test
    void withoutNoiseTheAllowanceIsTheErrorOfTheLineSquared() {
        double last = T[T.length - 1];
        double[] y = readings(t -> 0.3 + 2e-5 * t + 0.004 * Math.exp(-3 * t / last), 0, 1);
        // The line through the dying part, by the normal equations; creep proper begins at 0.3 + 0.004.
        double n = T.length;
        double st = 0;
        double sy = 0;
        double stt = 0;
        double sty = 0;
        for (int i = 0; i < T.length; i++) {
            st += T[i];
            sy += y[i];
            stt += T[i] * T[i];
            sty += T[i] * y[i];
        }
        double slope = (n * sty - st * sy) / (n * stt - st * st);
        double error = (sy - slope * st) / n - 0.304;

        assertThat(bent(y).isSure()).isTrue();
        assertThat(Math.sqrt(bent(y).allowance())).isCloseTo(Math.abs(error), within(1e-5));
    }

    /** Five times as large a standard uncertainty is 24 variances more; 3² is what the creep does over the trace. */
    @ParameterizedTest
    @CsvSource({"7, 1, 3, 7", "7, 0.5, 3, 6", "30, 2, 3, 9", "0, 2, 3, 0"})
    void whatIsAllowedEntersUpToFiveTimesWhatIsKnownAndToWhatTheCreepDoes(
            double allowance, double known, double wholeCreep, double expected) {
        assertThat(BentCreep.limited(allowance, known, wholeCreep)).isCloseTo(expected, within(1e-12));
    }

    /** One of four hundred by the F distribution with two degrees of freedom, whose quantile is taken from elsewhere. */
    @ParameterizedTest
    @CsvSource({"12, 0", "32, 0", "120, 0", "32, 0.5", "120, 0.8"})
    void aBendIsAsRareWhereTheNoiseIsEstimated(int n, double carry) {
        double freedom = Noise.freedom(n, 4, carry);

        assertThat(BentCreep.sureGain(n, carry))
                .isCloseTo(2 * FisherF.quantile(1 - Math.exp(-6), 2, freedom), withinPercentage(1e-6));
    }

    @Test
    void fewReadingsShowNoBend() {
        double[] t = times(7);
        assertThat(BentCreep.of(LineFit.of(t, t, 0, 7, null), t, t, 0, null)).isNull();
    }

    @Test
    void lineFromEachReadingHasTheInterceptOfLeastSquares() {
        double[] y = readings(t -> 0.3 + 0.2 * Math.exp(-t / 100), 0.001, 3);
        double[] intercepts = new double[T.length - 5];
        new TailLines(T, 5).intercepts(Arrays.copyOfRange(y, 5, T.length), intercepts);
        for (int j = 5; j < T.length - 2; j += 7) {
            assertThat(intercepts[j - 5])
                    .isCloseTo(LineFit.of(T, y, j, T.length, null).at(0), within(1e-11));
        }
    }
}
