package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.Published;
import tallywell.notice.InputException;
import tallywell.trace.BaselineFit;
import tallywell.trace.Change;

class EquilibriumFormulaTest {
    private static final String METHOD = """
            tallywell: method/1
            id: coupled
            signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm}
            steps:
              - analyte: {name: acetic acid, molar-mass: 60 g/mol}
                signal-formula: equilibrium-coupled
                volumes: {sample: 0.1 mL, before-trigger: 3 mL, after-trigger: 3.15 mL}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            """;

    private static Change change(double before, double after, OptionalDouble u0, OptionalDouble scatter) {
        return new Change(
                new BaselineFit(before, 0, List.of(), scatter, u0),
                after,
                OptionalInt.of(0),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                Optional.empty(),
                Optional.empty(),
                Set.of());
    }

    private static double formula(double a0, double a1, double a2) {
        return formula(a0, a1, a2, List.of());
    }

    private static double formula(double a0, double a1, double a2, List<Double> reactants) {
        OptionalDouble none = OptionalDouble.empty();
        return EquilibriumFormula.of(change(a0, a1, none, none), change(a1, a2, none, none), 1, reactants)
                .orElseThrow()
                .deltaA();
    }

    /**
     * Law of mass action, worked the other way round: with malate and NAD in excess the product of NADH and oxaloacetate
     * stays q². Acetate x takes as much oxaloacetate, so the NADH p solves p (p - x) = q².
     */
    @ParameterizedTest
    @CsvSource({"0.1, 0.05", "0.3, 0.25", "0.02, 0.4", "0.9, 0.12", "0, 0.2"})
    void formulaGivesWhatTheLawOfMassActionTook(double x, double q) {
        double p = (x + Math.sqrt(x * x + 4 * q * q)) / 2;
        assertThat(formula(0.1, 0.1 + q, 0.1 + p)).isCloseTo(x, within(1e-12));
    }

    /** Tables of R (docs/checks/coupled-equilibrium.R): the equilibrium solved by bisection from amounts, twice. */
    @Test
    void scarceReactantsAreTakenIntoAccount() {
        Published table = Published.read("coupled_equilibrium");
        for (int row = 0; row < table.size(); row++) {
            double q = table.number(row, "q");
            double p = table.number(row, "p");
            double x = table.number(row, "x");
            List<Double> reactants = List.of(table.number(row, "nad"), table.number(row, "malate"));
            assertThat(formula(0.1, 0.1 + q, 0.1 + p, reactants))
                    .as("row " + row)
                    .isCloseTo(x, within(1e-9));
            // As if in excess: too little, by 0.04 to 4.4 % of the content with 360 nmol of NAD in a well.
            assertThat(formula(0.1, 0.1 + q, 0.1 + p)).as("row " + row).isLessThan(x);
        }
    }

    /** NAD 1.2414 mmol/L at 6300 L/mol/cm over 1 cm is 7.821; more than that cannot have been made of it. */
    @Test
    void moreThanTheReactantsCanMakeIsNoValue() throws InputException {
        String scarce = METHOD.replace("volumes:", "coupled-to: {NAD: 0.1 mmol/L, L-malate: 5 mmol/L}\n    volumes:");
        Analysis analysis = Plates.small()
                .method(scarce)
                .layout("o 1 1", ". . .", "o: {role: blank}")
                .read(false, "0.1 0.1 0.1 0 0 0")
                .read(true, "0.34 0.35 0.35 0 0 0")
                .read(true, "0.345 0.85 0.5 0 0 0")
                .analyse();
        assertThat(analysis.steps().get(0).wells().get(1).flags()).contains(Flag.EQUILIBRIUM_LOST);
        // p 0.4, q 0.25, C 0.63 and 31.5: 0.4 - 0.0625/0.4 · 0.23/0.38 · 31.1/31.25 = 0.305882. By hand.
        assertThat(analysis.steps().get(0).wells().get(2).deltaA().orElseThrow())
                .isCloseTo(0.305882, within(1e-6));
    }

    /** A0 0.100, A1 0.350, A2 0.850: 0.750 - 0.0625 / 0.750 = 0.666667. By hand. */
    @Test
    void workedByHand() {
        assertThat(formula(0.100, 0.350, 0.850)).isCloseTo(0.6666667, within(1e-7));
    }

    /** Propagation with slopes taken by small steps of the formula itself (JCGM 100:2008, 5.1.3, note 2). */
    @Test
    void uncertaintyIsThatOfSmallSteps() {
        uncertainty(List.of());
        uncertainty(List.of(1.5, 4.0));
    }

