package tallywell.numeric;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.Published;

/** Polynomials against the certified values of NIST and against R. */
class PolynomialTest {
    @ParameterizedTest
    @ValueSource(strings = {"Wampler1", "Wampler2"})
    void polynomialsOfNistComeBack(String set) {
        Published data = Published.read("nist_" + set.toLowerCase(Locale.ROOT));
        Published certified = Published.read("nist_linear_certified").where("dataset", set);
        double[] x = data.column("x");
        Regression fit = Polynomial.fit(x, data.column("y"), ones(x.length), 5);
        for (int i = 0; i < certified.size(); i++) {
            certified.check(set + " parameter " + i, fit.parameter(i), certified.number(i, "certified"), 12);
        }
        certified.check(set + " residual SD", fit.residualSd(), 0, 10);
        certified.check(set + " R squared", fit.rSquared(), 1, 12);
    }

    @ParameterizedTest
    @CsvSource({"Norris, 12"})
    void lineOfNistComesBackAsPolynomialOfDegreeOne(String set, int digits) {
        Published data = Published.read("nist_norris");
        Published certified = Published.read("nist_linear_certified").where("dataset", set);
        Regression fit = Polynomial.fit(data.column("x"), data.column("y"), ones(data.size()), 1);
        for (int i = 0; i < 2; i++) {
            certified.check("parameter", fit.parameter(i), certified.number(i, "certified"), digits);
            certified.check("SD", fit.standardError(i), certified.number(i, "certified_sd"), digits);
        }
    }

    @ParameterizedTest
    @CsvSource({"miller_7, none", "miller_11, 1/y", "eurachem_a5, none", "eurachem_a5, 1/x2"})
    void weightedQuadraticsAgreeWithR(String set, String weights) {
        Published rows = Published.read("lines_by_r")
                .where("set", set)
                .where("model", "quadratic")
                .where("weights", weights);
        boolean miller = set.startsWith("miller");
        Published all = Published.read(miller ? "miller_fluorescein" : set);
        Published data = set.equals("miller_7") ? all.first(7) : all;
        double[] x = data.column(miller ? "conc_pg_mL" : "conc_mg_per_L");
        double[] y = data.column(miller ? "intensity" : "absorbance");
        double[] w = new double[x.length];
        for (int i = 0; i < w.length; i++) {
            w[i] = weights.equals("1/y") ? 1 / y[i] : weights.equals("1/x2") ? 1 / (x[i] * x[i]) : 1;
        }
        Regression fit = Polynomial.fit(x, y, w, 2);
        for (int i = 0; i < 3; i++) {
            rows.check("parameter", fit.parameter(i), rows.number(i, "estimate"), 9);
            rows.check("standard error", fit.standardError(i), rows.number(i, "se"), 11);
        }
        rows.check("residual SD", fit.residualSd(), rows.number(0, "sigma"), 12);
        rows.check("R squared", fit.rSquared(), rows.number(0, "r_squared"), 12);
    }

    @Test
    void seriesThatDetermineNoPolynomialAreRefused() {
        double[] three = {1, 2, 3};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Polynomial.fit(new double[] {1, 2, 2}, three, ones(3), 2))
                .withMessage("x must hold at least 3 different values but was 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Polynomial.fit(three, three, ones(3), 0))
                .withMessage("degree must be at least 1 but was 0");
        // Distinct, but so close together that x² adds nothing that doubles could tell from the constant and x.
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Polynomial.fit(new double[] {1e8, 1e8 + 1, 1e8 + 2}, three, ones(3), 2))
                .withMessage("design must have independent columns but has not");
    }

    private static double[] ones(int length) {
        double[] ones = new double[length];
        Arrays.fill(ones, 1);
        return ones;
    }
}
