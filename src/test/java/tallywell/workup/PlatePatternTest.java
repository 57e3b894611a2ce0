package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.plate.ReadingSeries;

/** Error rates on made-up plates ({@link TwoReadings}); the table of the larger study stands in docs/verdicts.md. */
class PlatePatternTest {
    private static final int PLATES = 150;
    private static final int ONE = PlatePattern.Finding.ONE_PLATE.ordinal();
    private static final int OPEN = PlatePattern.Finding.OPEN.ordinal();
    private static final int OTHER = PlatePattern.Finding.OTHER_PLATE.ordinal();
    private static final int TURNED = PlatePattern.Finding.TURNED.ordinal();

    private static final TwoReadings RISES = new TwoReadings(2, 41, 8, false, 0.004, 0.001, 0.01, 0.02, 0.003, 0.3, 1);
    private static final TwoReadings FALLS = new TwoReadings(2, 41, 8, true, 0.004, 0.001, 0.02, 0.02, 0.003, 0.3, 1);
    private static final TwoReadings KINETIC =
            new TwoReadings(3, 30, 6, false, 0.004, 0.001, 0.02, 0.02, 0.003, 0.3, 8);

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.0015, 0.004, 0.01})
    void onePlateIsNotTakenForTwo(double wells) {
        for (TwoReadings each : new TwoReadings[] {RISES, FALLS, KINETIC}) {
            double[] rates = each.withWells(wells).rates(PLATES, false, false, 5);
            assertThat(rates[OTHER] + rates[TURNED]).isZero();
        }
    }

    @Test
    void twoPlatesAreFoundWhereWellsDifferByMoreThanNoise() {
        assertThat(RISES.withWells(0.004).rates(PLATES, true, false, 6)[OTHER]).isBetween(0.55, 0.85);
        assertThat(RISES.withWells(0.01).rates(PLATES, true, false, 7)[OTHER]).isGreaterThan(0.85);
        assertThat(FALLS.withWells(0.02).rates(PLATES, true, false, 8)[OTHER]).isGreaterThan(0.8);
    }

    @Test
    void theSameSamplesOnAnotherPlateAreFoundNoLess() {
        double[] rates = RISES.withWells(0.01).rates(PLATES, true, true, 9);

        assertThat(rates[OTHER]).isGreaterThan(0.85);
        assertThat(rates[ONE]).isLessThan(0.01);
    }

    @Test
    void wellsThatDifferNoMoreThanNoiseSayNothing() {
        double[] rates = RISES.withWells(0.001).rates(PLATES, true, false, 10);

        assertThat(rates[OPEN]).isGreaterThan(0.95);
        assertThat(rates[OTHER]).isLessThan(0.02);
    }

    @Test
    void aTurnedPlateIsFound() {
        Random random = new Random(12);
        TwoReadings design = RISES.withWells(0.006);
        int found = 0;
        for (int i = 0; i < 50; i++) {
            TwoReadings.Pair pair = design.draw(design.samples(random), random);
            ReadingSeries turned =
                    pair.after().moved(at -> TwoReadings.FORMAT.well(TwoReadings.FORMAT.wells() - 1 - at));
            found += PlatePattern.of(RISES.layout(), well -> true, pair.before(), turned)
                                    .orElseThrow()
                                    .finding()
                            == PlatePattern.Finding.TURNED
                    ? 1
                    : 0;
        }
        assertThat(found).isGreaterThanOrEqualTo(45);
    }

    @Test
    void noiseOfAKineticReadingIsMeasured() {
        TwoReadings noisy = new TwoReadings(2, 41, 8, false, 0.004, 0.006, 0.01, 0, 0, 0, 12);
        Random random = new Random(13);
        TwoReadings.Pair pair = noisy.draw(noisy.samples(random), random);

        // Second differences of 82 wells, so within a third of the 6 mA they were drawn with.
        assertThat(PlatePattern.of(noisy.layout(), well -> true, pair.before(), pair.after())
                        .orElseThrow()
                        .noise())
                .isBetween(0.004, 0.008);
    }

    @Test
    void fewReplicatesAreNotCompared() {
        TwoReadings few = new TwoReadings(2, 12, 4, false, 0.01, 0.001, 0.01, 0, 0, 0, 1);
        Random random = new Random(14);
        TwoReadings.Pair pair = few.draw(few.samples(random), random);

        assertThat(PlatePattern.of(few.layout(), well -> true, pair.before(), pair.after()))
                .isEmpty();
    }
}
