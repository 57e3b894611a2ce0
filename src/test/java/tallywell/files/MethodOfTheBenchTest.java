package tallywell.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.method.AssayMethod;
import tallywell.method.Reagent;
import tallywell.method.Step;
import tallywell.notice.InputException;

/** Reactions, reagents, usual dilutions, other forms and differences in a method file. */
class MethodOfTheBenchTest {
    private static final String SOUND = """
            tallywell: method/1
            id: glucose
            signal: {species: NADPH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm}
            steps:
              - analyte: {name: D-glucose, formula: C6H12O6}
                volumes: {sample: 20 µL, before-trigger: 240 µL, after-trigger: 260 µL}
                standard: {name: D-glucose monohydrate, formula: C6H12O6·H2O, purity: 99 %, water: 1 %}
                reactions:
                  - "D-glucose + ATP -> glucose 6-phosphate + ADP"
                  - "glucose 6-phosphate + NADP+ -> 6-phosphogluconolactone + NADPH + H+"
            formulas:
              glucose 6-phosphate: C6H13O9P
              6-phosphogluconolactone: C6H11O9P
              fructose: C6H12O6
            light-path: {beam: vertical, well-area: 33.2 mm2}
            well: {most: 300 µL, pipette-least: 10 µL}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            difference:
              - analyte: {name: sucrose, formula: C12H22O11}
                of: D-glucose
                yield: 98 %
                reactions: ["sucrose + H2O -> D-glucose + fructose"]
            reagents:
              - {name: "invertase", volume: 20 µL, into: treatment}
              - {name: "mix", volume: 200 µL, into: mix, holds: "buffer, NADP, ATP"}
              - {name: "hexokinase", volume: 20 µL, into: trigger}
            dilutions:
              - {matrix: juice, content: 10-100 g/L, dilution: 1+199}
            """;

    private static AssayMethod read(String text) throws InputException {
        return new MethodReader().parse(Path.of("method.yaml"), text);
    }

    @Test
    void everythingIsRead() throws InputException {
        AssayMethod method = read(SOUND);
        Step step = method.steps().get(0);
        assertThat(step.chemistry().reactions()).hasSize(2);
        assertThat(method.bench().volumeUl(Reagent.Into.TRIGGER, 1)).isEqualTo(20);
        assertThat(method.bench().dilutions().get(0).dilution().factor()).isEqualTo(200);
        assertThat(method.bench().wellUl()).hasValue(300);
        assertThat(method.differences().get(0).yield()).isEqualTo(0.98);
        // By hand: 198.171 / 180.156 = 1.0999967, over 0.9801: 1.122331
        assertThat(step.standard().orElseThrow().weighedPerAnalyte(180.156))
                .isCloseTo(1.122331, org.assertj.core.data.Offset.offset(1e-6));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            + NADPH + H+" | + NADPH" | line 9: found the reaction 'glucose 6-phosphate + NADP+ -> 6-phosphogluconolactone + NADPH', which does not balance (right less left: {H=-1, charge=-1})
            C6H13O9P | C6H13O8P | does not balance (right less left: {O=-1})
            C6H12O6} | C6H12O6, signal-per-analyte: 2} | found reactions that give 1 NADPH for each D-glucose, but the step says 2
            340 nm, absorptivity: 6300 L/mol/cm} | 340 nm, absorptivity: 6300 L/mol/cm, direction: falls} | but the step says -1
            "D-glucose + ATP | "glucose + ATP | found 'glucose' in the reaction 'glucose + ATP -> glucose 6-phosphate + ADP' without a formula
            -> glucose 6-phosphate + ADP | = glucose 6-phosphate + ADP | expected two sides with '->' between them
            {name: "mix", volume: 200 µL, | {name: "mix", | line 26: found the reagent 'mix' without a volume
            volume: 200 µL | volume: 190 µL | found reagents and sample that come to 230 µL where 'before-trigger' of the step 'D-glucose' says 240 µL
            into: trigger} | into: trigger 2} | found 'into: trigger 2'; expected treatment, mix, or trigger
            of: D-glucose | of: D-fructose | found 'of: D-fructose', which no step measures; expected one of D-glucose
            yield: 98 % | released: 2 | found reactions that release 1 D-glucose from each sucrose, but 'released' is 2
            yield: 98 % | yield: 104 % | found a yield over 100 %
            purity: 99 % | purity: 101 % | found a purity over 100 %
            content: 10-100 g/L | content: 100-10 g/L | expected the lower end first
            """)
    void mistakesAreNamed(String right, String wrong, String message) {
        assertThat(SOUND).contains(right);
        assertThatThrownBy(() -> read(SOUND.replace(right, wrong)))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(message);
    }
}
