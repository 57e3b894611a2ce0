package tallywell.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            20 µL         | VOLUME               | 20
            20 μL         | VOLUME               | 20
            20uL          | VOLUME               | 20
            0.02 mL       | VOLUME               | 20
            1.5e-5 L      | VOLUME               | 15
            10 min        | TIME                 | 600
            340 nm        | LENGTH               | 3.4e-5
            33.2 mm²      | AREA                 | 33.2
            0.332 cm2     | AREA                 | 33.2
            0.5 g/L       | CONCENTRATION        | 0.5
            0.05 g/100 mL | CONCENTRATION        | 0.5
            500 mg/L      | CONCENTRATION        | 0.5
            250 umol/L    | AMOUNT_CONCENTRATION | 0.25
            2 g / 100 g   | CONTENT              | 2
            20000 mg/kg   | CONTENT              | 2
            6.3 L/mmol/cm | ABSORPTIVITY         | 6300
            180 g/mol     | MOLAR_MASS           | 180
            1.05 g/mL     | DENSITY              | 1.05
            5 %           | RATIO                | 0.05
            5%            | RATIO                | 0.05
            """)
    void readsNumberAndUnit(String text, Kind kind, double base) {
        assertThat(Quantity.parse(text, kind).base())
                .isCloseTo(base, org.assertj.core.data.Offset.offset(1e-12 * base));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            0,125 g/L | write 0.125 g/L
            0.125     | without a unit
            0.125 mL  | which is a volume
            0.125 g/l | unknown unit 'g/l'
            abc       | expected a concentration
            1e999 g/L | which no concentration here can be; expected a size from 1.0E-12 to 10000 g/L
            - g/L     | expected a concentration
            """)
    void refusesWhatIsNoConcentration(String text, String message) {
        assertThatThrownBy(() -> Quantity.parse(text, Kind.CONCENTRATION))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(message);
    }

    @ParameterizedTest
    @ValueSource(strings = {"20 µL", "0.125 g/L", "1.0E-9 g/L", "33.2 mm2", "-5 %"})
    void printsWhatItReads(String text) {
        Quantity quantity = Quantity.parse(text, Kind.values());
        assertThat(Quantity.parse(quantity.toString(), Kind.values())).isEqualTo(quantity);
    }

    @Test
    void nanIsNoQuantity() {
        assertThatThrownBy(() -> Quantity.of(Double.NaN, Unit.GRAM)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void kindsDoNotMix() {
        assertThatThrownBy(() -> Quantity.of(1, Unit.GRAM).in(Unit.LITRE)).isInstanceOf(IllegalArgumentException.class);
    }
}
