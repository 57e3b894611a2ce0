package tallywell.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.notice.InputException;
import tallywell.workup.Analysis;
import tallywell.workup.Plates;
import tallywell.workup.WellResult;

/** Plates on which no replicates differ: what the traces show is what there is. */
class TraceBudgetTest {
    private static final String METHOD = """
            tallywell: method/1
            id: by-hand
            signal: {absorptivity: 6300 L/mol/cm}
            steps:
              - analyte: {name: acid, molar-mass: 126 g/mol}
                volumes: {sample: 100 µL, before-trigger: 1 mL, after-trigger: 1 mL}
            light-path: {beam: fixed, length: 1 cm}
            creep: {correct: extrapolate}
            calibration: {by: %s}
            report: {unit: g/L}
            """;

    private static final int READINGS = 40;
    private static final double NOISE = 0.001;

    /** A series with the trigger at 100 s, a step of some size and a reaction over after a few readings. */
    private static double[][] traces(double... steps) {
        Random random = new Random(20260309);
        double[][] traces = new double[steps.length][READINGS];
        for (int well = 0; well < steps.length; well++) {
            for (int i = 0; i < READINGS; i++) {
                double t = 20 * i - 100;
                double change = t < 0 ? 0 : steps[well] * (1 - Math.exp(-t / 15)) + 1e-5 * t;
                traces[well][i] = 0.1 + change + NOISE * random.nextGaussian();
            }
        }
        return traces;
    }

    private static double[] times() {
        double[] times = new double[READINGS];
        for (int i = 0; i < READINGS; i++) {
            times[i] = 20 * i;
        }
        return times;
    }

    private static Analysis analysis(String calibration, String rowA, String rowB, String legend, double... steps)
            throws InputException {
        return Plates.small()
                .method(METHOD.formatted(calibration))
                .layout(rowA, rowB, legend)
                .series(false, List.of(100.0), times(), traces(steps))
                .analyse();
    }

    private static Analysis once() throws InputException {
        return analysis("absorptivity", "o 1 2", ". . .", "o: {role: blank}", 0.01, 0.5, 0.3);
    }

    private static double u(Analysis analysis, int well) {
        WellResult found = analysis.steps().get(0).wells().get(well);
        return found.trace().uDeltaA().orElseThrow();
    }

    @Test
    void noiseOfSampleAndBlankAddUp() throws InputException {
        Analysis found = once();
        PlateBudget budget = PlateBudget.of(found);
        assertThat(budget.repeatabilities().get(0)).isEmpty();
        assertThat(budget.restsOnTraces(1)).isTrue();
        // 1 unit of net ΔA is 1000/100 · 126 / 6300 = 0.2 g/L.
        ResultBudget first = budget.results().get(0).orElseThrow();
        assertThat(first.byBudget()).isCloseTo(0.2 * Math.hypot(u(found, 1), u(found, 0)), within(1e-12));
        assertThat(first.contributions()).allMatch(each -> each.source().estimate() == Estimate.TRACE);
        assertThat(first.shares()).containsOnlyKeys("noise of the trace", "blank");
        assertThat(first.degreesOfFreedom()).isInfinite();
        assertThat(first.coverageFactor()).isCloseTo(1.960, within(0.0005));
        ResultBudget second = budget.results().get(1).orElseThrow();
        assertThat(first.covariance(second)).isCloseTo(0.04 * u(found, 0) * u(found, 0), within(1e-15));
    }

    @Test
    void drawsAgree() throws InputException {
        PlateBudget budget = PlateBudget.of(once());
        SimulatedPlate drawn = SimulatedPlate.of(budget, 20_000, 5);
        // The standard error of a standard deviation of 20 000 draws is 0.5 %.
        assertThat(Math.abs(drawn.farthest(budget).orElseThrow().relative())).isLessThan(0.025);
    }

    @Test
    void singleStandardIsAsUncertainAsItsTrace() throws InputException {
        Analysis found = analysis(
                "single-standard",
                "o a 2",
                ". . .",
                "o: {role: blank}\na: {role: standard, level: 0.1 g/L}",
                0.01,
                0.5,
                0.3);
        ResultBudget each = PlateBudget.of(found).results().get(0).orElseThrow();
        // c = 0.1 · (s − o) / (a − o), by the derivative for each ΔA
        double a = net(found, 1);
        double s = net(found, 2);
        double square = Math.pow(0.1 / a * u(found, 2), 2)
                + Math.pow(0.1 * s / (a * a) * u(found, 1), 2)
                + Math.pow(0.1 * (s - a) / (a * a) * u(found, 0), 2);
        assertThat(each.byBudget()).isCloseTo(Math.sqrt(square), within(1e-9 * each.byBudget()));
    }

