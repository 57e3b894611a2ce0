package tallywell.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tallywell.Published;
import tallywell.method.Sample;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.quantity.Unit;
import tallywell.workup.Analysis;
import tallywell.workup.DifferenceResult;
import tallywell.workup.Flag;
import tallywell.workup.Half;
import tallywell.workup.PlateOfHalves;

/** Halves of differences below the lowest standard of 0.05 g/L, and how sure they are. */
class HalfBudgetTest {
    private static final String LINE = "{by: standards, model: line, weights: none}";

    private static double level(Content.Standard standard) {
        return standard.level().of("D-glucose").orElseThrow().in(Unit.GRAM_PER_LITRE);
    }

    /** Value and the uncertainty from intercept and slope are those of R's lm and vcov. */
    @Test
    void lineBelowTheLowestStandardIsThatOfR() throws InputException {
        Published r = Published.read("difference_by_r");
        Map<Double, List<Double>> responses = new HashMap<>();
        for (String pair : r.source()
                .replaceFirst("(?s).*# ?standards |(?s).*each standards ", "")
                .split(" intercept")[0]
                .split(" ")) {
            String[] parts = pair.split(":");
            responses
                    .computeIfAbsent(Double.valueOf(parts[0]), key -> new ArrayList<>())
                    .add(Double.valueOf(parts[1]));
        }
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < r.size(); i++) {
            samples.addAll(PlateOfHalves.pair(
                    i + 1, "case " + (i + 1), r.number(i, "dilution_free"), r.number(i, "dilution_total")));
        }
        Map<Double, Integer> next = new HashMap<>();
        Analysis analysis = PlateOfHalves.of(PlateOfHalves.sucrose(LINE), samples, (well, content) -> {
            if (content instanceof Content.Standard standard) {
                int at = next.merge(level(standard), 1, Integer::sum) - 1;
                return 0.009 + responses.get(level(standard)).get(at);
            }
            if (content instanceof Content.Sample sample) {
                int row = (sample.slot() - 1) % PlateOfHalves.SAMPLES;
                String column = sample.slot() > PlateOfHalves.SAMPLES ? "total" : "free";
                // The mean of two wells; they differ, so that there is a scatter.
                double apart = well.row() < 4 ? 0.0008 : -0.0008;
                return 0.009 + apart + (row < r.size() ? r.number(row, column) : 0);
            }
            return 0.009;
        });
        PlateBudget budget = PlateBudget.of(analysis);
        assertThat(analysis.differences()).hasSize(r.size());
        for (int i = 0; i < r.size(); i++) {
            DifferenceResult difference = analysis.differences().get(i);
            assertThat(difference.value().orElseThrow())
                    .isCloseTo(r.number(i, "value"), within(1e-5 * Math.max(1, r.number(i, "value"))));
            ResultBudget total = budget.of(difference.whole()).orElseThrow();
            ResultBudget free = budget.of(difference.unbound()).orElseThrow();
            double curve = Combination.of(
                            difference.factor(),
                            total,
                            difference.factor(),
                            free,
                            source -> source.label().equals("calibration"))
                    .standardUncertainty();
            assertThat(curve)
                    .as("case " + (i + 1))
                    .isCloseTo(r.number(i, "sd_curve"), within(1e-5 * r.number(i, "sd_curve") + 1e-9));
            assertThat(difference.unbound().reported().value().isPresent())
                    .as("nothing is extrapolated in what is reported")
                    .isEqualTo(!difference.free().flags().contains(Flag.BELOW_STANDARDS));
        }
    }

    private static double normal(SplittableRandom random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }

    /** How many of 100 values ± U of free halves at these levels hold the truth. */
    private static double covered(String calibration, DoubleUnaryOperator response, double... free)
            throws InputException {
        SplittableRandom random = new SplittableRandom(7);
        int all = 0;
        int inside = 0;
        for (int plate = 0; plate < 80; plate++) {
            List<Sample> samples = new ArrayList<>();
            for (int i = 1; i <= PlateOfHalves.SAMPLES; i++) {
                samples.addAll(PlateOfHalves.pair(i, "drink " + i, 1, 100));
            }
            Analysis analysis = PlateOfHalves.of(PlateOfHalves.sucrose(calibration), samples, (well, content) -> {
                double glucose = 0.25;
                if (content instanceof Content.Standard standard) {
                    glucose = level(standard);
                } else if (content instanceof Content.Blank) {
                    glucose = 0;
                } else if (content instanceof Content.Sample sample) {
                    int row = sample.slot() - 1;
                    glucose = row < PlateOfHalves.SAMPLES ? free[row % free.length] : 0.25;
                }
                return 0.009 + response.applyAsDouble(glucose) + 0.0015 * normal(random);
            });
            PlateBudget budget = PlateBudget.of(analysis);
            for (DifferenceResult each : analysis.differences()) {
                Half half = each.unbound();
                double truth = free[(half.reported().slot().orElseThrow() - 1) % free.length];
                double expanded = budget.of(half).orElseThrow().expandedUncertainty();
                all++;
                inside += Math.abs(half.counted().value().orElseThrow() - truth) <= expanded ? 1 : 0;
            }
        }
        return 100.0 * inside / all;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "{by: standards, model: line, weights: none}",
                "{by: standards, model: line-through-zero, weights: none}",
                "{by: standards, model: quadratic, weights: none}"
            })
    void trueCurveFollowedToTheBlankCoversTheTruth(String calibration) throws InputException {
        assertThat(covered(calibration, x -> 2.1 * x, 0, 0.005, 0.02, 0.04)).isBetween(94.0, 99.0);
    }

    /** A line through standards that bend by a tenth up to the top: at the blank it is off by a tenth of the lowest standard. */
    @Test
    void lineThatMissesTheBlankIsNoSurerThanItIsWrong() throws InputException {
        assertThat(covered(LINE, x -> 2.1 * x * (1 - 0.25 * x), 0, 0.005, 0.02, 0.04))
                .isGreaterThan(92);
    }

    /** A logistic has no level below its foot: the middle of the interval down to nothing, and all of the interval in U. */
    @Test
    void logisticCarriesAnInterval() throws InputException {
        assertThat(covered("{by: standards, model: logistic-4, weights: none}", x -> 2.1 * x / (1 + x), 0, 0.01, 0.03))
                .isGreaterThan(95);
    }
}
