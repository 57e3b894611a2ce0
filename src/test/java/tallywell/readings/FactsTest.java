package tallywell.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.plate.Mark;

class FactsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            nullValues = "-",
            value = {
                "340 nm; 340",
                "Wavelength: 340; 340",
                "Messwellenlänge 405 nm; 405",
                "A340; 340",
                "Absorbance (OD405); 405",
                "Bandwidth: 9 nm; -",
                "Reference wavelength: 620 nm; -",
                "Wavelengths: 340 nm, 405 nm; -",
                "Cider of 2024; -",
                "Plate 340; -"
            })
    void wavelengthIsTheOneReadAt(String line, Double nm) {
        assertThat(Facts.ofLine(line).wavelengthNm().isPresent()).isEqualTo(nm != null);
        assertThat(Facts.ofLine(line).wavelengthNm().orElse(0)).isEqualTo(nm == null ? 0 : nm);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            nullValues = "-",
            value = {
                "Plate 1; 1",
                "Plate: Cider 12 B; Cider 12 B",
                "Platte Nr. 4; 4",
                "Barcode: 00123; 00123",
                "Plate type: 96 well; -",
                "Microplate reader; -",
                "Plate layout; -",
                "96-well plate; -"
            })
    void plateIsNamed(String line, String name) {
        assertThat(Facts.ofLine(line).plate()).isEqualTo(Optional.ofNullable(name));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Blank corrected",
                "Leerwertkorrigiert",
                "blank subtracted (340 nm)",
                "OD340 - Blank",
                "Normalized",
                "A340-A405",
                "Corrigé du blanc",
                "ΔA",
                "Absorbance per cm",
                "340/405"
            })
    void processedReadingsAreKnown(String heading) {
        assertThat(Facts.ofHeading(heading).isProcessed()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Blank correction: none",
                "Raw data",
                "uncorrected",
                "Blank subtraction: no",
                "Absorbance",
                "without blank correction",
                "Concentration",
                "Run 2026-03-01"
            })
    void whatIsNotProcessedIsNotTakenForIt(String heading) {
        assertThat(Facts.ofHeading(heading).isProcessed()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Mean",
                "SD",
                "CV %",
                "Temperature [°C]",
                "Conc. mg/L",
                "Konzentration",
                "Slope [mAU/min]",
                "Fluorescence",
                "mOD/min"
            })
    void otherQuantitiesAreKnown(String heading) {
        assertThat(Facts.ofHeading(heading).isOtherQuantity()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"10 min after the trigger", "Absorbance, time in min", "Plate 1 at 25 °C", "OD 340 nm"})
    void unitsInTitlesMakeNoOtherQuantity(String title) {
        assertThat(Facts.ofLine(title).isOtherQuantity()).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "OVER; OVER",
                "*****; OVER",
                "> 3.5; OVER",
                "≥4,0; OVER",
                "Überlauf; OVER",
                "out of range; OVER",
                "saturé; OVER",
                "n/a; MISSING",
                "-; MISSING",
                "NaN; MISSING",
                "leer; MISSING",
                "#N/A; MISSING",
                "<0.001; MISSING",
                "0.4; NONE",
                "sample; NONE",
                "0.4*; NONE"
            })
    void marksAreWordsForNoReading(String cell, Mark mark) {
        assertThat(Words.mark(cell)).isEqualTo(mark);
    }
}
