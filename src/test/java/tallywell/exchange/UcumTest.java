package tallywell.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import tallywell.Published;
import tallywell.quantity.Unit;

class UcumTest {
    private static final Published CODES = Published.read("ucum_codes");

    @Test
    void everyCodeIsOneThatTheValidatorKnows() {
        for (Unit unit : Unit.values()) {
            Published code = CODES.where("ucum", Ucum.of(unit));
            assertThat(code.size())
                    .as(unit + " is " + Ucum.of(unit) + ". " + CODES.source())
                    .isEqualTo(1);
            assertThat(code.text(0, "status")).isEqualTo("valid");
        }
        assertThat(CODES.where("ucum", Ucum.ONE).text(0, "status")).isEqualTo("valid");
        assertThat(CODES.where("ucum", "min-1").text(0, "status")).isEqualTo("valid");
    }

    /** A valid code of another unit would differ in its factor. */
    @Test
    void unitsOfOneKindAreToOneAnotherAsTheirCodesAre() {
        int compared = 0;
        for (Unit one : Unit.values()) {
            for (Unit other : Unit.values()) {
                Published a = CODES.where("ucum", Ucum.of(one));
                Published b = CODES.where("ucum", Ucum.of(other));
                if (one.kind() == other.kind()) {
                    assertThat(a.text(0, "base")).isEqualTo(b.text(0, "base"));
                    CODES.check(
                            String.format(Locale.ROOT, "%s over %s", one.symbol(), other.symbol()),
                            one.factor() / other.factor(),
                            a.number(0, "factor") / b.number(0, "factor"),
                            12);
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(Unit.values().length);
    }
}
