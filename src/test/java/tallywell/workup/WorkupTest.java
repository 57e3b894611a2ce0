package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.method.Sample;
import tallywell.notice.InputException;
import tallywell.quantity.Dilution;
import tallywell.quantity.Unit;

/** The arithmetic of docs/formats.md, each case worked by hand. */
class WorkupTest {
    /** Chosen so that c = net ΔA · 100/10 · 63 / 6300 / 1 = net ΔA / 10 in g/L. */
    private static final String METHOD = """
            tallywell: method/1
            id: by-hand
            signal: {absorptivity: 6300 L/mol/cm}
            steps:
              - analyte: {name: acid, molar-mass: 63 g/mol}
                volumes: {sample: 10 µL, before-trigger: 90 µL, after-trigger: 100 µL}
            light-path: {beam: fixed, length: 1 cm}
            calibration: {by: absorptivity}
            report: {unit: g/L}
            """;

    private static final String STANDARDS =
            METHOD.replace("{by: absorptivity}", "{by: standards, model: line, weights: none}");

    private static Plates plate() {
        return Plates.small().method(METHOD).layout("o 1 1", "2 2 .", "o: {role: blank}");
    }

    private static Sample sample(int slot, String dilution, OptionalDouble volume, Optional<Sample.Extraction> solid) {
        return new Sample(
                slot, "s" + slot, Dilution.parse(dilution), volume, solid, OptionalDouble.of(1.25), "", "", "");
    }

    private static Result result(Analysis analysis, int index) {
        return analysis.results().get(index);
    }

