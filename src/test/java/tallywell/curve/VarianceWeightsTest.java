package tallywell.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import tallywell.Published;
import tallywell.numeric.VarianceFunction;

/** Weights from a fitted variance function, against R. */
class VarianceWeightsTest {
    private static final double[] LEVELS = {0.05, 0.05, 0.1, 0.1, 0.2, 0.2, 0.3, 0.3, 0.4, 0.4};
    private static final double[] RESPONSES = {
        0.1472, 0.1431, 0.2889, 0.2842, 0.5701, 0.5787, 0.8402, 0.8621, 1.1462, 1.1289
    };

    private static double r(Published rows, String what) {
        return rows.where("what", what).number(0, "value");
    }

    @Test
    void lineAndLevelsAgreeWithR() throws StandardsException {
        Published data = Published.read("variances_constructed");
        Published rows = Published.read("weights_by_r");
        FittedVariance weigher = FittedVariance.ofBlank(
                VarianceFunction.fit(data.column("mean"), data.column("variance"), data.column("df")), 1.1);
        Calibration line = Calibrator.fit(LEVELS, RESPONSES, Model.LINE, weigher);
        rows.check("weight", line.standards().get(0).weight(), r(rows, "weight_1"), 7);
        rows.check("weight", line.standards().get(9).weight(), r(rows, "weight_10"), 7);
        rows.check("intercept", line.curve().coefficient(0), r(rows, "intercept"), 7);
        rows.check("slope", line.curve().coefficient(1), r(rows, "slope"), 7);
        rows.check("SE of the intercept", line.fit().standardError(0), r(rows, "se_intercept"), 7);
        rows.check("SE of the slope", line.fit().standardError(1), r(rows, "se_slope"), 7);
        rows.check("residual SD of a blank", line.sdAtLowEnd(), r(rows, "residual_sd"), 7);
        for (String response : new String[] {"0.2", "1"}) {
            double y = Double.parseDouble(response);
            double level = line.curve().levelOf(y).orElseThrow();
            InversePrediction found = new InversePrediction(line, y, ResponseVariance.residual(line, level, 2));
            rows.check("level", found.level(), r(rows, "level_" + response), 7);
            rows.check("u", found.standardUncertainty(), r(rows, "u_" + response), 6);
        }
    }

    @Test
    void withoutAConstantPartTheWeightIsOneAtTheLargestResponse() throws StandardsException {
        VarianceFunction proportional = VarianceFunction.fit(
                new double[] {0.1, 0.5, 1}, new double[] {1e-9, 1e-5, 9e-5}, new double[] {6, 6, 6});
        FittedVariance weigher = FittedVariance.ofBlank(proportional, 2);
        assertThat(weigher.weight(7, 2)).isEqualTo(1);
        assertThat(weigher.weight(7, 1)).isEqualTo(4);
        assertThat(weigher.weightOfBlank()).isZero();
        assertThatThrownBy(() ->
                        Calibrator.fit(new double[] {0, 0, 1}, new double[] {-0.001, 0.001, 1}, Model.LINE, weigher))
                .isInstanceOf(StandardsException.class)
                .hasMessageStartingWith("found a mean net ΔA of 0 at a level, with weights variance-function");
        assertThatIllegalArgumentException().isThrownBy(() -> new FittedVariance(proportional, Double.NaN));
    }
}
