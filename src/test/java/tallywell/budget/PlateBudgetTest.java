package tallywell.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.curve.Calibration;
import tallywell.method.Sample;
import tallywell.notice.InputException;
import tallywell.numeric.StudentT;
import tallywell.plate.Well;
import tallywell.quantity.Dilution;
import tallywell.workup.Analysis;
import tallywell.workup.Plates;
import tallywell.workup.Repeatability;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Budgets against the derivative of the whole calculation, by hand, and against draws. */
class PlateBudgetTest {
    private static final String TWO_GROUPS = NoisyPlate.LAYOUT
            .replace("C: o", "C: p")
            .replace("D: o", "D: p")
            .replace("  o: {role: blank}", "  o: {role: blank}\n  p: {role: blank, group: cloudy}");

    private static final String SAMPLE_BLANKS = NoisyPlate.LAYOUT
            .replace("C: o 1", "C: s 1")
            .replace("D: o 1", "D: n 1")
            .replace(
                    "  o: {role: blank}",
                    "  o: {role: blank}\n  n: {role: blank, trigger: none}\n  s: {role: sample-blank, of: 1}");

    private static double straight(double level) {
        return 2.1 * level;
    }

    private static double bending(double level) {
        return 2.1 * level - 1.1 * level * level;
    }

    private static double logistic(double level) {
        return 1.2 - 1.2 / (1 + Math.pow(level / 0.25, 1.3));
    }

