package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tallywell.method.AssayMethod;
import tallywell.method.CalibrationRule;
import tallywell.method.Creep;
import tallywell.method.Direction;
import tallywell.method.LightPath;
import tallywell.method.Model;
import tallywell.method.Step;
import tallywell.method.Weights;
import tallywell.notice.InputException;
import tallywell.quantity.Unit;

class MethodReaderTest {
    private static final Path FILE = Path.of("method.yaml");

    private static final String SOUND = """
            tallywell: method/1
            id: l-malic
            title: "L-Malic acid"
            signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm}
            steps:                           # one trigger each
              - analyte: {name: L-malic acid, formula: C4H6O5}
                volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
                timing:  {before: 3 min, after: 10 min, trigger-to-first-read: 30 s, stagger-per-column: 2 s}
            light-path: {beam: vertical, well-area: 33.2 mm2}
            trigger-dilution: ignore         # or correct
            calibration: {by: absorptivity}
            report: {unit: g/L}
            accept:
              delta-a: {least: 0.100, most: 1.200}
              replicates: {cv: 5 %, or-range: 0.010}
            """;

    private static AssayMethod read(String text) throws InputException {
        return new MethodReader().parse(FILE, text);
    }

    @Test
    void absentKeysHaveTheirDefaults() throws InputException {
        AssayMethod method = read(SOUND);
        Step step = method.steps().get(0);
        assertThat(step.signal().direction()).isEqualTo(Direction.RISES);
        assertThat(step.analyte().signalPerAnalyte()).isEqualTo(1);
        assertThat(step.creep()).isEqualTo(Creep.NONE);
        assertThat(step.report().solids()).isEqualTo(Unit.GRAM_PER_100_G);
        assertThat(step.limits().absorbanceMost()).isEmpty();
        assertThat(step.limits().replicateCv()).hasValue(0.05);
        assertThat(step.timing().delayS(11, 12)).isEqualTo(22);
        assertThat(method.lightPath()).contains(new LightPath.Vertical(33.2));
    }

    /** d = V / area: 290 µL over 33.2 mm² stand 8.7349 mm high. Worked by hand. */
    @Test
    void verticalBeamSeesTheHeightOfTheLiquid() throws InputException {
        assertThat(read(SOUND).lightPath().orElseThrow().cm(290))
                .isCloseTo(0.87349398, org.assertj.core.data.Offset.offset(1e-8));
    }

    @Test
    void stepsOverrideTheirMethodKeyByKey() throws InputException {
        String text = SOUND.replace("light-path:", """
                  - analyte: {name: other, formula: C6H12O6}
                    volumes: {sample: 20 µL, before-trigger: 290 µL, after-trigger: 300 µL}
                    signal: {direction: falls}
                    calibration: {by: standards, model: line-through-zero, weights: 1/x}
                    creep: {correct: extrapolate}
                    accept: {delta-a: {most: 0.8}}
                light-path:""".indent(0).stripTrailing());
        Step second = read(text).steps().get(1);
        assertThat(second.signal().direction()).isEqualTo(Direction.FALLS);
        assertThat(second.signal().absorptivity()).hasValue(6300);
        assertThat(second.calibration())
                .isEqualTo(new CalibrationRule.ByStandards(Model.LINE_THROUGH_ZERO, Weights.ONE_OVER_X));
        assertThat(second.creep()).isEqualTo(Creep.EXTRAPOLATE);
        assertThat(second.limits().deltaAMost()).hasValue(0.8);
        assertThat(second.limits().deltaALeast()).hasValue(0.1);
    }

    @Test
    void statedMolarMassComesBeforeTheFormula() throws InputException {
        AssayMethod method = read(SOUND.replace("formula: C4H6O5", "formula: C4H6O5, molar-mass: 134.09 g/mol"));
        assertThat(method.steps().get(0).analyte().molarMass()).hasValue(134.09);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            id: l-malic               | id: L Malic                       | line 2: found 'id: L Malic'
            report: {unit: g/L}       | report: {unit: g/l}               | line 12: found the unit 'g/l'; expected one of
            report: {unit: g/L}       | report: {unit: g/L, solids: g/L}  | found the unit 'g/L'; expected one of g/100g, mg/kg
            report: {unit: g/L}       | reprot: {unit: g/L}               | line 12: found the unknown key 'reprot'
            calibration: {by: absorptivity} | calibration: {by: magic}    | expected one of standards, single-standard, absorptivity
            calibration: {by: absorptivity} | calibration: {by: standards} | found no key 'model' under 'calibration'
            calibration: {by: absorptivity} | calibration: {by: standards, model: cubic} | expected one of line, line-through-zero, quadratic, logistic-4, logistic-5
            calibration: {by: absorptivity} | calibration: {by: standards, model: line, weights: 1/z} | expected one of none, 1/x, 1/x2, 1/y
            , absorptivity: 6300 L/mol/cm | | found 'by: absorptivity' without a molar absorptivity
            , formula: C4H6O5         |                                   | without a molar mass
            formula: C4H6O5           | formula: C4H6Zz                   | found the formula 'C4H6Zz'
            sample: 20 µL             | sample: 400 µL                    | found volumes that shrink
            sample: 20 µL             | sample: 20                        | without a unit
            sample: 20 µL             | sample: -20 µL                    | expected a volume above 0
            sample: 20 µL             | sample: 20 s                      | which is a time; expected a volume
            before: 3 min             | befor: 3 min                      | found the unknown key 'befor'
            trigger-dilution: ignore  | trigger-dilution: correct         | found 'trigger-dilution: correct' with a vertical beam
            trigger-dilution: ignore  | before: median                    | expected one of mean, line, last
            beam: vertical, well-area: 33.2 mm2 | beam: up                | expected one of fixed, vertical
            most: 1.200               | most: 1,200                       | where the comma ends the value; write 1.200
            cv: 5 %                   | cv: 5                             | without a unit
            wavelength: 340 nm        | wavelength: -340 nm               | expected a wavelength above 0
            """)
    void saysWhereWhatAndWhatWouldBeRight(String right, String wrong, String message) {
        String text = SOUND.replace(right, wrong == null ? "" : wrong);
        assertThat(text).isNotEqualTo(SOUND);
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("method.yaml, line")
                .hasMessageContaining(message);
    }

    static java.util.stream.Stream<String> builtIn() {
        return new MethodLibrary().ids().stream();
    }

    @ParameterizedTest
    @MethodSource("builtIn")
    void builtInMethodsAreSoundAndSaySource(String id) throws InputException {
        AssayMethod method = new MethodLibrary().find(id).orElseThrow();
        assertThat(method.id()).isEqualTo(id);
        assertThat(method.source()).isNotBlank();
    }

    @Test
    void unknownMethodIsNotFound() throws InputException {
        assertThat(new MethodLibrary().find("nothing")).isEmpty();
        assertThat(new MethodLibrary().file("../version")).isEmpty();
    }
}
