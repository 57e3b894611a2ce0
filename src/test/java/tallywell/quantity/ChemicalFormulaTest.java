package tallywell.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChemicalFormulaTest {
    static Stream<CSVRecord> molarMasses() throws IOException {
        var in = ChemicalFormulaTest.class.getResourceAsStream("/reference/molar_masses.csv");
        assertThat(in).isNotNull();
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new InputStreamReader(in, StandardCharsets.UTF_8)).getRecords().stream();
    }

    /** Source: IUPAC/CIAAW abridged standard atomic weights 2021, as the header of the table states. */
    @ParameterizedTest
    @MethodSource("molarMasses")
    void molarMassAgreesWithTheAtomicWeights(CSVRecord row) {
        double mass = ChemicalFormula.parse(row.get("formula")).molarMass();
        assertThat(mass)
                .as(row.get("compound"))
                .isCloseTo(Double.parseDouble(row.get("M_abridged")), org.assertj.core.data.Offset.offset(1e-9));
    }

    /** Algebraic identities: the same atoms, written another way. */
    @ParameterizedTest
    @CsvSource({
        "C6H8O7·H2O, C6H10O8",
        "C6H8O7 . H2O, C6H10O8",
        "C6H8O7*H2O, C6H10O8",
        "(NH4)2SO4, N2H8SO4",
        "Ca(C3H5O3)2·5H2O, CaC6H20O11",
        "K4[Fe(CN)6]·3H2O, K4FeC6N6H6O3",
        "C₆H₁₂O₆, C6H12O6",
        "CH3CH(OH)COOH, C3H6O3",
        "((CH3)2CH)2O, C6H14O"
    })
    void bracketsAndHydratesCount(String one, String other) {
        ChemicalFormula formula = ChemicalFormula.parse(one);
        assertThat(formula.atoms()).isEqualTo(ChemicalFormula.parse(other).atoms());
        assertThat(formula.molarMass()).isEqualTo(ChemicalFormula.parse(other).molarMass());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "Xx2", "C6H12O6)", "(C6H12", "C0H2", "c6h12o6", "C6H12O6·", "()", "C6[H12)", "C99999"})
    void refusesWhatIsNoFormula(String text) {
        assertThatThrownBy(() -> ChemicalFormula.parse(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("found the formula '" + text + "'");
    }

    @Test
    void cobaltIsNotCarbonMonoxide() {
        assertThat(ChemicalFormula.parse("Co").atoms()).containsOnlyKeys("Co");
        assertThat(ChemicalFormula.parse("CO").atoms()).containsOnlyKeys("C", "O");
    }
}
