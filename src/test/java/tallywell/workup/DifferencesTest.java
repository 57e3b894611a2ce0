package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tallywell.method.Sample;
import tallywell.method.Treatment;
import tallywell.notice.InputException;
import tallywell.quantity.Dilution;

class DifferencesTest {
    private static final String METHOD = """
            tallywell: method/1
            id: sucrose
            signal: {species: NADPH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm}
            steps:
              - analyte: {name: D-glucose, formula: C6H12O6}
                volumes: {sample: 0.1 mL, before-trigger: 3 mL, after-trigger: 3 mL}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            difference:
              - {analyte: {name: sucrose, formula: C12H22O11}, of: D-glucose, yield: 95 %}
            """;

    private static Sample sample(int slot, String name, Treatment treatment, String group, String dilution) {
        return new Sample(
                slot,
                name,
                Dilution.parse(dilution),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                group,
                "",
                "",
                treatment);
    }

    private static Plates plate(String method) {
        return Plates.small()
                .method(method)
                .layout("f 1 .", "t 2 .", "f: {role: blank, group: free}\nt: {role: blank, group: total}\n");
    }

    private static Plates pair(String method) {
        return plate(method)
                .sample(sample(1, "Nectar", Treatment.FREE, "free", "10"))
                .sample(sample(2, "Nectar", Treatment.TOTAL, "total", "50"));
    }

    /**
     * Factor of D-glucose: 3 · 180.156 / (6300 · 0.1) = 0.857886 g/L. Free: net 0.4 - 0.02 = 0.38, dilution 10: 3.25997.
     * Total: net 0.5 - 0.05 = 0.45, dilution 50: 19.30243. Sucrose: 342.297 / 180.156 / 0.95 · 16.04246 = 32.0850 g/L.
     * Worked by hand with a pocket calculator.
     */
    @Test
    void eachHasItsOwnDilutionAndBlank() throws InputException {
        Analysis analysis = pair(METHOD)
                .read(false, "0 0 0 0 0 0")
                .read(true, "0.02 0.4 0 0.05 0.5 0")
                .analyse();
        assertThat(analysis.results()).extracting(Result::name).containsExactly("Nectar (free)", "Nectar (total)");
        DifferenceResult result = analysis.differences().get(0);
        assertThat(result.value().orElseThrow()).isCloseTo(32.0850, within(5e-4));
        assertThat(result.row(java.util.Set.of()).slot()).hasValue(2);
        assertThat(result.row(java.util.Set.of()).analyte()).isEqualTo("sucrose");
        assertThat(result.row(java.util.Set.of()).role()).isEqualTo("difference");
    }

    /** Per amount of substance one sucrose is one glucose: only the yield counts. */
    @Test
    void amountsOfSubstanceNeedNoMolarMass() throws InputException {
        Analysis analysis = pair(METHOD.replace("unit: g/L", "unit: mmol/L"))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0.02 0.4 0 0.05 0.5 0")
                .analyse();
        assertThat(analysis.differences().get(0).value().orElseThrow())
                .isCloseTo(1000 * (19.30243 - 3.25997) / 180.156 / 0.95, within(5e-3));
    }

    /** The measured sugar stated as its monohydrate (198.171 g/mol) leaves the other sugar as it is. */
    @Test
    void anotherFormOfWhatIsMeasuredChangesNothing() throws InputException {
        Analysis analysis = pair(METHOD.replace(
                        "unit: g/L", "unit: g/L, as: {name: D-glucose monohydrate, formula: C6H12O6·H2O}"))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0.02 0.4 0 0.05 0.5 0")
                .analyse();
        Result free = analysis.results().get(0);
        assertThat(free.analyte()).isEqualTo("D-glucose monohydrate");
        assertThat(free.value().orElseThrow()).isCloseTo(3.25997 * 198.171 / 180.156, within(1e-4));
        assertThat(analysis.differences().get(0).value().orElseThrow()).isCloseTo(32.0850, within(5e-4));
    }

    @Test
    void negativeDifferencesStand() throws InputException {
        Analysis analysis = plate(METHOD)
                .sample(sample(1, "Juice", Treatment.FREE, "free", "10"))
                .sample(sample(2, "Juice", Treatment.TOTAL, "total", "10"))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0 0.40 0 0 0.39 0")
                .analyse();
        assertThat(analysis.differences().get(0).value().orElseThrow())
                .isCloseTo(-0.01 * 8.57886 * 342.297 / 180.156 / 0.95, within(1e-5));
    }

    @Test
    void aSampleAloneIsSaid() throws InputException {
        Analysis analysis = plate(METHOD)
                .sample(sample(1, "Nectar", Treatment.FREE, "free", "10"))
                .sample(sample(2, "Syrup", Treatment.NONE, "total", "10"))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0 0.40 0 0 0.39 0")
                .analyse();
        assertThat(analysis.differences()).isEmpty();
        assertThat(analysis.notices().toString())
                .contains("the sample 'Nectar' stands in the list as free, not as total: there is no sucrose");
    }

    @Test
    void oneSampleTwiceTheSameIsRefused() {
        Plates twice = plate(METHOD)
                .sample(sample(1, "Nectar", Treatment.FREE, "free", "10"))
                .sample(sample(2, "Nectar", Treatment.FREE, "total", "50"))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0.02 0.4 0 0.05 0.5 0");
        assertThatThrownBy(twice::analyse)
                .isInstanceOf(InputException.class)
                .hasMessageContaining("the sample list has 'Nectar' twice as free (slots 1 and 2)");
    }
}
