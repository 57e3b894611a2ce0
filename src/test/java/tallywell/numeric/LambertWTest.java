package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.Published;

class LambertWTest {
    @Test
    void publishedValuesComeBack() {
        Published table = Published.read("lambert_w");
        for (int i = 0; i < table.size(); i++) {
            double x = table.number(i, "x");
            table.check("W(exp " + x + ")", LambertW.ofExp(x), table.number(i, "w"), 15);
        }
    }

    @Test
    void definitionHoldsAcrossTheRange() {
        for (double x = -36; x < 40; x += 0.0137) {
            double w = LambertW.ofExp(x);
            assertThat(w + Math.log(w)).isCloseTo(x, within(4e-16 * (1 + Math.abs(x))));
        }
    }

    /** The derivative of W(exp x) is w / (1 + w) (Corless et al. 1996, equation 3.2, in logarithms). */
    @Test
    void slopeIsThatOfTheIdentity() {
        for (double x = -20; x < 40; x += 0.37) {
            double h = 1e-4;
            double slope = (LambertW.ofExp(x + h) - LambertW.ofExp(x - h)) / (2 * h);
            double w = LambertW.ofExp(x);
            assertThat(slope).isCloseTo(w / (1 + w), within(1e-8));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e3, 1e6, 1e100, 1e308})
    void argumentsFarBeyondTheRangeOfExpDoNotOverflow(double x) {
        double w = LambertW.ofExp(x);

        assertThat(w + Math.log(w)).isCloseTo(x, within(1e-15 * x));
    }

    @Test
    void smallArgumentsGoToZeroWithExp() {
        assertThat(LambertW.ofExp(-700)).isEqualTo(Math.exp(-700));
        assertThat(LambertW.ofExp(-1e6)).isZero();
    }

    @Test
    void whatIsNoNumberIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LambertW.ofExp(Double.NaN))
                .withMessage("x must be finite but was NaN");
    }
}
