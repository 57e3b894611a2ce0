package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;
import tallywell.workup.Flag;
import tallywell.workup.Plates;

/** A used-up indicator never passes as a good result; what had enough of it passes. Plates made up by {@link FallingPlate}. */
class IndicatorSimulationTest {
    /** As delivered before there was a check of what is left: no limit of its own in the method. */
    private static final String METHOD = """
            tallywell: method/1
            id: falling
            signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm, direction: falls}
            steps:
              - analyte: {name: acid, molar-mass: 192.124 g/mol}
                volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}
            light-path: {beam: vertical, well-area: 33.2 mm2}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            accept:
              delta-a: {least: 0.050}
            """;

    /** c = 10 · area · M · net / (ε · v · s), by hand in the units of the file: mm², g/mol, L/mol/cm, µL. */
    private static final double G_PER_L = 10 * 33.2 * 192.124 / (6300 * 20);

    private static Judgement sample(Assessment assessment, int slot) {
        return assessment.judgements().get(slot);
    }

    private static FallingPlate.Made made(String name, double colour, double usedBefore, double netDeltaA) {
        return new FallingPlate.Made(name, 1, colour, usedBefore, netDeltaA);
    }

    /** NADH of 0.85 for contents that want 1.19 and 1.78 of it: both look alike, and neither is a result. */
    @Test
    void moreThanTheIndicatorCanShowIsRepeatedDiluted() throws InputException {
        Assessment assessment = new FallingPlate(0.85, 0.09, METHOD, 1)
                .with(made("less", 0, 0, 0.60 / G_PER_L))
                .with(made("more", 0, 0, 0.90 / G_PER_L))
                .with(made("little", 0, 0, 0.10 / G_PER_L))
                .assess();
        for (int i : new int[] {0, 1}) {
            assertThat(sample(assessment, i).result().value().orElseThrow()).isCloseTo(0.42, within(0.01));
            assertThat(sample(assessment, i).result().flags()).contains(Flag.INDICATOR_LOW);
            assertThat(sample(assessment, i).verdict()).isEqualTo(Verdict.REPEAT);
            assertThat(sample(assessment, i).advice().word()).startsWith("dilute:");
        }
        assertThat(sample(assessment, 2).result().flags()).doesNotContain(Flag.INDICATOR_LOW);
    }

    /** Plate 0.09, colour 0.04, pyruvate that used 0.30 before: the reading stays at 0.13 when nothing is left. */
    @Test
    void plateAndColourDoNotStandInForIndicator() throws InputException {
        String limit = METHOD + "  absorbance-left: {least: 0.100}\n";
        Assessment assessment = new FallingPlate(1.139, 0.09, limit, 2)
                .with(made("pyruvate", 0.04, 0.30, 1.26))
                .assess();
        assertThat(sample(assessment, 0).result().flags()).contains(Flag.INDICATOR_LOW);
        assertThat(sample(assessment, 0).verdict()).isEqualTo(Verdict.REPEAT);
    }

    /** The key of the method that knows its plate, and the key that asks for more. */
    @Test
    void theMethodMayKnowItsBackgroundAndAskForMore() throws InputException {
        // Left: 1.00 - 0.66 - 0.01 = 0.33 of 1.00; with the bound 0.15 for a plate of 0.04, 0.22 can be told.
        FallingPlate.Made sample = made("plain", 0, 0, 0.66);
        assertThat(sample(new FallingPlate(1.0, 0.04, METHOD, 3).with(sample).assess(), 0)
                        .result()
                        .flags())
                .doesNotContain(Flag.INDICATOR_LOW);
        String more = METHOD + "  indicator-left: {least: 0.300}\n";
        assertThat(sample(new FallingPlate(1.0, 0.04, more, 3).with(sample).assess(), 0)
                        .result()
                        .flags())
                .contains(Flag.INDICATOR_LOW);
        String known = METHOD + "  indicator-left: {least: 0.300, background: 0.040}\n";
        assertThat(sample(new FallingPlate(1.0, 0.04, known, 3).with(sample).assess(), 0)
                        .result()
                        .flags())
                .doesNotContain(Flag.INDICATOR_LOW);
    }

