package tallywell.statement;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rounding of results as they are stated. */
class StatedTest {
    /**
     * JCGM 100:2008, 7.2.2 (a mass of 100.02147 g with 0.35 mg), 7.2.4 (the same with its expanded uncertainty of 0.79 mg)
     * and 7.2.6 (10.05762 Ω with 27 mΩ is 10.058 Ω), from memory; then what carries into a further digit, and places
     * before the point.
     */
    @ParameterizedTest
    @CsvSource({
        "100.02147, 0.00035, 100.02147, 0.00035",
        "100.02147, 0.00079, 100.02147, 0.00079",
        "10.05762, 0.027, 10.058, 0.027",
        "4.99949, 0.0996, 5.00, 0.10",
        "12345, 678, 12350, 680",
        "0.2, 1.26, 0.2, 1.3",
        "-0.0004, 0.11, 0.00, 0.11"
    })
    void valueEndsWhereItsUncertaintyDoes(double value, double expanded, String shown, String shownExpanded) {
        Stated stated = Stated.of(OptionalDouble.of(value), OptionalDouble.of(expanded), "");
        assertThat(stated.value()).isEqualTo(shown);
        assertThat(stated.expanded()).isEqualTo(shownExpanded);
    }

    @Test
    void withoutUncertaintyThereAreThreeDigits() {
        assertThat(Stated.of(OptionalDouble.of(1.23456), OptionalDouble.empty(), ""))
                .isEqualTo(new Stated("1.23", ""));
    }

    @Test
    void withoutValueSomethingElseIsSaid() {
        assertThat(Stated.of(OptionalDouble.empty(), OptionalDouble.empty(), "> 4.00"))
                .isEqualTo(new Stated("> 4.00", ""));
    }
}
