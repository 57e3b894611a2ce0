package tallywell.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumberFormTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '"',
            value = {
                "12; WHOLE",
                "-7; WHOLE",
                "1E5; WHOLE",
                "12 345; WHOLE",
                "0.456; POINT",
                ".45; POINT",
                "1.2345; POINT",
                "1234.567; POINT",
                "1.234E-1; POINT",
                "1 234.5; POINT",
                "0,456; COMMA",
                "-0,0012; COMMA",
                "\"1'234,5\"; COMMA",
                "1.234; POINT_OR_THOUSANDS",
                "1,234; COMMA_OR_THOUSANDS",
                "-12,345; COMMA_OR_THOUSANDS",
                "1.234.567; POINT_THOUSANDS",
                "1.234,5; POINT_THOUSANDS",
                "1,234,567; COMMA_THOUSANDS",
                "1,234.5; COMMA_THOUSANDS",
                "A1; NONE",
                "1.2.3; NONE",
                "1,23,456; NONE",
                "12-3; NONE",
                "1 2; NONE",
                "0.4x; NONE",
                "1e; NONE",
                "-; NONE",
                "2026-03-01; NONE"
            })
    void formSaysWhatTheMarksMayBe(String text, NumberForm form) {
        assertThat(NumberForm.of(text)).isEqualTo(form);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '"',
            value = {
                "0,456; COMMA; 0.456",
                "1.234,5; COMMA; 1234.5",
                "1,234.5; POINT; 1234.5",
                "1 234,5; COMMA; 1234.5",
                "1.234; COMMA; 1234",
                "1,234; COMMA; 1.234",
                "1,234; POINT; 1234",
                "\"1'234.5\"; POINT; 1234.5",
                "1,5E-3; COMMA; 0.0015"
            })
    void valueFollowsTheMarkOfTheFile(String text, DecimalMark mark, double value) {
        assertThat(mark.parse(text)).isEqualTo(value);
    }

    /** Oracle: the correctly rounded conversion of the Java library. */
    @Test
    void valuesAreCorrectlyRounded() {
        Random random = new Random(11);
        for (int i = 0; i < 200_000; i++) {
            String text = String.format(
                    Locale.ROOT,
                    "%." + random.nextInt(18) + "f",
                    random.nextGaussian() * Math.pow(10, random.nextInt(8) - 4));
            assertThat(DecimalMark.POINT.parse(text)).isEqualTo(Double.parseDouble(text));
            assertThat(DecimalMark.COMMA.parse(text.replace('.', ','))).isEqualTo(Double.parseDouble(text));
        }
    }
}
