package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.method.BatchLimits;
import tallywell.method.InputQuantity;
import tallywell.method.Spread;
import tallywell.method.UncertaintyRule;
import tallywell.notice.InputException;

/** What a method says under uncertainty, and its limits for a batch. */
class UncertaintyReaderTest {
    private static UncertaintyRule read(String uncertainty) throws InputException {
        return new MethodReader()
                .parse(Path.of("method.yaml"), method("uncertainty: " + uncertainty))
                .uncertainty();
    }

    private static String method(String further) {
        return """
                tallywell: method/1
                id: some
                signal: {species: NADH}
                steps:
                  - analyte: {name: acid}
                calibration: {by: standards, model: line}
                report: {unit: g/L}
                """ + further;
    }

    @Test
    void spreadsAreReadInTheirThreeForms() throws InputException {
        UncertaintyRule rule = read(
                "{sample-volume: {tolerance: 0.8 %}, absorptivity: {standard: 0.5 %}, standard: {expanded: 1 %}, mass: {tolerance: 1 mg}, creep: {standard: 0.001}, trigger-moment: {standard: 5 s}}");
        assertThat(rule.inputs().get(InputQuantity.SAMPLE_VOLUME)).isEqualTo(Spread.tolerance(0.008));
        assertThat(rule.inputs().get(InputQuantity.ABSORPTIVITY)).isEqualTo(Spread.standard(0.005));
        assertThat(rule.inputs().get(InputQuantity.STANDARD)).isEqualTo(Spread.standard(0.005));
        assertThat(rule.inputs().get(InputQuantity.MASS)).isEqualTo(Spread.tolerance(0.001));
        assertThat(rule.inputs().get(InputQuantity.CREEP)).isEqualTo(Spread.standard(0.001));
        assertThat(rule.inputs().get(InputQuantity.TRIGGER_MOMENT)).isEqualTo(Spread.standard(5));
        assertThat(rule.stated()).isEqualTo(UncertaintyRule.Stated.BUDGET);
        assertThat(rule.validation()).isEmpty();
        assertThat(Spread.tolerance(0.008).standardUncertainty()).isCloseTo(0.008 / Math.sqrt(3), within(1e-18));
    }

    @Test
    void validationIsRead() throws InputException {
        UncertaintyRule rule = read("{by: validation, validation: {precision: 2.5 %}}");
        assertThat(rule.stated()).isEqualTo(UncertaintyRule.Stated.VALIDATION);
        assertThat(rule.validation()).contains(new UncertaintyRule.Validation(0.025, 0));
    }

    @Test
    void nothingSaidIsNothingUncertainBesidesScatter() throws InputException {
        assertThat(new MethodReader().parse(Path.of("method.yaml"), method("")).uncertainty())
                .isEqualTo(UncertaintyRule.NONE);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {volume: {tolerance: 1 %}}              | found the unknown key 'volume'; expected one of by, validation, sample-volume
            {plate: {tolerance: 1 %, standard: 1 %}} | found 2 figures for 'plate'; expected exactly one of tolerance
            {plate: 1 %}                            | expected one of {tolerance: 1 %}, {standard: 0.5 %} or {expanded: 1 %}
            {plate: {standard: 0 %}}                | found '0 %'; expected a percentage above 0
            {plate: {standard: 1 mg}}               | found '1 mg', which is a mass; expected a percentage
            {creep: {standard: -0.001}}             | found '-0.001'; expected an absorbance above 0
            {by: validation}                        | found 'by: validation' without figures of one
            {by: guess}                             | found 'guess'; expected one of budget, validation
            {validation: {bias: 1 %}}               | found no key 'precision'
            """)
    void mistakesAreNamedWithTheirLine(String uncertainty, String message) {
        assertThatExceptionOfType(InputException.class)
                .isThrownBy(() -> read(uncertainty))
                .withMessageStartingWith("method.yaml, line 8: ")
                .withMessageContaining(message);
    }

    @Test
    void limitsForTheBatchAreRead() throws InputException {
        BatchLimits limits = new MethodReader()
                .parse(
                        Path.of("method.yaml"),
                        method(
                                "accept: {blank-sd: {most: 0.004}, standard-recovery: {least: 90 %, most: 110 %}, slope: {least: 85 %}, absorbance-left: {least: 0.3}}"))
                .steps()
                .get(0)
                .limits()
                .batch();
        assertThat(limits.blankSdMost()).hasValue(0.004);
        assertThat(limits.standardLeast()).hasValue(0.9);
        assertThat(limits.standardMost()).hasValue(1.1);
        assertThat(limits.slopeLeast()).hasValue(0.85);
        assertThat(limits.slopeMost()).isEmpty();
        assertThat(limits.absorbanceLeft()).hasValue(0.3);
    }
}
