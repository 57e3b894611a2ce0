package tallywell.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.method.DilutionSeries;

class DilutionSchemeTest {
    private static final DilutionSeries USUAL = DilutionSeries.USUAL;

    /** Worked by hand: 1 mL and at least 10 µL, so that one step makes at most 100. */
    @ParameterizedTest
    @CsvSource({
        "1, ''",
        "2, 500+500",
        "10, 100+900",
        "100, 10+990",
        "200, 100+900 50+950",
        "1000, 50+950 20+980",
        "10000, 10+990 10+990",
        "20000, 50+950 50+950 20+980"
    })
    void stepsByHand(double factor, String expected) {
        DilutionScheme scheme = DilutionScheme.of(factor, 1000, 10, USUAL).orElseThrow();
        assertThat(scheme.factor()).isCloseTo(factor, within(1e-9 * factor));
        List<String> wanted = expected.isEmpty() ? List.of() : List.of(expected.split(" "));
        assertThat(scheme.steps().stream()
                        .map(step -> tallywell.quantity.Numbers.brief(step.takeUl(), 6) + "+"
                                + tallywell.quantity.Numbers.brief(step.addUl(), 6))
                        .toList())
                .containsExactlyInAnyOrderElementsOf(wanted);
    }

    /** C1 V1 = C2 V2 in every step, nothing below the smallest volume, and no more steps than it takes. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void everySchemeKeepsItsPromises(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 300; i++) {
            double factor = Math.exp(random.nextDouble() * 13);
            double total = 200 + 5000 * random.nextDouble();
            double least = 5 + 20 * random.nextDouble();
            double most = Math.pow(total / least, 4);
            var found = DilutionScheme.of(factor, total, least, USUAL);
            if (factor > most * 1.001) {
                assertThat(found).isEmpty();
                continue;
            }
            if (found.isPresent()) {
                DilutionScheme scheme = found.get();
                assertThat(scheme.factor()).isCloseTo(factor, within(1e-6 * factor));
                for (DilutionScheme.Transfer step : scheme.steps()) {
                    assertThat(step.takeUl()).isGreaterThanOrEqualTo(least * (1 - 1e-6));
                    assertThat(step.takeUl() + step.addUl()).isCloseTo(total, within(1e-6));
                    assertThat(step.takeUl() * step.factor()).isCloseTo(total, within(1e-6));
                }
                int steps = scheme.steps().size();
                assertThat(steps <= 1 || Math.pow(total / least, steps - 1.0) < factor)
                        .isTrue();
            }
        }
    }

    @Test
    void aLaboratorysOwnSeriesIsPreferred() {
        DilutionSeries thirds = new DilutionSeries(List.of(1.0, 3.0, 9.0, 27.0, 81.0, 243.0));
        DilutionScheme scheme = DilutionScheme.of(243, 1000, 20, thirds).orElseThrow();
        assertThat(scheme.steps().stream().map(DilutionScheme.Transfer::factor).toList())
                .containsExactlyInAnyOrder(9.0, 27.0);
    }
}