    /**
     * Over NADH of 0.8 to 1.4, plates of 0.04 to 0.12, contents from a tenth to twice the NADH: of the results, those that
     * are off by more than 2 U and say report are at most 5 of 100 in every cell of colour and of what was used before; of
     * wells that keep 0.32, at least 95 of 100 are unflagged.
     */
    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "0, 0.3",
        "0.02, 0",
        "0.02, 0.1",
        "0.05, 0.3",
        "0.1, 0",
        "0.1, 0.3",
        "0.2, 0",
        "0.2, 0.1",
        "0.2, 0.2",
        "0.2, 0.5"
    })
    void wrongInSilenceIsRareAndGoodOnesPass(double colour, double usedBefore) throws InputException {
        Random random = new Random(71);
        int all = 0;
        int silent = 0;
        int good = 0;
        int passed = 0;
        for (int plates = 0; plates < 12; plates++) {
            double nadh = 0.8 + 0.6 * random.nextDouble();
            FallingPlate plate = new FallingPlate(nadh, 0.04 + 0.08 * random.nextDouble(), METHOD, plates);
            FallingPlate.Made[] samples = new FallingPlate.Made[44];
            for (int i = 0; i < samples.length; i++) {
                samples[i] = made("s" + i, colour, usedBefore, nadh * (0.1 + 1.9 * random.nextDouble()));
                plate.with(samples[i]);
            }
            Assessment assessment = plate.assess();
            for (int i = 0; i < samples.length; i++) {
                Judgement judged = sample(assessment, i);
                double value = judged.result().value().orElseThrow();
                double expanded = judged.budget().orElseThrow().expandedUncertainty();
                boolean off = !(Math.abs(value - samples[i].netDeltaA() * G_PER_L) <= 2 * expanded);
                all++;
                silent += off && judged.verdict() == Verdict.REPORT ? 1 : 0;
                if (plate.left(samples[i]) >= 0.32) {
                    good++;
                    passed += judged.result().flags().contains(Flag.INDICATOR_LOW) ? 0 : 1;
                }
            }
        }
        assertThat(silent / (double) all).isLessThanOrEqualTo(0.05);
        assertThat(passed).isGreaterThanOrEqualTo((int) Math.ceil(0.95 * good));
    }

    private static Plates six(String steps, String calibration) {
        return Plates.small().method("""
                tallywell: method/1
                id: six
                signal: {species: NADH, wavelength: 340 nm, absorptivity: 6300 L/mol/cm, direction: falls}
                steps:
                %s
                light-path: {beam: vertical, well-area: 33.2 mm2}
                calibration: %s
                report: {unit: g/L}
                """.formatted(steps, calibration));
    }

    private static final String ACID =
            "  - {analyte: {name: %s, molar-mass: 60 g/mol}, volumes: {sample: 20 µL, before-trigger: 270 µL, after-trigger: 290 µL}}\n";

    /** NADH 1.4 in a plate of 0.1. Ammonia takes 0.60, and what then wants 0.90 finds 0.78: nothing is left of one supply. */
    @Test
    void stepsShareOneSupply() throws InputException {
        Assessment assessment = new Assessor()
                .assess(six(
                                String.format(java.util.Locale.ROOT, ACID, "first")
                                        + String.format(java.util.Locale.ROOT, ACID, "second"),
                                "{by: absorptivity}")
                        .layout("o 1 1", "o 2 2", "o: {role: blank}")
                        .read(false, "1.500 1.500 1.500 1.500 1.500 1.500")
                        .read(true, "1.490 0.890 0.891 1.490 1.190 1.191")
                        .read(true, "1.480 0.100 0.101 1.480 0.690 0.691")
                        .analyse());
        // Results go by slot, then by step.
        assertThat(sample(assessment, 0).result().flags()).doesNotContain(Flag.INDICATOR_LOW);
        assertThat(sample(assessment, 1).result().flags()).contains(Flag.INDICATOR_LOW);
        assertThat(sample(assessment, 2).result().flags()).doesNotContain(Flag.INDICATOR_LOW);
        assertThat(sample(assessment, 3).result().flags()).doesNotContain(Flag.INDICATOR_LOW);
    }

    /** A standard that wanted more than there was bends the calibration: the batch fails, no result goes out. */
    @Test
    void standardWithoutIndicatorFailsTheBatch() throws InputException {
        Assessment assessment = new Assessor()
                .assess(six(
                                String.format(java.util.Locale.ROOT, ACID, "acid"),
                                "{by: standards, model: line-through-zero}")
                        .layout(
                                "o 1 1",
                                "o a b",
                                "o: {role: blank}\na: {role: standard, level: 0.05 g/L}\nb: {role: standard, level: 0.2 g/L}")
                        .read(false, "1.500 1.500 1.500 1.500 1.500 1.500")
                        .read(true, "1.490 1.190 1.191 1.490 1.170 0.100")
                        .analyse());
        assertThat(assessment.passed()).isFalse();
        assertThat(sample(assessment, 0).verdict()).isNotEqualTo(Verdict.REPORT);
        assertThat(sample(assessment, 0).result().flags()).doesNotContain(Flag.INDICATOR_LOW);
    }

    /** Colour hides what was used before, so that the wells seem to keep 0.4: two dilutions give each other away. */
    @Test
    void dilutionsOfOneSampleAtTheSameCeilingAreLookedAt() throws InputException {
        FallingPlate plate = new FallingPlate(1.3, 0.12, METHOD, 5)
                .with(new FallingPlate.Made("dark", 1, 0.4, 0.4, 2.0))
                .with(new FallingPlate.Made("dark", 2, 0.4, 0.4, 1.0))
                .with(new FallingPlate.Made("clear", 1, 0, 0, 0.8))
                .with(new FallingPlate.Made("clear", 2, 0, 0, 0.4));
        Assessment assessment = plate.assess();
        for (int i : new int[] {0, 1}) {
            assertThat(sample(assessment, i).result().flags()).contains(Flag.SAME_CEILING);
            assertThat(sample(assessment, i).verdict()).isNotEqualTo(Verdict.REPORT);
        }
        for (int i : new int[] {2, 3}) {
            assertThat(sample(assessment, i).result().flags()).doesNotContain(Flag.SAME_CEILING);
        }
    }

    /** The same for samples of one matrix: all of those at the ceiling. */
    @Test
    void samplesAtTheSameCeilingAreLookedAt() throws InputException {
        FallingPlate plate = new FallingPlate(1.3, 0.12, METHOD, 6);
        for (int i = 0; i < 40; i++) {
            plate.with(made("dark " + i, 0.4, 0.4, 0.1 + 0.03 * i));
        }
        Assessment assessment = plate.assess();
        for (int i = 0; i < 40; i++) {
            boolean ranOut = 0.1 + 0.03 * i > 0.90;
            assertThat(sample(assessment, i).verdict() != Verdict.REPORT)
                    .as("sample " + i)
                    .isEqualTo(ranOut);
        }
    }

    /** Contents spread evenly, nothing amiss: the test is at 1 %, so that 8 plates of 300 or more would be one in a hundred. */
    @ParameterizedTest
    @CsvSource({"8", "20", "44"})
    void contentsThatSpreadAreFlaggedOnOnePlateInAHundred(int number) throws InputException {
        Random random = new Random(72);
        int flagged = 0;
        for (int plates = 0; plates < 300; plates++) {
            FallingPlate plate = new FallingPlate(1.42, 0.08, METHOD, plates);
            for (int i = 0; i < number; i++) {
                plate.with(made("s" + i, 0, 0, 0.1 + 0.9 * random.nextDouble()));
            }
            flagged += plate.assess().judgements().stream()
                            .anyMatch(each -> each.result().flags().contains(Flag.SAME_CEILING))
                    ? 1
                    : 0;
        }
        assertThat(flagged).isLessThan(8);
    }
}
