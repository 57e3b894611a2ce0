package tallywell.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumbersTest {
    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -3, 0.1, 1e-7, 1.0 / 3, 6.02214076e23, 1e15, 123456789.123, Double.MIN_VALUE})
    void plainReadsBackAsTheSameNumber(double value) {
        assertThat(Double.parseDouble(Numbers.plain(value))).isEqualTo(value);
    }

    @ParameterizedTest
    @CsvSource({"0.123456,3,0.123", "1234.5,2,1200", "99.96,3,100", "0,3,0", "-0.045678,2,-0.046"})
    void roundsToSignificantDigits(double value, int digits, String text) {
        assertThat(Numbers.rounded(value, digits)).isEqualTo(text);
    }
}