    private static void uncertainty(List<Double> reactants) {
        double a0 = 0.12;
        double a1 = 0.37;
        double a2 = 0.80;
        double u0 = 0.0007;
        double u1 = 0.0012;
        double h = 1e-6;
        double d0 = (formula(a0 + h, a1, a2, reactants) - formula(a0 - h, a1, a2, reactants)) / (2 * h) * u0;
        double d1 = (formula(a0, a1 + h, a2, reactants) - formula(a0, a1 - h, a2, reactants)) / (2 * h) * u1;
        double d2 = (formula(a0, a1, a2 + h, reactants) - formula(a0, a1, a2 - h, reactants)) / (2 * h) * u1;
        Change settled = change(a0, a1, OptionalDouble.of(u0), OptionalDouble.of(u1));
        Change used = change(a1, a2, OptionalDouble.empty(), OptionalDouble.empty());
        assertThat(EquilibriumFormula.of(settled, used, 1, reactants)
                        .orElseThrow()
                        .uDeltaA()
                        .orElseThrow())
                .isCloseTo(Math.sqrt(d0 * d0 + d1 * d1 + d2 * d2), within(1e-9));
    }

    /**
     * Sample: E = 0.666667 as above; blank 0.100, 0.340, 0.345: 0.245 - 0.0576 / 0.245 = 0.009898. Net 0.656769; times
     * 3.15 · 60 / (6300 · 0.1) = 0.3 and dilution 1: 0.197031 g/L. By hand.
     */
    @Test
    void plateWithThreeReadings() throws InputException {
        Analysis analysis = plate().read(false, "0.1 0.1 0.1 0 0 0")
                .read(true, "0.34 0.35 0.35 0 0 0")
                .read(true, "0.345 0.85 0.85 0 0 0")
                .analyse();
        Result result = analysis.results().get(0);
        assertThat(result.netDeltaA().orElseThrow()).isCloseTo(0.6567687, within(1e-7));
        assertThat(result.value().orElseThrow()).isCloseTo(0.1970306, within(1e-7));
    }

    @Test
    void withoutAChangeBeyondTheFirstReadingThereIsNoValue() throws InputException {
        Analysis analysis = plate().read(false, "0.1 0.1 0.1 0 0 0")
                .read(true, "0.34 0.09 0.35 0 0 0")
                .read(true, "0.345 0.1 0.85 0 0 0")
                .analyse();
        Result result = analysis.results().get(0);
        assertThat(result.n()).isEqualTo(1);
        WellResult lost = analysis.steps().get(0).wells().get(1);
        assertThat(lost.deltaA()).isEmpty();
        assertThat(lost.flags()).contains(Flag.EQUILIBRIUM_LOST);
    }

    @Test
    void twoReadingsAreNotEnough() {
        assertThatThrownBy(() -> plate().read(false, "0.1 0.1 0.1 0 0 0")
                        .read(true, "0.34 0.35 0.35 0 0 0")
                        .analyse())
                .isInstanceOf(InputException.class)
                .hasMessageContaining("found 1 trigger among the readings, but the method 'coupled' has 2 triggers");
    }

    /** The baseline that the tables print lies where A after less it is E. */
    @Test
    void creepIsTakenOutOfTheLastReadingsFirst() throws InputException {
        double[] times = {0, 60, 120, 180, 240, 300, 360, 420, 480, 540};
        double[] blank = {0.1, 0.1, 0.1, 0.34, 0.34, 0.34, 0.345, 0.345, 0.345, 0.345};
        double[] creeping = {0.1, 0.1, 0.1, 0.35, 0.35, 0.35, 0.85, 0.86, 0.87, 0.88};
        Analysis analysis = plate("creep: {correct: extrapolate}\n")
                .series(false, List.of(180.0, 360.0), times, blank, creeping, creeping, blank, blank, blank)
                .analyse();
        WellResult well = analysis.steps().get(0).wells().get(1);
        assertThat(well.deltaA().orElseThrow()).isCloseTo(0.6666667, within(1e-7));
        assertThat(well.trace().creepPerMin().orElseThrow()).isCloseTo(0.01, within(1e-9));
        assertThat(well.trace().before().orElseThrow()).isCloseTo(0.85 - 0.6666667, within(1e-7));
    }

    private static Plates plate() {
        return plate("");
    }

    private static Plates plate(String more) {
        return Plates.small().method(METHOD + more).layout("o 1 1", ". . .", "o: {role: blank}");
    }
}