    private static double net(Analysis analysis, int well) {
        WellResult blank = analysis.steps().get(0).wells().get(0);
        return analysis.steps().get(0).wells().get(well).deltaA().orElseThrow()
                - blank.deltaA().orElseThrow();
    }

    @Test
    void replicatesThatDifferGoBeforeTracesButDoNotShowTheCourseThatTheyShare() throws InputException {
        Analysis found =
                analysis("absorptivity", "o 1 2", "o 1 2", "o: {role: blank}", 0.01, 0.5, 0.3, 0.012, 0.51, 0.29);
        PlateBudget budget = PlateBudget.of(found);
        assertThat(budget.restsOnTraces(1)).isFalse();
        ResultBudget first = budget.results().get(0).orElseThrow();
        assertThat(first.shares()).containsOnlyKeys("repeatability", "blank", "course of the trace");
        // Both wells are wrong alike: the mean of what each leaves open, and not less by √2.
        double course = 0.5 * (course(found, 1) + course(found, 4));
        assertThat(course).isGreaterThan(0);
        Contribution ofCourse = first.contributions().stream()
                .filter(each -> each.source().estimate() == Estimate.COURSE)
                .findFirst()
                .orElseThrow();
        assertThat(Math.abs(ofCourse.effect())).isCloseTo(0.2 * course, within(1e-12));
        assertThat(first.covariance(budget.results().get(1).orElseThrow()))
                .isLessThan(first.byBudget() * first.byBudget() - ofCourse.effect() * ofCourse.effect() + 1e-15);
        SimulatedPlate drawn = SimulatedPlate.of(budget, 20_000, 5);
        assertThat(Math.abs(drawn.farthest(budget).orElseThrow().relative())).isLessThan(0.025);
    }

    /**
     * Creep that dies away takes ΔA of both replicates up by as much. Their scatter knows nothing of it; the result has to.
     */
    @Test
    void creepThatDiesAwayIsInTheUncertaintyOfTheResult() throws InputException {
        double[][] traces = traces(0.01, 0.5, 0.3, 0.01, 0.5, 0.3);
        double[] times = times();
        for (double[] trace : traces) {
            for (int i = 5; i < READINGS; i++) {
                // Beside the steady creep one that is over in the end, 8 mA of it.
                trace[i] += 0.008 * -Math.expm1(-(times[i] - 100) / 250);
            }
        }
        Analysis found = Plates.small()
                .method(METHOD.formatted("absorptivity"))
                .layout("o 1 2", "o 1 2", "o: {role: blank}")
                .series(false, List.of(100.0), times, traces)
                .analyse();
        ResultBudget first = PlateBudget.of(found).results().get(0).orElseThrow();
        double withoutCourse = first.contributions().stream()
                .filter(each -> each.source().estimate() != Estimate.COURSE)
                .mapToDouble(each -> each.effect() * each.effect())
                .sum();
        assertThat(first.byBudget()).isGreaterThan(1.5 * Math.sqrt(withoutCourse));
    }

    private static double course(Analysis analysis, int well) {
        return analysis.steps().get(0).wells().get(well).trace().uCourse();
    }

    @ParameterizedTest
    @CsvSource({"o 1 2,0", ". 1 o,0"})
    void endPointsReadOnceLeaveUEmpty(String row, int result) throws InputException {
        Analysis found = Plates.small()
                .method(METHOD.formatted("absorptivity").replace("extrapolate", "none"))
                .layout(row, ". . .", "o: {role: blank}")
                .read(false, "0.100 0.100 0.100 0.100 0.100 0.100")
                .read(true, "0.110 0.600 0.401 0.112 0.606 0.399")
                .analyse();
        PlateBudget budget = PlateBudget.of(found);
        assertThat(budget.results().get(result)).isEmpty();
        assertThat(budget.restsOnTraces(1)).isFalse();
        assertThat(SimulatedPlate.of(budget, 1000, 1).farthest(budget)).isEmpty();
        assertThat(SimulatedPlate.of(budget, 1000, 1).outputs()).allMatch(Optional::isEmpty);
    }
}
