package tallywell.plate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WellTest {
    /** Naming after ANSI/SLAS 4-2004 (R2012), from memory: rows A to H, columns 1 to 12, A1 in the upper left corner. */
    @ParameterizedTest
    @CsvSource({"A1,0,0", "a01,0,0", "H12,7,11", "B 7,1,6", "P24,15,23", "AA1,26,0", "AF48,31,47", "' C5 ',2,4"})
    void readsRowAndColumn(String text, int row, int column) {
        assertThat(Well.parse(text)).contains(new Well(row, column));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "A", "1", "A0", "A00", "A49", "AG1", "1A", "A1B", "A-1", "AAA1", "Ä1", "A1.5", "A1000"})
    void refusesWhatIsNoWell(String text) {
        assertThat(Well.parse(text)).isEmpty();
    }

    @Test
    void everyWellOfEveryPlateReadsBack() {
        for (PlateFormat format : PlateFormat.KNOWN) {
            for (Well well : format.all()) {
                assertThat(Well.parse(well.toString())).contains(well);
                assertThat(format.well(format.indexOf(well))).isEqualTo(well);
            }
        }
    }

    @Test
    void rangesAreRectangles() {
        assertThat(Wells.parse("C5 D1-D3, A1-B2", PlateFormat.P96))
                .extracting(Well::toString)
                .containsExactly("C5", "D1", "D2", "D3", "A1", "A2", "B1", "B2");
    }

    @ParameterizedTest
    @CsvSource({"H13,outside a plate of 96", "xyz,expected wells such as C5", "A1-Q3,outside a plate of 96"})
    void listsNameTheWordThatIsWrong(String text, String message) {
        assertThatThrownBy(() -> Wells.parse(text, PlateFormat.P96)).hasMessageContaining(message);
    }

    @Test
    void platesHaveTheirRowsAndColumns() {
        assertThat(PlateFormat.KNOWN).extracting(PlateFormat::wells).containsExactly(6, 12, 24, 48, 96, 384, 1536);
        assertThat(PlateFormat.ofWells(384)).contains(new PlateFormat(16, 24));
        assertThat(PlateFormat.ofWells(100)).isEmpty();
    }
}
