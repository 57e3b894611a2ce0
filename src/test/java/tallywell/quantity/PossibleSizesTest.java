package tallywell.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What no laboratory can mean is refused where it is typed. */
class PossibleSizesTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "1e308 min",
                "1e-320 s",
                "1e-400 s",
                "1395 h",
                "1e308 g/L",
                "1e-320 g/L",
                "101 g/100g",
                "1e308 mm2",
                "1e300 L/mol/cm",
                "30 g/mL",
                "-1e308 min",
                "1e9 %"
            })
    void quantityBeyondItsBoundsIsRefused(String text) {
        assertThatThrownBy(() -> Quantity.parse(text, Kind.values()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("found '" + text + "', which no ")
                .hasMessageContaining(" to ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0 s",
                "0.000 mg/L",
                "340 nm",
                "6300 L/mol/cm",
                "100 g/100g",
                "19.3 g/mL",
                "24 h",
                "1 µg/L",
                "-5 %"
            })
    void whatLaboratoriesWriteIsRead(String text) {
        assertThat(Quantity.parse(text, Kind.values()).unit().kind()).isNotNull();
    }

    @ParameterizedTest
    @ValueSource(strings = {"Infinity s", "NaN g/L", "Infinity", "NaN"})
    void wordsAreNoNumbers(String text) {
        assertThatThrownBy(() -> Quantity.parse(text, Kind.values())).hasMessageStartingWith("found '" + text + "'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e308", "+9", "010", "1+1e9", "0+9", "1+99999999", "NaN", "-2"})
    void dilutionThatNobodyMakesIsRefused(String text) {
        assertThatThrownBy(() -> Dilution.parse(text)).hasMessageStartingWith("found the dilution '" + text + "'");
    }

    @Test
    void formulasThatOverflowOrNestWithoutEndAreRefused() {
        assertThatThrownBy(() -> ChemicalFormula.parse("(((C9999)9999)9999)9999"))
                .hasMessageContaining("more atoms than can be counted");
        assertThatThrownBy(() -> ChemicalFormula.parse("(".repeat(100) + "C" + ")".repeat(100)))
                .hasMessageContaining("deep");
        assertThatThrownBy(() -> ChemicalFormula.parse("(".repeat(100_000))).hasMessageContaining("100000 characters");
    }

    @Test
    void rangeIsHeldToTheSameBounds() {
        assertThatThrownBy(() -> QuantityRange.parse("1e-320-2 g/L", Kind.CONCENTRATION))
                .hasMessageContaining("1e-320");
    }
}
