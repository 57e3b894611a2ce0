package tallywell.assess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tallywell.budget.NoisyPlate;
import tallywell.method.Sample;
import tallywell.notice.InputException;
import tallywell.plate.Well;
import tallywell.quantity.Dilution;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.Plates;

/** What the plate shows beyond the criteria of its method: each check on a plate made to fail it, and on a clean one. */
class ObservationsTest {
    private static final String LINE = "{by: standards, model: line}";

    private static double straight(double level) {
        return 2.1 * level;
    }

    private static double bending(double level) {
        return 2.1 * level - 1.6 * level * level;
    }

    private static NoisyPlate whole(String... further) throws InputException, IOException {
        return NoisyPlate.of(
                NoisyPlate.method(LINE, further),
                Files.readString(Path.of("plate-layouts/thirty-six-in-duplicate.yaml"))
                        .lines()
                        .filter(line -> !line.startsWith("#"))
                        .collect(Collectors.joining("\n")),
                List.of(),
                ObservationsTest::straight,
                0.002,
                0.004);
    }

    private static Check check(Analysis analysis, String name) {
        Assessment assessment = new Assessor().assess(analysis);
        return Stream.concat(assessment.checks().stream(), assessment.observations().stream())
                .filter(each -> each.name().startsWith(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no check " + name));
    }

    private static Check.State state(Analysis analysis, String name) {
        return check(analysis, name).state();
    }

    @Test
    void cleanPlateFailsNothing() throws InputException, IOException {
        Assessment assessment = new Assessor().assess(whole().analyse());
        assertThat(assessment.observations())
                .noneMatch(each -> each.state() == Check.State.FAILED)
                .filteredOn(each -> each.state() == Check.State.PASSED)
                .extracting(Check::name)
                .contains(
                        "all replicates scatter alike",
                        "blanks scatter like the other wells",
                        "calibration is straight",
                        "curve fits the means of the levels",
                        "no trend of the blanks over the columns",
                        "no trend over the rows",
                        "no trend over the columns",
                        "edge like the middle",
                        "no carry-over from the well to the left");
        assertThat(assessment.observations())
                .extracting(Check::found)
                .noneMatch(each -> each.contains("NaN") || each.contains("Infinity"));
    }

    /** One reading after the trigger cannot show that a reaction is over. */
    @Test
    void whatOneReadingCannotShowNeverPasses() throws InputException, IOException {
        Analysis analysis = whole("creep: {correct: extrapolate}").analyse();
        for (String name : List.of("reactions were over", "creep is constant")) {
            Check check = check(analysis, name);
            assertThat(check.state()).as(name).isEqualTo(Check.State.NOT_ASSESSED);
            assertThat(check.found()).contains("show nothing of it");
        }
    }

    @Test
    void observationsDoNotFailABatch() throws InputException, IOException {
        Analysis sloping = whole().moved(well -> 0.004 * well.row());
        Assessment assessment = new Assessor().assess(sloping);
        assertThat(assessment.observations()).anyMatch(each -> each.state() == Check.State.FAILED);
        assertThat(assessment.passed()).isTrue();
    }

    @Test
    void trendsOverThePlateAreSeen() throws InputException, IOException {
        NoisyPlate plate = whole();
        Check columns = check(plate.moved(well -> 0.001 * well.column()), "no trend over the columns");
        assertThat(columns.state()).isEqualTo(Check.State.FAILED);
        // 1 mA a column was put in; the scatter of 36 pairs six columns apart leaves about 0.1 mA of doubt.
        assertThat(Double.parseDouble(columns.found().split(" ")[0])).isCloseTo(1.0, within(0.3));
        assertThat(state(plate.moved(well -> 0.002 * well.column()), "no trend of the blanks over the columns"))
                .isEqualTo(Check.State.FAILED);
        assertThat(state(plate.moved(well -> well.column() == 0 || well.column() == 11 ? 0.01 : 0), "edge like"))
                .isEqualTo(Check.State.FAILED);
    }

    @Test
    void carryOverFromTheLeftIsSuspected() throws InputException, IOException {
        NoisyPlate plate = whole();
        var after = plate.after();
        Analysis carried = plate.moved(well -> well.column() == 0
                ? 0
                : 0.03 * (after.getOrDefault(new Well(well.row(), well.column() - 1), 0.0) - 0.23));
        Check check = check(carried, "no carry-over");
        assertThat(check.state()).isEqualTo(Check.State.FAILED);
        assertThat(Double.parseDouble(check.found().split(" ")[0])).isCloseTo(3.0, within(0.6));
    }

    @Test
    void slotWithFarTooMuchScatterIsNamedAndItsResultChecked() throws InputException, IOException {
        Analysis moved = whole().moved(Well.parse("B1").orElseThrow(), 0.1);
        Check check = check(moved, "all replicates scatter alike");
        assertThat(check.state()).isEqualTo(Check.State.FAILED);
        assertThat(check.found()).isEqualTo("far more scatter than the others: sample 1");
        Judgement first = new Assessor().assess(moved).judgements().get(0);
        assertThat(first.result().flags()).contains(Flag.SCATTER_HIGH);
        assertThat(first.verdict()).isEqualTo(Verdict.CHECK);
    }

    @Test
    void scatteringBlanksAreSeen() throws InputException, IOException {
        Analysis moved = whole().moved(well -> List.of("A1", "D4", "G6").contains(well.toString()) ? 0.03 : 0);
        assertThat(state(moved, "blanks scatter")).isEqualTo(Check.State.FAILED);
    }

    @Test
    void bentStandardsAreSeenByBothTests() throws InputException {
        Analysis bent = NoisyPlate.of(
                        NoisyPlate.method(LINE), NoisyPlate.LAYOUT, List.of(), ObservationsTest::bending, 0.002, 0.004)
                .analyse();
        assertThat(state(bent, "calibration is straight")).isEqualTo(Check.State.FAILED);
        assertThat(state(bent, "curve fits")).isEqualTo(Check.State.FAILED);
    }

    @Test
    void outlierAmongFourWellsIsFlaggedAndKept() throws InputException {
        // Grubbs two-sided at 1 % for n = 4 is 1.4963; 0.500, 0.500, 0.501, 0.560 give G = 1.4999.
        Analysis analysis = Plates.small()
                .method("""
                        tallywell: method/1
                        id: four-wells
                        signal: {absorptivity: 6300 L/mol/cm}
                        steps:
                          - analyte: {name: acid, molar-mass: 126 g/mol}
                            volumes: {sample: 100 µL, before-trigger: 1 mL, after-trigger: 1 mL}
                        light-path: {beam: fixed, length: 1 cm}
                        calibration: {by: absorptivity}
                        report: {unit: g/L}
                        """)
                .layout("o 1 1", "o 1 1", "o: {role: blank}")
                .read(false, "0.100 0.100 0.100 0.100 0.100 0.100")
                .read(true, "0.110 0.600 0.600 0.112 0.601 0.660")
                .analyse();
        Check check = check(analysis, "no outlier");
        assertThat(check.state()).isEqualTo(Check.State.FAILED);
        assertThat(check.found()).isEqualTo("B3 (Dixon's test agrees)");
        Judgement only = new Assessor().assess(analysis).judgements().get(0);
        assertThat(only.result().flags()).contains(Flag.OUTLIER);
        assertThat(only.result().n()).isEqualTo(4);
        assertThat(only.verdict()).isEqualTo(Verdict.CHECK);
    }

    @Test
    void dilutionsOfOneSampleAreCompared() throws InputException {
        List<Sample> samples = Stream.of(1, 2, 3, 4)
                .map(slot -> new Sample(
                        slot,
                        slot < 3 ? "cloudy" : "clear",
                        new Dilution(slot == 1 ? 4 : slot == 2 ? 2 : slot == 3 ? 4 : 3),
                        OptionalDouble.empty(),
                        java.util.Optional.empty(),
                        OptionalDouble.empty(),
                        "",
                        "",
                        ""))
                .toList();
        // Slot n holds 0.07 n g/L: 0.28 and 0.28 in the first sample, 0.84 and 0.84 in the second.
        NoisyPlate plate = NoisyPlate.of(
                NoisyPlate.method(LINE), NoisyPlate.LAYOUT, samples, ObservationsTest::straight, 0.002, 0.004);
        assertThat(state(plate.analyse(), "dilutions 4 and 2 of 'cloudy' agree"))
                .isEqualTo(Check.State.PASSED);
        assertThat(state(plate.analyse(), "dilutions 4 and 3 of 'clear' agree")).isEqualTo(Check.State.PASSED);
        Analysis disturbed = plate.moved(well -> List.of("C2", "D2").contains(well.toString()) ? -0.02 : 0);
        assertThat(state(disturbed, "dilutions 4 and 2 of 'cloudy' agree")).isEqualTo(Check.State.FAILED);
    }

    @Test
    void limitsOfTheMethodForBlanksStandardsAndSlopeDecide() throws InputException, IOException {
        NoisyPlate strict = whole(
                "accept: {blank-sd: {most: 0.0001}, standard-recovery: {least: 99.9 %, most: 100.1 %}, slope: {most: 50 %}}");
        assertThat(state(strict.analyse(), "spread of the blanks")).isEqualTo(Check.State.FAILED);
        assertThat(state(strict.analyse(), "standards calculated back")).isEqualTo(Check.State.FAILED);
        assertThat(state(strict.analyse(), "slope of the calibration")).isEqualTo(Check.State.FAILED);
        NoisyPlate wide = whole(
                "accept: {blank-sd: {most: 0.01}, standard-recovery: {least: 80 %, most: 120 %}, slope: {least: 50 %, most: 200 %}}");
        assertThat(state(wide.analyse(), "spread of the blanks")).isEqualTo(Check.State.PASSED);
        assertThat(state(wide.analyse(), "standards calculated back")).isEqualTo(Check.State.PASSED);
        assertThat(state(wide.analyse(), "slope of the calibration")).isEqualTo(Check.State.PASSED);
        assertThat(state(whole().analyse(), "slope of the calibration")).isEqualTo(Check.State.NOT_ASSESSED);
        // By hand: 20 µL over 33.2 mm² is 0.060241 cm of sample; 6300 · 0.060241 / 134.087 = 2.8304 for 1 g/L.
        assertThat(check(whole().analyse(), "slope of the calibration").found()).endsWith("expected 2.830)");
    }

    @Test
    void detectionLimitsAreNamedByTheirRules() throws InputException, IOException {
        List<Check> limits = new Assessor()
                .assess(whole().analyse()).observations().stream()
                        .filter(each -> each.name().startsWith("limit of detection"))
                        .toList();
        assertThat(limits)
                .extracting(Check::source)
                .containsExactly(
                        "t · s0 · √(1/n + 1/N) of the blanks (IUPAC 1995)",
                        "blank mean + 3 and 10 · SD (OIV-MA-AS1-10)",
                        "3.3 and 10 · residual SD / slope (ICH Q2)",
                        "3.3 and 10 · SE of the intercept / slope (ICH Q2)",
                        "t · s of a net ΔA read from the line at 0 / slope (ISO 11843-2, DIN 32645)");
        assertThat(limits).allMatch(each -> each.found().contains("g/L in the solution pipetted"));
    }
}
