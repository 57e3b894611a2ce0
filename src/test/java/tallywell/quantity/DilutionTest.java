package tallywell.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DilutionTest {
    @ParameterizedTest
    @CsvSource({"10,10", "1+9,10", "1 + 9,10", "2+3,2.5", "1,1", "1.5,1.5", "1+0,1", "0.1+0.9,10", "0.2+0.6,4"})
    void readsFinalOverSampleOrParts(String text, double factor) {
        assertThat(Dilution.parse(text).factor()).isEqualTo(factor);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1:10 | two ways
            1/10 | two ways
            0.5  | at least 1
            -2   | at least 1
            0    | at least 1
            ten  | expected a number
            0+5  | without any sample
            1e400 | at least 1
            """)
    void refusesWhatLaboratoriesReadInTwoWaysAndWhatDilutesNothing(String text, String message) {
        assertThatThrownBy(() -> Dilution.parse(text))
                .hasMessageContaining(message)
                .hasMessageContaining(text);
    }
}
