package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tallywell.notice.InputException;

/** Plates read by a reader that stops at a value without a mark, and such as look a little like it. */
class ReaderCeilingTest {
    private static final int PLATES = Integer.getInteger("plates", 12);
    private static final double NONE = 100;

    /** Change of each sample. */
    private interface Changes {
        double of(int pair, Random random);
    }

    /**
     * Part of the plates with any well flagged.
     *
     * @param over counts wells only whose true end is above the ceiling
     */
    private static double[] share(Changes changes, double ceiling, double digit, double minutes, double everyS)
            throws InputException {
        String creep = minutes > 2 ? "extrapolate" : "none";
        DrawnPlate plate = DrawnPlate.of(DrawnPlate.SAMPLES, "{by: absorptivity}", "creep: {correct: " + creep + "}")
                .read(minutes, everyS)
                .digit(digit);
        int flagged = 0;
        int blanks = 0;
        int stopped = 0;
        int seen = 0;
        for (int i = 0; i < PLATES; i++) {
            Random random = new Random(900 + i);
            double[] change = new double[12];
            for (int pair = 0; pair < 12; pair++) {
                change[pair] = pair < 3 ? 0.004 : changes.of(pair, random);
            }
            Assay assay = plate.drawn(
                    (pair, well) -> {
                        double own = change[pair] * (1 + 0.01 * random.nextGaussian());
                        return t -> own * -Math.expm1(-0.03 * t) + 0.0003 * t / 60;
                    },
                    ceiling,
                    random);
            StepAnalysis step = new Workup().analyse(assay).steps().get(0);
            List<WellResult> found = step.where(well -> well.flags().contains(Flag.READER_CEILING));
            flagged += found.isEmpty() ? 0 : 1;
            blanks += found.stream().anyMatch(well -> well.content().role().equals("blank")) ? 1 : 0;
            for (int pair = 3; pair < 12; pair++) {
                if (0.15 + 0.97 * change[pair] > ceiling) {
                    int slot = pair - 2;
                    stopped++;
                    seen += found.stream()
                                    .anyMatch(well -> well.content().word().equals("" + slot))
                            ? 1
                            : 0;
                }
            }
        }
        assertThat(blanks).isZero();
        return new double[] {(double) flagged / PLATES, stopped == 0 ? 1 : (double) seen / stopped};
    }

    private static double[] shown(String what, double... found) {
        if (PLATES > 100) {
            System.out.println(String.format(
                    Locale.ROOT, "%s: plates %.4f, samples at the ceiling %.3f", what, found[0], found[1]));
        }
        return found;
    }

    @Test
    void readerThatStopsWithoutAMarkIsSeen() throws InputException {
        Changes wide = (pair, random) -> 0.3 + 2.7 * random.nextDouble();
        Changes oneHigh = (pair, random) -> pair == 5 ? 3 : 0.3 + 0.9 * random.nextDouble();
        for (double digit : new double[] {0.0001, 0.001}) {
            double[] traces = shown("traces, digit " + digit, share(wide, 2, digit, 20, 15));
            double[] one = shown("one sample, traces, digit " + digit, share(oneHigh, 2, digit, 20, 15));
            double[] points = shown("end points, digit " + digit, share(wide, 2, digit, 7, 210));

            assertThat(traces[1]).as("traces").isGreaterThan(0.85);
            assertThat(one[1]).as("one sample").isGreaterThan(0.85);
            assertThat(points[1]).as("end points").isGreaterThan(0.5);
        }
    }

    @Test
    void goodPlatesAreLeftInPeace() throws InputException {
        Changes wide = (pair, random) -> 0.3 + 2.5 * random.nextDouble();
        Changes same = (pair, random) -> 1.5;
        Changes low = (pair, random) -> 0.01;
        for (double digit : new double[] {0.0001, 0.001, 0.01}) {
            for (double every : new double[] {15, 210}) {
                double minutes = every > 100 ? 7 : 20;
                assertThat(shown("wide " + digit + " " + every, share(wide, NONE, digit, minutes, every))[0])
                        .isLessThanOrEqualTo(0.01);
                assertThat(shown("same " + digit + " " + every, share(same, NONE, digit, minutes, every))[0])
                        .isLessThanOrEqualTo(0.01);
                assertThat(shown("low " + digit + " " + every, share(low, NONE, digit, minutes, every))[0])
                        .isLessThanOrEqualTo(0.01);
            }
        }
    }
}