    /** Variance of each well's ΔA as the budget takes it: pooled, or residual for standards. */
    private static Map<Well, Double> variances(StepAnalysis step, Repeatability scatter) {
        Map<Well, Double> variances = new HashMap<>();
        for (WellResult well : step.wells()) {
            double net =
                    Repeatability.isBlank(well.content()) ? 0 : well.netDeltaA().orElse(0);
            variances.put(well.well(), scatter.function().at(net));
        }
        step.calibration().ifPresent(calibration -> {
            boolean residual = calibration.standards().stream()
                            .mapToDouble(each -> each.level())
                            .distinct()
                            .count()
                    > calibration.fit().size();
            for (int i = 0; residual && i < step.calibrationWells().size(); i++) {
                double weight = calibration.standards().get(i).weight();
                variances.put(step.calibrationWells().get(i), calibration.fit().residualVariance() / weight);
            }
        });
        return variances;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            line              | {by: standards, model: line}                   | straight | plain
            weighted line     | {by: standards, model: line, weights: 1/x}     | straight | plain
            through zero      | {by: standards, model: line-through-zero}      | straight | plain
            quadratic         | {by: standards, model: quadratic}              | bending  | plain
            logistic          | {by: standards, model: logistic-4}             | logistic | plain
            absorptivity      | {by: absorptivity}                             | straight | plain
            other blanks      | {by: standards, model: line}                   | straight | groups
            other blanks zero | {by: standards, model: line-through-zero}      | straight | groups
            sample blanks     | {by: standards, model: line}                   | straight | sample-blanks
            own volumes       | {by: standards, model: line}                   | straight | volumes
            """)
    void scatterIsPropagatedLikeTheDerivativeOfTheWholeCalculation(
            String name, String calibration, String course, String kind) throws InputException {
        NoisyPlate plate = plate(calibration, course, kind);
        Analysis found = plate.analyse();
        PlateBudget budget = PlateBudget.of(found);
        Map<Well, Double> variances =
                variances(found.steps().get(0), budget.repeatabilities().get(0).orElseThrow());
        int results = found.results().size();
        double[][] derivative = new double[results][];
        Well[] wells = plate.after().keySet().toArray(new Well[0]);
        for (int r = 0; r < results; r++) {
            derivative[r] = new double[wells.length];
        }
        double h = 1e-6;
        for (int j = 0; j < wells.length; j++) {
            Analysis up = plate.moved(wells[j], h);
            Analysis down = plate.moved(wells[j], -h);
            for (int r = 0; r < results; r++) {
                derivative[r][j] = (up.results().get(r).value().orElseThrow()
                                - down.results().get(r).value().orElseThrow())
                        / (2 * h);
            }
        }
        // The derivative of a logistic fit by its responses holds second-order terms that the budget leaves out.
        double tolerance = name.equals("logistic") ? 0.01 : 1e-5;
        for (int r = 0; r < results; r++) {
            double square = 0;
            double shared = 0;
            for (int j = 0; j < wells.length; j++) {
                square += derivative[r][j] * derivative[r][j] * variances.getOrDefault(wells[j], 0.0);
                shared += derivative[r][j] * derivative[0][j] * variances.getOrDefault(wells[j], 0.0);
            }
            ResultBudget each = budget.results().get(r).orElseThrow();
            double u = each.byBudget();
            assertThat(u).as("%s, result %s", name, r).isCloseTo(Math.sqrt(square), within(tolerance * u));
            if (r > 0) {
                double scale = u * budget.results().get(0).orElseThrow().byBudget();
                assertThat(each.covariance(budget.results().get(0).orElseThrow()))
                        .as("covariance with the first, %s, result %s", name, r)
                        .isCloseTo(shared, within(2 * tolerance * scale));
            }
        }
    }

    private static NoisyPlate plate(String calibration, String course, String kind, String... further)
            throws InputException {
        DoubleUnaryOperator response = switch (course) {
            case "bending" -> PlateBudgetTest::bending;
            case "logistic" -> PlateBudgetTest::logistic;
            default -> PlateBudgetTest::straight;
        };
        List<Sample> samples = switch (kind) {
            case "groups" -> NoisyPlate.samples(4, OptionalDouble.empty(), new Dilution(5), "cloudy");
            case "volumes" -> NoisyPlate.samples(4, OptionalDouble.of(25), new Dilution(2), "");
            default -> List.of();
        };
        String layout = switch (kind) {
            case "groups" -> TWO_GROUPS;
            case "sample-blanks" -> SAMPLE_BLANKS;
            default -> NoisyPlate.LAYOUT;
        };
        return NoisyPlate.of(NoisyPlate.method(calibration, further), layout, samples, response, 0.002, 0.006);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{by: standards, model: line}",
                "{by: standards, model: line-through-zero, weights: 1/x}",
                "{by: standards, model: quadratic}",
                "{by: standards, model: line, weights: variance-function}",
                "{by: absorptivity}"
            })
    void drawsAgreeWithTheBudget(String calibration) throws InputException {
        // Everything is drawn, the scatter's few degrees of freedom too: so intervals are compared, not u itself.
        NoisyPlate plate = plate(
                calibration,
                "straight",
                "plain",
                "uncertainty:",
                "  sample-volume: {tolerance: 0.8 %}",
                "  absorptivity: {standard: 0.5 %}",
                "  light-path: {tolerance: 1 %}",
                "  standard: {expanded: 1 %}",
                "  plate: {standard: 0.3 %}");
        PlateBudget budget = PlateBudget.of(plate.analyse());
        List<Optional<Simulation.Output>> drawn = PlateSimulation.run(budget, 40_000, 7);
        for (int r = 0; r < drawn.size(); r++) {
            ResultBudget each = budget.results().get(r).orElseThrow();
            Simulation.Output output = drawn.get(r).orElseThrow();
            double half = each.expandedUncertainty();
            assertThat(output.lost()).isZero();
            assertThat(output.mean()).isCloseTo(each.result().value().orElseThrow(), within(0.05 * half));
            // With 8 degrees of freedom on each side the draws of two Student distributions are up to 8 % wider than
            // effective degrees of freedom say; this is known of the two approaches.
            assertThat((output.high() - output.low()) / 2).as(calibration).isBetween(0.97 * half, 1.09 * half);
        }
    }

    @Test
    void drawsAgreeWithTheBudgetOfAWholePlate() throws InputException, IOException {
        NoisyPlate plate = NoisyPlate.of(
                NoisyPlate.method("{by: standards, model: line}"),
                Files.readString(Path.of("plate-layouts/thirty-six-in-duplicate.yaml"))
                        .lines()
                        .filter(line -> !line.startsWith("#"))
                        .collect(Collectors.joining("\n")),
                List.of(),
                PlateBudgetTest::straight,
                0.002,
                0.006);
        PlateBudget budget = PlateBudget.of(plate.analyse());
        List<Optional<Simulation.Output>> drawn = PlateSimulation.run(budget, 40_000, 19);
        for (int r = 0; r < drawn.size(); r++) {
            ResultBudget each = budget.results().get(r).orElseThrow();
            Simulation.Output output = drawn.get(r).orElseThrow();
            double half = each.expandedUncertainty();
            assertThat((output.high() - output.low()) / 2).isCloseTo(half, within(0.03 * half));
            // Scatter with ν degrees of freedom has a standard deviation of √(ν/(ν-2)) times what was found.
            assertThat(output.standardUncertainty()).isBetween(0.99 * each.byBudget(), 1.09 * each.byBudget());
        }
    }

    @Test
    void drawsAgreeWithTheBudgetOfALogistic() throws InputException {
        NoisyPlate plate = plate("{by: standards, model: logistic-4}", "logistic", "plain");
        PlateBudget budget = PlateBudget.of(plate.analyse());
        List<Optional<Simulation.Output>> drawn = PlateSimulation.run(budget, 2_000, 7);
        for (int r = 0; r < drawn.size(); r++) {
            ResultBudget each = budget.results().get(r).orElseThrow();
            double half = each.expandedUncertainty();
            Simulation.Output output = drawn.get(r).orElseThrow();
            // 2000 draws leave some 5 % of doubt about the ends of an interval.
            assertThat((output.high() - output.low()) / 2).isCloseTo(half, within(0.15 * half));
        }
    }

    @Test
    void sameSeedGivesTheSameDraws() throws InputException {
        PlateBudget budget = PlateBudget.of(
                plate("{by: standards, model: line}", "straight", "plain").analyse());
        assertThat(PlateSimulation.run(budget, 3000, 11)).isEqualTo(PlateSimulation.run(budget, 3000, 11));
        assertThat(PlateSimulation.run(budget, 3000, 11)).isNotEqualTo(PlateSimulation.run(budget, 3000, 12));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            absorptivity: 6300 L/mol/cm | absorptivity: 6363 L/mol/cm | absorptivity | molar absorptivity
            well-area: 33.2 mm2         | well-area: 33.532 mm2       | light-path   | light path
            sample: 20 µL               | sample: 20.2 µL             | sample-volume | sample volume
            """)
    void statedInputsActLikeTheChangedMethod(String text, String changed, String key, String label)
            throws InputException {
        // The method with 1 % more of the quantity: the value must move as the sensitivity says, to first order.
        String method = NoisyPlate.method("{by: absorptivity}", "uncertainty: {" + key + ": {standard: 1 %}}");
        Analysis found = NoisyPlate.of(method, NoisyPlate.LAYOUT, List.of(), PlateBudgetTest::straight, 0.002, 0.006)
                .analyse();
        Analysis moved = NoisyPlate.of(
                        method.replace(text, changed),
                        NoisyPlate.LAYOUT,
                        List.of(),
                        PlateBudgetTest::straight,
                        0.002,
                        0.006)
                .analyse();
        PlateBudget budget = PlateBudget.of(found);
        for (int r = 0; r < found.results().size(); r++) {
            double change = moved.results().get(r).value().orElseThrow()
                    - found.results().get(r).value().orElseThrow();
            Contribution contribution = contribution(budget.results().get(r).orElseThrow(), label);
            assertThat(contribution.effect()).isCloseTo(change, within(0.011 * Math.abs(change)));
        }
    }

