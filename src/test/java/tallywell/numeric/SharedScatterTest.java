package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class SharedScatterTest {
    /** Rosenbrock's valley, Computer Journal 3 (1960) 175-184: its only extreme is 0 at (1, 1). */
    @Test
    void theSearchFindsTheEndOfAValley() {
        NelderMead.Corner found = new NelderMead(
                        x -> -(100 * Math.pow(x[1] - x[0] * x[0], 2) + Math.pow(1 - x[0], 2)), 1e-12)
                .from(new double[] {-1.2, 1});

        assertThat(found.at()[0]).isCloseTo(1, within(1e-3));
        assertThat(found.at()[1]).isCloseTo(1, within(1e-3));
        assertThat(found.value()).isCloseTo(0, within(1e-6));
    }

    @Test
    void readingsThatGoTogetherAreOfOnePlateAndOthersAreNot() {
        assertThat(SharedScatter.of(groups(0.98)).ratio()).isGreaterThan(20);
        assertThat(SharedScatter.of(groups(0)).ratio()).isLessThan(-3);
        assertThat(SharedScatter.of(groups(-0.98)).ratio()).isLessThan(-3);
    }

    /** Forty pairs of 5 mA: a spread of √(Σ d² / Σ (n − 1)) by hand, where none lies off. */
    @Test
    void theSpreadOfWellsIsThatOfTheirDeviations() {
        assertThat(SharedScatter.of(groups(0)).wells()).isCloseTo(0.005, within(0.001));
    }

    @Test
    void noScatterAtAllSaysNothing() {
        SharedScatter none = SharedScatter.of(List.of(new SharedScatter.Group(40, 0, 0, 0, 0, 0, 1e-6)));

        assertThat(none.ratio()).isBetween(-3.0, 3.0);
    }

    @Test
    void whatIsNoScatterIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SharedScatter.Group(1, 0, 0, 0, 0, 0, 0))
                .withMessageContaining("at least 2 wells");
        assertThatIllegalArgumentException().isThrownBy(() -> new SharedScatter.Group(2, Double.NaN, 0, 0, 0, 0, 0));
    }

    /** Deviations of 5 mA in both readings; the products add up to this correlation. */
    private static List<SharedScatter.Group> groups(double correlation) {
        double square = 0.005 * 0.005;
        SharedScatter.Group up = new SharedScatter.Group(2, square, square, square * correlation, 0, 0.1, 2e-6);
        SharedScatter.Group down = new SharedScatter.Group(2, square, square, square * correlation, 0, 0.4, 2e-6);
        return java.util.Collections.nCopies(20, List.of(up, down)).stream()
                .flatMap(List::stream)
                .toList();
    }
}
