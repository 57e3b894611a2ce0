package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.method.Sample;
import tallywell.notice.InputException;
import tallywell.plate.Well;
import tallywell.quantity.Dilution;
import tallywell.workup.Flag;
import tallywell.workup.Plates;

/** The table of docs/verdicts.md, line by line. */
class VerdictsTest {
    private static final String METHOD = """
            tallywell: method/1
            id: verdicts
            signal: {absorptivity: 6300 L/mol/cm, direction: %s}
            steps:
              - analyte: {name: acid, molar-mass: 126 g/mol}
                volumes: {sample: 100 µL, before-trigger: 1 mL, after-trigger: 1 mL}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            accept:
              delta-a: {least: 0.100, most: 1.000}
              absorbance: {most: 2.0}
              absorbance-left: {least: 0.300}
              replicates: {cv: 5 %%, or-range: 0.010}
            """;

    private static Sample sample(double dilution) {
        Sample plain = Sample.plain(1);
        return new Sample(
                1, "juice", new Dilution(dilution), plain.volumeUl(), plain.solid(), plain.densityGPerMl(), "", "", "");
    }

    /** Four blanks and a sample twice. */
    private static Judgement judge(String direction, double dilution, String before, String after)
            throws InputException {
        Plates plates = Plates.small()
                .method(METHOD.formatted(direction))
                .layout("o 1 1", "o o o", "o: {role: blank}")
                .sample(sample(dilution))
                .read(false, before)
                .read(true, after);
        return new Assessor().assess(plates.analyse()).judgements().get(0);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            over range            | 5 | 0.110 over  over  0.112 0.111 0.113 | repeat | dilute:50
            missing               | 5 | 0.110 missing missing 0.112 0.111 0.113 | repeat | repeat
            above the window      | 5 | 0.110 1.310 1.312 0.112 0.111 0.113 | repeat | dilute:10
            reading too high      | 5 | 0.110 2.110 2.112 0.112 0.111 0.113 | repeat | dilute:20
            low, diluted          | 5 | 0.110 0.160 0.161 0.112 0.111 0.113 | repeat | dilute:1
            replicates differ     | 5 | 0.110 0.500 0.600 0.112 0.111 0.113 | repeat | repeat
            nothing wrong         | 5 | 0.110 0.500 0.505 0.112 0.111 0.113 | report | ''
            low at dilution 1     | 1 | 0.110 0.160 0.161 0.112 0.111 0.113 | report | ''
            nothing in it         | 1 | 0.110 0.111 0.112 0.112 0.111 0.113 | report | ''
            less than nothing     | 1 | 0.110 0.101 0.102 0.112 0.111 0.113 | check | ''
            the same, diluted     | 5 | 0.110 0.101 0.102 0.112 0.111 0.113 | check | ''
            one well missing      | 5 | 0.110 0.500 missing 0.112 0.111 0.113 | check | ''
            """)
    void firstLineThatAppliesDecides(String name, double dilution, String after, String verdict, String advice)
            throws InputException {
        Judgement judged = judge("rises", dilution, "0.100 0.100 0.100 0.100 0.100 0.100", after);
        assertThat(judged.verdict().word()).isEqualTo(verdict);
        assertThat(judged.advice().word()).isEqualTo(advice);
    }

    @Test
    void whatIsFarBelowTheBlankIsNotCalledBelowDetection() throws InputException {
        Judgement judged =
                judge("rises", 1, "0.100 0.100 0.100 0.100 0.100 0.100", "0.110 0.101 0.102 0.112 0.111 0.113");
        assertThat(judged.result().flags()).contains(Flag.BELOW_ZERO).doesNotContain(Flag.BELOW_DETECTION);
    }

    @Test
    void usedUpIndicatorGoesBeforeTheRange() throws InputException {
        // NADH 1.2 falls to 0.15: the sample would have used more than there was.
        String before = "1.200 1.200 1.200 1.200 1.200 1.200";
        Judgement used = judge("falls", 2, before, "1.190 0.150 0.151 1.188 1.189 1.187");
        assertThat(used.result().flags()).contains(Flag.INDICATOR_LOW, Flag.ABOVE_WINDOW);
        assertThat(used.verdict()).isEqualTo(Verdict.REPEAT);
        assertThat(used.advice().word()).isEqualTo("dilute:5");
        Judgement enough = judge("falls", 2, before, "1.190 0.700 0.705 1.188 1.189 1.187");
        assertThat(enough.result().flags()).doesNotContain(Flag.INDICATOR_LOW);
        assertThat(enough.verdict()).isEqualTo(Verdict.REPORT);
    }

    @Test
    void netDeltaAThatIsNotToBeToldFromABlankIsFlaggedAndNotClipped() throws InputException {
        // Blanks 10, 12, 11, 13 mA: s0 1.29 mA, 3 degrees of freedom, t 2.353; √(1/2 + 1/4) = 0.866: limit 2.63 mA.
        Judgement nothing = judge("rises", 1, "0.1 0.1 0.1 0.1 0.1 0.1", "0.110 0.110 0.111 0.112 0.111 0.113");
        assertThat(nothing.result().flags()).contains(Flag.BELOW_DETECTION);
        assertThat(nothing.result().value().orElseThrow()).isNegative();
        Judgement little = judge("rises", 1, "0.1 0.1 0.1 0.1 0.1 0.1", "0.110 0.116 0.116 0.112 0.111 0.113");
        assertThat(little.result().flags()).contains(Flag.BELOW_QUANTIFICATION).doesNotContain(Flag.BELOW_DETECTION);
        // 10 s0 times 0.866 is 11.2 mA.
        Judgement enough = judge("rises", 1, "0.1 0.1 0.1 0.1 0.1 0.1", "0.110 0.123 0.124 0.112 0.111 0.113");
        assertThat(enough.result().flags()).doesNotContain(Flag.BELOW_QUANTIFICATION);
    }

    @Test
    void failedBatchLeavesNothingToReport() throws InputException {
        Plates plates = Plates.small()
                .method(METHOD.formatted("rises") + "  blank-delta-a: {most: 0.001}\n")
                .layout("o 1 1", "o o o", "o: {role: blank}")
                .read(false, "0.1 0.1 0.1 0.1 0.1 0.1")
                .read(true, "0.110 0.500 0.505 0.112 0.111 0.113");
        Assessment assessment = new Assessor().assess(plates.analyse());
        assertThat(assessment.passed()).isFalse();
        assertThat(assessment.judgements().get(0).verdict()).isEqualTo(Verdict.CHECK);
        assertThat(assessment.count(Verdict.REPORT)).isZero();
        assertThat(assessment.sentence())
                .isEqualTo("The batch fails its acceptance: 1 of 3 checks failed, 2 not assessed.");
    }

    @Test
    void excludedWellIsLookedAt() throws InputException {
        Plates plates = Plates.small()
                .method(METHOD.formatted("rises"))
                .layout("o 1 1", "o o o", "o: {role: blank}")
                .read(false, "0.1 0.1 0.1 0.1 0.1 0.1")
                .read(true, "0.110 0.500 0.505 0.112 0.111 0.113")
                .exclude("A3");
        Judgement judged = new Assessor().assess(plates.analyse()).judgements().get(0);
        assertThat(judged.verdict()).isEqualTo(Verdict.CHECK);
        assertThat(judged.result().wells()).contains(Well.parse("A3").orElseThrow());
    }
}
