package tallywell.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CellTextTest {
    /** The characters are those that OWASP lists under "CSV Injection". */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "=cmd|' /C calc'!A0",
                "+1",
                "-1",
                "@SUM(A1)",
                "\t=1",
                "\r=1",
                "'=1",
                "''=1",
                "'",
                "'tis",
                "",
                "Tank 2",
                "''",
                "'+'"
            })
    void noCellBeginsLikeAFormulaAndEveryTextComesBack(String text) {
        String cell = CellText.shown(text);
        assertThat(cell.isEmpty() ? ' ' : cell.charAt(0)).isNotIn('=', '+', '-', '@', '\t', '\r');
        assertThat(CellText.meant(cell)).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Tank 2", "'tis", "L-malic acid", "1+19", "a=b"})
    void plainTextStaysAsItIs(String text) {
        assertThat(CellText.shown(text)).isEqualTo(text);
    }
}