    @Test
    void risingSignalByAbsorptivity() throws InputException {
        Analysis analysis = plate().read(false, "0.1 0.1 0.1 0.1 0.1 0")
                .read(true, "0.15 0.60 0.70 0.25 0.25 0")
                .analyse();
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.05, within(1e-15));
        assertThat(result(analysis, 0).n()).isEqualTo(2);
        // wells 0.045 and 0.055: SD = 0.005 √2, CV = 14.142 %
        assertThat(result(analysis, 0).cvPercent().orElseThrow()).isCloseTo(100 * Math.sqrt(2) / 10, within(1e-9));
        assertThat(result(analysis, 1).value().orElseThrow()).isCloseTo(0.01, within(1e-15));
        assertThat(result(analysis, 1).cvPercent().orElseThrow()).isZero();
    }

    @Test
    void fallingSignalCountsDownwards() throws InputException {
        Analysis analysis = plate().method(METHOD.replace("cm}\nsteps", "cm, direction: falls}\nsteps"))
                .read(false, "1.5 1.5 1.5 1.5 1.5 0")
                .read(true, "1.45 0.95 0.95 1.35 1.35 0")
                .analyse();
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.05, within(1e-15));
    }

    @Test
    void dilutionByTheTriggerIsCorrectedWhereAsked() throws InputException {
        Analysis analysis = plate().method(METHOD.replace("calibration", "trigger-dilution: correct\ncalibration"))
                .read(false, "0.2 0.2 0.2 0.2 0.2 0")
                .read(true, "0.20 0.68 0.68 0.20 0.20 0")
                .analyse();
        WellResult blank = analysis.steps().get(0).wells().get(0);
        assertThat(blank.deltaA().orElseThrow()).isCloseTo(0.20 - 0.2 * 90 / 100, within(1e-15));
        assertThat(blank.trace().before()).hasValue(0.2);
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.048, within(1e-15));
    }

    @Test
    void verticalBeamFollowsTheVolume() throws InputException {
        // d = 100 µL / 20 mm² = 0.5 cm: twice the concentration
        Analysis analysis = plate().method(
                        METHOD.replace("{beam: fixed, length: 1 cm}", "{beam: vertical, well-area: 20 mm2}"))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0 0.5 0.5 0.1 0.1 0")
                .analyse();
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.1, within(1e-15));
    }

    @Test
    void dilutionOwnVolumeAndSolidsGoIntoTheOriginalSample() throws InputException {
        Analysis analysis = plate().sample(sample(1, "1+9", OptionalDouble.of(20), Optional.empty()))
                .sample(sample(2, "2", OptionalDouble.empty(), Optional.of(new Sample.Extraction(5, 50))))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0 0.4 0.4 0.3 0.3 0")
                .analyse();
        // 0.04 g/L · 10 µL / 20 µL · 10
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.2, within(1e-15));
        // 0.03 g/L · 2 in 50 mL of extract from 5 g: 3 mg in 5 g
        assertThat(result(analysis, 1).value().orElseThrow()).isCloseTo(0.06, within(1e-15));
        assertThat(result(analysis, 1).unit()).isEqualTo(Unit.GRAM_PER_100_G);
    }

    @ParameterizedTest
    @CsvSource({
        "g/L, 0.05",
        "mg/L, 50",
        "µg/L, 50000",
        "g/100mL, 0.005",
        "mmol/L, 0.79365079365079365",
        "µmol/L, 793.65079365079365",
        "g/100g, 0.004",
        "mg/kg, 40"
    })
    void everyUnitOfTheReport(String unit, double value) throws InputException {
        Analysis analysis = plate().method(METHOD.replace("unit: g/L", "unit: " + unit))
                .sample(sample(1, "1", OptionalDouble.empty(), Optional.empty()))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0 0.5 0.5 0 0 0")
                .analyse();
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(value, within(1e-12 * value));
        assertThat(result(analysis, 0).unit().symbol()).isEqualTo(unit);
    }

    @Test
    void straightLineThroughStandardsWithTheSamplesOwnVolume() throws InputException {
        // points (0.1, 0.2) and (0.3, 0.6) on net ΔA: y = 2 x
        Analysis analysis = Plates.small()
                .method(STANDARDS)
                .layout(
                        "o a b",
                        "1 1 2",
                        "o: {role: blank}\na: {role: standard, level: 0.1 g/L}\nb: {role: standard, level: 300 mg/L}")
                .sample(sample(1, "5", OptionalDouble.of(20), Optional.empty()))
                .sample(sample(2, "1", OptionalDouble.empty(), Optional.empty()))
                .read(false, "0.1 0.1 0.1 0.1 0.1 0.1")
                .read(true, "0.15 0.35 0.75 0.55 0.55 0.95")
                .analyse();
        // net 0.4 → 0.2 g/L · 5 · 10/20
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.5, within(1e-12));
        assertThat(result(analysis, 1).value()).isEmpty();
        assertThat(result(analysis, 1).flags()).contains(Flag.ABOVE_STANDARDS);
    }

    @Test
    void singleStandardIsALineFromZero() throws InputException {
        Analysis analysis = Plates.small()
                .method(METHOD.replace("{by: absorptivity}", "{by: single-standard}"))
                .layout("o a a", "1 2 .", "o: {role: blank}\na: {role: standard, level: 0.5 g/L}")
                .read(false, "0 0 0 0 0 0")
                .read(true, "0.05 0.54 0.56 0.30 0.04 0")
                .analyse();
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.25, within(1e-12));
        // a little below the blank is noise about nothing, not outside the standards
        assertThat(result(analysis, 1).value().orElseThrow()).isCloseTo(-0.01, within(1e-12));
    }

    @Test
    void blanksOfAGroupServeTheirGroup() throws InputException {
        Analysis analysis = Plates.small()
                .method(METHOD)
                .layout("o p 1", "2 . .", "o: {role: blank}\np: {role: blank, group: dark}")
                .sample(sample(1, "1", OptionalDouble.empty(), Optional.empty()))
                .sample(new Sample(
                        2,
                        "s2",
                        Dilution.NONE,
                        OptionalDouble.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        "dark",
                        "",
                        ""))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0.1 0.3 0.5 0.5 0 0")
                .analyse();
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.04, within(1e-15));
        assertThat(result(analysis, 1).value().orElseThrow()).isCloseTo(0.02, within(1e-15));
    }

    @Test
    void sampleBlankIsTakenOff() throws InputException {
        Plates plate = Plates.small()
                .method(METHOD)
                .layout(
                        "o n 1",
                        "s . .",
                        "o: {role: blank}\nn: {role: blank, trigger: none}\ns: {role: sample-blank, of: 1}");
        Analysis analysis = plate.read(false, "0 0 0 0 0 0")
                .read(true, "0.05 0.02 0.60 0.10 0 0")
                .analyse();
        // (0.60 - 0.10) - (0.05 - 0.02)
        assertThat(result(analysis, 0).netDeltaA().orElseThrow()).isCloseTo(0.47, within(1e-15));
        assertThat(result(analysis, 0).flags()).doesNotContain(Flag.TRIGGER_BLANK_MISSING);
    }

    @Test
    void sampleBlankWithoutTriggerBlankIsFlagged() throws InputException {
        Analysis analysis = Plates.small()
                .method(METHOD)
                .layout("o 1 s", ". . .", "o: {role: blank}\ns: {role: sample-blank, of: 1}")
                .read(false, "0 0 0 0 0 0")
                .read(true, "0.05 0.60 0.10 0 0 0")
                .analyse();
        // (0.60 - 0.10) - (0.05 - 0)
        assertThat(result(analysis, 0).netDeltaA().orElseThrow()).isCloseTo(0.45, within(1e-15));
        assertThat(result(analysis, 0).flags()).contains(Flag.TRIGGER_BLANK_MISSING);
    }

    @Test
    void recoveriesOfControlAndSpike() throws InputException {
        Analysis analysis = Plates.small()
                .method(METHOD)
                .layout(
                        "o 1 p",
                        "q . .",
                        "o: {role: blank}\n"
                                + "p: {role: spike, of: 1, added: 0.02 g/L, fraction: 10 %}\n"
                                + "q: {role: control, name: cider, assigned: 400 mg/L, dilution: 10}")
                .sample(sample(1, "5", OptionalDouble.empty(), Optional.empty()))
                .read(false, "0 0 0 0 0 0")
                .read(true, "0 0.20 0.37 0.42 0 0")
                .analyse();
        Result control = result(analysis, 1);
        assertThat(control.value().orElseThrow()).isCloseTo(0.42, within(1e-14));
        assertThat(control.assigned().orElseThrow()).isCloseTo(0.4, within(1e-14));
        assertThat(control.recoveryPercent().orElseThrow()).isCloseTo(105, within(1e-9));
        Result spike = result(analysis, 2);
        // (0.037 - 0.9 · 0.020) / 0.02 = 0.95, before dilution
        assertThat(spike.recoveryPercent().orElseThrow()).isCloseTo(95, within(1e-9));
        assertThat(spike.slot()).isEmpty();
    }

    @Test
    void sequentialStepStartsFromTheLastReadingOfTheOneBefore() throws InputException {
        String two = METHOD.replace(
                "light-path:",
                "  - analyte: {name: other, molar-mass: 63 g/mol}\n"
                        + "    volumes: {sample: 10 µL, before-trigger: 100 µL, after-trigger: 110 µL}\n"
                        + "light-path:");
        Analysis analysis = plate().method(two)
                .read(false, "0.1 0.1 0.1 0.1 0.1 0")
                .read(true, "0.12 0.32 0.32 0.12 0.12 0")
                .read(true, "0.15 0.85 0.85 0.15 0.15 0")
                .analyse();
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.02, within(1e-15));
        // net 0.50, 110/10 · 63/6300 = 0.11
        assertThat(result(analysis, 1).value().orElseThrow()).isCloseTo(0.055, within(1e-15));
        assertThat(result(analysis, 1).analyte()).isEqualTo("other");
    }

    /** Step 1 ends at 0.3 and creeps by 0.002 per min; the second trigger is 10 min after the first and adds 0.2. */
    @ParameterizedTest
    @CsvSource({"nothing, 0.32, 0.2", "next-step, 0.3, 0.22"})
    void creepBeforeTheNextTriggerBelongsToWhomTheMethodSays(String owner, double secondBefore, double secondChange)
            throws InputException {
        String twoSteps = METHOD.replace(
                "volumes: {sample: 10 µL, before-trigger: 90 µL, after-trigger: 100 µL}\n",
                "volumes: {sample: 10 µL, before-trigger: 90 µL, after-trigger: 100 µL}\n"
                        + "    creep: {correct: extrapolate, creep-belongs-to: " + owner + "}\n"
                        + "  - analyte: {name: base, molar-mass: 63 g/mol}\n"
                        + "    volumes: {sample: 10 µL, before-trigger: 100 µL, after-trigger: 100 µL}\n"
                        + "    creep: {correct: extrapolate}\n");
        double[] times = new double[80];
        double[] flat = new double[80];
        double[] trace = new double[80];
        for (int i = 0; i < times.length; i++) {
            times[i] = 15 * i;
            double since = times[i] - 60;
            trace[i] = since < 0 ? 0.1 : 0.3 + 0.002 * since / 60 + (since < 600 ? 0 : 0.2);
        }
        Analysis analysis = Plates.small()
                .method(twoSteps)
                .layout("o 1 .", ". . .", "o: {role: blank}")
                .series(false, List.of(60.0, 660.0), times, flat, trace, flat, flat, flat, flat)
                .analyse();
        WellResult first = analysis.steps().get(0).wells().get(1);
        WellResult second = analysis.steps().get(1).wells().get(1);

        assertThat(first.trace().deltaA().orElseThrow()).isCloseTo(0.2, within(1e-9));
        assertThat(first.flags()).contains(Flag.CREEP_BELONGS);
        assertThat(second.trace().before().orElseThrow()).isCloseTo(secondBefore, within(1e-9));
        assertThat(second.trace().deltaA().orElseThrow()).isCloseTo(secondChange, within(1e-9));
    }

    @Test
    void readingNearestThePlannedTimeCountsAndTheLaterOneOnATie() throws InputException {
        String planned = METHOD.replace("100 µL}\n", "100 µL}\n    timing: {after: 10 min}\n");
        Analysis analysis = plate().method(planned)
                .read(false, "0 0 0 0 0 0")
                .read(true, OptionalDouble.of(540), "0 0.1 0.1 0.1 0.1 0")
                .read(false, OptionalDouble.of(660), "0 0.2 0.2 0.1 0.1 0")
                .read(false, OptionalDouble.of(700), "0 0.3 0.3 0.1 0.1 0")
                .analyse();
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.02, within(1e-15));
    }

    @Test
    void triggerInsideASeriesIsStaggeredByColumn() throws InputException {
        String planned = METHOD.replace("100 µL}\n", "100 µL}\n    timing: {after: 60 s, stagger-per-column: 30 s}\n");
        double[] times = {0, 30, 60, 90, 120, 150};
        double[] blank = {0, 0, 0, 0, 0, 0};
        double[] rise = {0, 0.1, 0.2, 0.3, 0.4, 0.5};
        Analysis analysis = Plates.small()
                .method(planned)
                .layout("o 1 2", ". . .", "o: {role: blank}")
                .series(false, List.of(30.0), times, blank, rise, rise, blank, blank, blank)
                .analyse();
        WellResult column2 = analysis.steps().get(0).wells().get(1);
        WellResult column3 = analysis.steps().get(0).wells().get(2);
        // column 2 was triggered at 60 s: baseline 0 and 30 s, after 60 s at file time 120 s
        assertThat(column2.trace().before().orElseThrow()).isCloseTo(0.05, within(1e-15));
        assertThat(column2.trace().after()).hasValue(0.4);
        // column 3 at 90 s: baseline 0 to 60 s, after 60 s at file time 150 s
        assertThat(column3.trace().before().orElseThrow()).isCloseTo(0.1, within(1e-15));
        assertThat(column3.trace().after()).hasValue(0.5);
    }

    @Test
    void readingExactlyAtTheTriggerCountsAsAfter() throws InputException {
        double[] times = {0, 30, 60};
        double[] flat = {0, 0, 0};
        Analysis analysis = Plates.small()
                .method(METHOD)
                .layout("o 1 .", ". . .", "o: {role: blank}")
                .series(false, List.of(30.0), times, flat, new double[] {0.1, 0.4, 0.4}, flat, flat, flat, flat)
                .analyse();
        assertThat(analysis.steps().get(0).wells().get(1).trace().before()).hasValue(0.1);
    }

    @Test
    void excludedWellCountsOnlyInValueAll() throws InputException {
        Analysis analysis = plate().exclude("A3")
                .read(false, "0 0 0 0 0 0")
                .read(true, "0 0.4 0.8 0.1 0.1 0")
                .analyse();
        Result first = result(analysis, 0);
        assertThat(first.value().orElseThrow()).isCloseTo(0.04, within(1e-15));
        assertThat(first.valueAll().orElseThrow()).isCloseTo(0.06, within(1e-15));
        assertThat(first.n()).isEqualTo(1);
        assertThat(first.flags()).contains(Flag.EXCLUDED, Flag.SINGLE_REPLICATE);
    }

    @Test
    void excludedBlankAndStandardAreLeftOut() throws InputException {
        Plates plate = Plates.small()
                .method(STANDARDS)
                .layout(
                        "o o a",
                        "b 1 b",
                        "o: {role: blank}\na: {role: standard, level: 0.1 g/L}\nb: {role: standard, level: 0.3 g/L}")
                .exclude("A2")
                .exclude("B3")
                .read(false, "0 0 0 0 0 0")
                .read(true, "0 0.4 0.2 0.6 0.4 0.9");
        Analysis analysis = plate.analyse();
        assertThat(analysis.steps().get(0).blanks().get("").mean()).isZero();
        assertThat(result(analysis, 0).value().orElseThrow()).isCloseTo(0.2, within(1e-12));
    }

    @Test
    void overRangeLeavesNoValueAndMissingLeavesTheRest() throws InputException {
        Analysis analysis = plate().read(false, "0 0 0 0 0 0")
                .read(true, "0 over 0.4 missing 0.2 0")
                .analyse();
        assertThat(result(analysis, 0).value()).isEmpty();
        assertThat(result(analysis, 0).flags()).contains(Flag.OVER_RANGE);
        assertThat(result(analysis, 1).value().orElseThrow()).isCloseTo(0.02, within(1e-15));
        assertThat(result(analysis, 1).n()).isEqualTo(1);
        assertThat(result(analysis, 1).flags()).contains(Flag.READINGS_MISSING);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            swapped     | swapped: expected them in the order they were taken
            twice       | hold the same readings, number for number
            missing     | found no reading of A2, which the layout uses
            no blank    | found no blank in the layout
            one level   | standards of acid (A2, A3): found standards of one level only
            slot        | but the layout 'small' has no such slot
            density     | which needs its density
            triggers    | found no trigger among the readings, but the method 'by-hand' has 1 step
            analyte     | a quantity of 'sugar', which the method 'by-hand' does not measure; expected acid
            blank lost  | found no blank with a reading that counts (A1)
            """)
    void saysWhatKeepsThePlateFromBeingWorkedUp(String what, String message) {
        assertThatThrownBy(() -> broken(what).analyse())
                .isInstanceOf(InputException.class)
                .hasMessageContaining("run.yaml")
                .hasMessageContaining(message);
    }

    private static Plates broken(String what) {
        String before = "0.1 0.1 0.1 0.1 0.1 0.1";
        String after = "0.1 0.5 0.5 0.5 0.5 0.1";
        return switch (what) {
            case "swapped" -> plate().read(false, after).read(true, before);
            case "twice" -> plate().read(false, before).read(true, before);
            case "missing" -> plate().read(false, before).read(true, "0.1 none 0.5 0.5 0.5 0.1");
            case "no blank" ->
                plate().layout("1 1 2", "2 . .", "z: {role: blank}")
                        .read(false, before)
                        .read(true, after);
            case "one level" ->
                plate().method(STANDARDS)
                        .layout("o a a", "1 1 .", "o: {role: blank}\na: {role: standard, level: 1 g/L}")
                        .read(false, before)
                        .read(true, after);
            case "slot" -> plate().sample(Sample.plain(9)).read(false, before).read(true, after);
            case "density" ->
                plate().method(METHOD.replace("unit: g/L", "unit: g/100g"))
                        .read(false, before)
                        .read(true, after);
            case "triggers" -> plate().read(false, before).read(false, after);
            case "analyte" ->
                plate().layout("o 1 1", "q . .", "o: {role: blank}\nq: {role: control, assigned: {sugar: 1 g/L}}")
                        .read(false, before)
                        .read(true, after);
            default -> plate().read(false, before).read(true, "missing 0.5 0.5 0.5 0.5 0.1");
        };
    }
}