    private static Contribution contribution(ResultBudget budget, String label) {
        return budget.contributions().stream()
                .filter(each -> each.source().label().equals(label))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void volumeCancelsAtTheSameSettingOnly() throws InputException {
        String further = "uncertainty: {sample-volume: {standard: 1 %}}";
        PlateBudget same = PlateBudget.of(plate("{by: standards, model: line}", "straight", "plain", further)
                .analyse());
        assertThat(same.results().get(0).orElseThrow().shares()).doesNotContainKey("sample volume");
        PlateBudget other = PlateBudget.of(plate("{by: standards, model: line}", "straight", "volumes", further)
                .analyse());
        ResultBudget budget = other.results().get(0).orElseThrow();
        List<Contribution> volumes = budget.contributions().stream()
                .filter(each -> each.source().label().equals("sample volume"))
                .toList();
        assertThat(volumes).extracting(each -> each.source().name()).containsExactly("25 µL", "20 µL");
        double value = budget.result().value().orElseThrow();
        assertThat(volumes.get(0).effect()).isCloseTo(-0.01 * value, within(1e-15));
        assertThat(volumes.get(1).effect()).isCloseTo(0.01 * value, within(1e-15));
    }

    @Test
    void commonBlankCancelsWithAFreeInterceptAndCountsThroughZero() throws InputException {
        PlateBudget line = PlateBudget.of(
                plate("{by: standards, model: line}", "straight", "plain").analyse());
        assertThat(line.results().get(0).orElseThrow().shares()).doesNotContainKey("blank");
        PlateBudget zero = PlateBudget.of(plate("{by: standards, model: line-through-zero}", "straight", "plain")
                .analyse());
        assertThat(zero.results().get(0).orElseThrow().shares()).containsKey("blank");
        // Other blanks: both count although the intercept is free.
        PlateBudget groups = PlateBudget.of(
                plate("{by: standards, model: line}", "straight", "groups").analyse());
        assertThat(groups.results().get(0).orElseThrow().contributions().stream()
                        .filter(each -> each.source().label().equals("blank"))
                        .map(each -> each.source().name()))
                .containsExactlyInAnyOrder(" 1", "cloudy 1");
    }

    @Test
    void budgetOfASmallPlateIsTheOneWorkedByHand() throws InputException {
        // Two blanks 0.010 and 0.012, a sample twice with ΔA 0.500 and 0.506, another twice with 0.301 and 0.299.
        Analysis found = Plates.small()
                .method("""
                        tallywell: method/1
                        id: by-hand
                        signal: {absorptivity: 6300 L/mol/cm}
                        steps:
                          - analyte: {name: acid, molar-mass: 126 g/mol}
                            volumes: {sample: 100 µL, before-trigger: 1 mL, after-trigger: 1 mL}
                        light-path: {beam: fixed, length: 1 cm}
                        calibration: {by: absorptivity}
                        report: {unit: g/L}
                        uncertainty: {absorptivity: {standard: 1 %}, total-volume: {tolerance: 1 %}}
                        """)
                .layout("o 1 2", "o 1 2", "o: {role: blank}")
                .read(false, "0.100 0.100 0.100 0.100 0.100 0.100")
                .read(true, "0.110 0.600 0.401 0.112 0.606 0.399")
                .analyse();
        PlateBudget budget = PlateBudget.of(found);
        Repeatability scatter = budget.repeatabilities().get(0).orElseThrow();
        // Variances 2e-6 at 0, 18e-6 at 0.492, 2e-6 at 0.289: three slots of one degree of freedom.
        assertThat(scatter.degreesOfFreedom()).isEqualTo(3);
        assertThat(scatter.slots()).isEqualTo(3);
        double s0 = scatter.function().constant();
        double s1 = scatter.function().proportional();
        // 1 unit of net ΔA is 1000/100 · 126 / 6300 = 0.2 g/L.
        ResultBudget first = budget.results().get(0).orElseThrow();
        double value = first.result().value().orElseThrow();
        assertThat(value).isCloseTo(0.2 * 0.492, within(1e-12));
        double own = (s0 + s1 * 0.489 * 0.489 + s0 + s1 * 0.495 * 0.495) / 4;
        double square = 0.04 * (own + s0 / 2) + value * value * (1e-4 + 1e-4 / 3);
        assertThat(first.byBudget()).isCloseTo(Math.sqrt(square), within(1e-12));
        assertThat(first.shares().values().stream().mapToDouble(each -> each).sum())
                .isCloseTo(1, within(1e-12));
        assertThat(first.shares().get("blank")).isCloseTo(0.04 * s0 / 2 / square, within(1e-12));
        // The second result shares blank, absorptivity and total volume.
        ResultBudget second = budget.results().get(1).orElseThrow();
        double other = second.result().value().orElseThrow();
        assertThat(first.covariance(second))
                .isCloseTo(0.04 * s0 / 2 + value * other * (1e-4 + 1e-4 / 3), within(1e-15));
        assertThat(first.covariance(second)).isEqualTo(second.covariance(first));
    }

    @Test
    void twoReplicatesAloneHaveOneDegreeOfFreedom() throws InputException {
        Analysis found = Plates.small()
                .method("""
                        tallywell: method/1
                        id: by-hand
                        signal: {absorptivity: 6300 L/mol/cm}
                        steps:
                          - analyte: {name: acid, molar-mass: 126 g/mol}
                            volumes: {sample: 100 µL, before-trigger: 1 mL, after-trigger: 1 mL}
                        light-path: {beam: fixed, length: 1 cm}
                        calibration: {by: absorptivity}
                        report: {unit: g/L}
                        """)
                .layout("o 1 2", ". 1 .", "o: {role: blank}")
                .read(false, "0.100 0.100 0.100 0.100 0.100 0.100")
                .read(true, "0.110 0.600 0.401 0.112 0.606 0.399")
                .analyse();
        ResultBudget budget = PlateBudget.of(found).results().get(0).orElseThrow();
        assertThat(budget.degreesOfFreedom()).isCloseTo(1, within(1e-9));
        assertThat(budget.coverageFactor()).isCloseTo(12.706, within(0.0005));
        // One well of the second sample: the pooled scatter serves it too.
        assertThat(PlateBudget.of(found).results().get(1)).isPresent();
    }

    @Test
    void effectiveDegreesOfFreedomAreThoseOfTheIndependentEstimates() throws InputException {
        Analysis found =
                plate("{by: standards, model: line}", "straight", "plain").analyse();
        PlateBudget budget = PlateBudget.of(found);
        Repeatability scatter = budget.repeatabilities().get(0).orElseThrow();
        assertThat(scatter.standardsIncluded()).isFalse();
        // Four blanks and five pairs: 3 + 5 degrees of freedom; ten standards on a line: 8.
        assertThat(scatter.degreesOfFreedom()).isEqualTo(8);
        Calibration line = found.steps().get(0).calibration().orElseThrow();
        assertThat(line.fit().degreesOfFreedom()).isEqualTo(8);
        ResultBudget each = budget.results().get(2).orElseThrow();
        double own = contribution(each, "repeatability").effect();
        double curve = each.contributions().stream()
                .filter(one -> one.source().label().equals("calibration"))
                .mapToDouble(one -> one.effect() * one.effect())
                .sum();
        double net = each.result().netDeltaA().orElseThrow();
        double pooled = scatter.function().degreesOfFreedom(1, net * net);
        double expected = Math.pow(own * own + curve, 2) / (Math.pow(own, 4) / pooled + curve * curve / 8);
        assertThat(each.degreesOfFreedom()).isCloseTo(expected, within(0.01 * expected));
        assertThat(each.coverageFactor()).isEqualTo(StudentT.twoSided(0.95, each.degreesOfFreedom()));
    }

    @Test
    void slotWithFarTooMuchScatterStaysOutOfThePoolAndIsJudgedByItself() throws InputException {
        NoisyPlate plate = plate("{by: absorptivity}", "straight", "plain");
        Well well = Well.parse("C3").orElseThrow();
        Analysis found = plate.moved(well, 0.12);
        PlateBudget budget = PlateBudget.of(found);
        Repeatability scatter = budget.repeatabilities().get(0).orElseThrow();
        assertThat(scatter.outliers()).extracting(Repeatability.Slot::key).containsExactly("sample 2");
        ResultBudget second = budget.results().get(1).orElseThrow();
        assertThat(contribution(second, "repeatability").source().estimate()).isEqualTo(Estimate.OWN_SCATTER);
        assertThat(second.degreesOfFreedom()).isBetween(1.0, 1.1);
        ResultBudget third = budget.results().get(2).orElseThrow();
        assertThat(third.degreesOfFreedom()).isGreaterThan(3);
        assertThat(second.byBudget()).isGreaterThan(5 * third.byBudget());
        Simulation.Output drawn = PlateSimulation.run(budget, 20_000, 3).get(1).orElseThrow();
        assertThat((drawn.high() - drawn.low()) / 2)
                .isCloseTo(second.expandedUncertainty(), within(0.1 * second.expandedUncertainty()));
    }

    @Test
    void outlyingBlanksAreJudgedByThemselves() throws InputException {
        NoisyPlate plate = plate("{by: absorptivity}", "straight", "groups");
        Analysis found = plate.moved(Well.parse("A1").orElseThrow(), 0.2);
        PlateBudget budget = PlateBudget.of(found);
        assertThat(budget.repeatabilities().get(0).orElseThrow().outliers())
                .extracting(Repeatability.Slot::key)
                .containsExactly("blank ");
        ResultBudget control = budget.results().get(4).orElseThrow();
        assertThat(contribution(control, "blank").source().estimate()).isEqualTo(Estimate.OWN_SCATTER);
        assertThat(control.degreesOfFreedom()).isCloseTo(1, within(0.05));
    }

    @Test
    void withoutReplicatesThereIsNoBudget() throws InputException {
        Analysis found = NoisyPlate.of(
                        NoisyPlate.method("{by: standards, model: line}"),
                        """
                        tallywell: layout/1
                        name: once each
                        plate: 6
                        wells:
                          A: o a b
                          B: c 1 2
                        legend:
                          o: {role: blank}
                          a: {role: standard, level: 0.05 g/L}
                          b: {role: standard, level: 0.2 g/L}
                          c: {role: standard, level: 0.4 g/L}
                        """,
                        List.of(),
                        PlateBudgetTest::straight,
                        0.002,
                        0)
                .analyse();
        PlateBudget budget = PlateBudget.of(found);
        assertThat(budget.repeatabilities().get(0)).isEmpty();
        assertThat(budget.results()).allMatch(Optional::isEmpty);
        assertThat(PlateSimulation.run(budget, 1000, 1)).allMatch(Optional::isEmpty);
    }

    @Test
    void validationIsStatedWhereTheMethodSaysSo() throws InputException {
        PlateBudget budget = PlateBudget.of(plate(
                        "{by: standards, model: line}",
                        "straight",
                        "plain",
                        "uncertainty: {by: validation, validation: {precision: 3 %, bias: 4 %}}")
                .analyse());
        ResultBudget each = budget.results().get(0).orElseThrow();
        double value = each.result().value().orElseThrow();
        assertThat(each.byValidation().orElseThrow()).isCloseTo(0.05 * value, within(1e-15));
        assertThat(each.standardUncertainty()).isEqualTo(each.byValidation().orElseThrow());
        assertThat(each.coverageFactor()).isEqualTo(2);
        assertThat(each.expandedUncertainty()).isCloseTo(0.1 * value, within(1e-15));
        assertThat(each.byBudget()).isNotEqualTo(each.standardUncertainty());
    }

    @Test
    void dilutionCreepAndStandardCountAsStated() throws InputException {
        PlateBudget budget = PlateBudget.of(plate(
                        "{by: standards, model: line}",
                        "straight",
                        "volumes",
                        "uncertainty: {dilution: {standard: 0.4 %}, creep: {standard: 0.001}, standard: {expanded: 1 %}}")
                .analyse());
        ResultBudget each = budget.results().get(0).orElseThrow();
        double value = each.result().value().orElseThrow();
        assertThat(contribution(each, "dilution").effect()).isCloseTo(0.004 * value, within(1e-15));
        assertThat(contribution(each, "assigned value of the standard").effect())
                .isCloseTo(0.005 * value, within(1e-15));
        Calibration line = budget.analysis().steps().get(0).calibration().orElseThrow();
        // 2-fold dilution, 20 µL by the method over 25 µL of its own
        assertThat(contribution(each, "creep left").effect())
                .isCloseTo(0.001 * 2 * 0.8 / line.curve().slopeAt(0), within(1e-12));
        // The control is not diluted.
        assertThat(budget.results().get(4).orElseThrow().shares()).doesNotContainKey("dilution");
    }
}
