package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.Published;

/** Lines through points that differ by more than their own uncertainty, against lm and uniroot of R. */
class RandomEffectsLineTest {
    @ParameterizedTest
    @ValueSource(strings = {"differing", "alike", "mixed"})
    void linesAgreeWithThoseOfR(String set) {
        Published data = Published.read("random_effects_by_r").where("set", set);
        RandomEffectsLine line = RandomEffectsLine.fit(series(data, "x"), series(data, "y"), series(data, "u"));

        data.check("intercept", line.intercept(), data.number(0, "intercept"), 9);
        data.check("slope", line.slope(), data.number(0, "slope"), 9);
        data.check("its standard error", line.uSlope(), data.number(0, "se"), 9);
        if (data.number(0, "between") == 0) {
            assertThat(line.between()).isLessThan(1e-10);
        } else {
            data.check("variance between", line.between(), data.number(0, "between"), 9);
        }
        double t = line.slope() / line.uSlope();
        data.check("p", StudentT.twoSidedTail(t, line.degreesOfFreedom()), data.number(0, "p"), 8);
    }

    private static double[] series(Published data, String column) {
        return Arrays.stream(data.text(0, column).split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }
}
