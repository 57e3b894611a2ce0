package tallywell.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tallywell.budget.NoisyPlate;
import tallywell.budget.PlateBudget;
import tallywell.budget.ResultBudget;
import tallywell.curve.Calibration;
import tallywell.curve.Calibrator;
import tallywell.curve.FittedVariance;
import tallywell.curve.Inverse;
import tallywell.curve.InversePrediction;
import tallywell.curve.LevelInterval;
import tallywell.curve.Model;
import tallywell.curve.ResponseVariance;
import tallywell.curve.StandardsException;
import tallywell.curve.Weigher;
import tallywell.curve.Weighting;
import tallywell.notice.InputException;
import tallywell.numeric.StudentT;
import tallywell.numeric.VarianceFunction;

/**
 * How often 95 % intervals hold the truth: for single curves with standards and samples in duplicate over a common
 * blank, and for budgets of whole plates. The figures stand in docs/uncertainty.md.
 */
public final class IntervalCoverage {
    private static final int CURVES = 4000;
    private static final int PLATES = 1000;
    private static final double[] LEVELS = {0.025, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4};
    private static final double[] SAMPLES = {0.05, 0.12, 0.22, 0.33};
    private static final int BLANKS = 8;
    private static final int AMOUNTS = 5;

    /** Seeds in a row give draws that are alike. */
    private static final long SPREAD = 0x9E3779B97F4A7C15L;

    private static final String EIGHT = """
            tallywell: layout/1
            name: eight samples
            plate: 48
            wells:
              A: o o o o a b c d
              B: e a b c d e 1 1
              C: 2 2 3 3 4 4 5 5
              D: 6 6 7 7 8 8 . .
              E: . . . . . . . .
              F: . . . . . . . .
            legend:
              o: {role: blank}
              a: {role: standard, level: 0.05 g/L}
              b: {role: standard, level: 0.1 g/L}
              c: {role: standard, level: 0.2 g/L}
              d: {role: standard, level: 0.3 g/L}
              e: {role: standard, level: 0.4 g/L}
            """;

    private IntervalCoverage() {}

    /** Runs and prints. */
    public static void main(String[] arguments) throws IOException, InputException {
        DoubleUnaryOperator straight = c -> 2.5 * c;
        DoubleUnaryOperator bending = c -> 3.2 * c - 2.4 * c * c;
        DoubleUnaryOperator logistic = c -> 1.5 - 1.5 / (1 + Math.pow(c / 0.18, 1.4));
        print("curve, scatter, weights: delta / interval (samples at 0.05 0.12 0.22 0.33 g/L)");
        curve("line, constant", Model.LINE, Weighting.NONE, straight, 0.004, 0);
        curve("line, proportional", Model.LINE, Weighting.ONE_OVER_X2, straight, 0, 0.02);
        curve("through zero, constant", Model.LINE_THROUGH_ZERO, Weighting.NONE, straight, 0.004, 0);
        curve("quadratic, constant", Model.QUADRATIC, Weighting.NONE, bending, 0.004, 0);
        curve("quadratic, proportional", Model.QUADRATIC, Weighting.ONE_OVER_X2, bending, 0, 0.02);
        curve("logistic-4, constant", Model.LOGISTIC_4, Weighting.NONE, logistic, 0.004, 0);
        curve("logistic-4, growing like √y", Model.LOGISTIC_4, Weighting.ONE_OVER_Y, logistic, 0, 0);
        curve("logistic-4, proportional", Model.LOGISTIC_4, Weighting.ONE_OVER_X2, logistic, 0, 0.02);
        FittedVariance growing = new FittedVariance(
                VarianceFunction.fit(new double[] {0.5, 1}, new double[] {1e-4, 4e-4}, new double[] {50, 50}), 1);
        curve("line, proportional", Model.LINE, growing, straight, 0, 0.02);
        curve("quadratic, proportional", Model.QUADRATIC, growing, bending, 0, 0.02);
        curve("logistic-4, proportional", Model.LOGISTIC_4, growing, logistic, 0, 0.02);
        print("whole plates: value ± U, by amount in g/L");
        plates("line, constant", "{by: standards, model: line}", straight, 0.004, 0);
        plates("line, proportional, 1/x2", "{by: standards, model: line, weights: 1/x2}", straight, 0.0005, 0.02);
        plates("line, both, unweighted", "{by: standards, model: line}", straight, 0.002, 0.01);
        String fitted = "{by: standards, model: line, weights: variance-function}";
        plates("line, both, variance-function", fitted, straight, 0.002, 0.01);
        plates("line, constant, variance-function", fitted, straight, 0.004, 0);
        plates("line, proportional, variance-function", fitted, straight, 0.0005, 0.02);
        few("line, both, unweighted", "{by: standards, model: line}", straight, 0.002, 0.01);
        few("line, both, variance-function", fitted, straight, 0.002, 0.01);
        few("line, constant, variance-function", fitted, straight, 0.004, 0);
        few("line, constant, unweighted", "{by: standards, model: line}", straight, 0.004, 0);
        plates("through zero", "{by: standards, model: line-through-zero}", straight, 0.004, 0);
        plates("quadratic", "{by: standards, model: quadratic}", bending, 0.004, 0);
        plates("quadratic, both, unweighted", "{by: standards, model: quadratic}", bending, 0.002, 0.01);
        plates(
                "quadratic, both, variance-function",
                "{by: standards, model: quadratic, weights: variance-function}",
                bending,
                0.002,
                0.01);
        plates("logistic-4", "{by: standards, model: logistic-4}", logistic, 0.004, 0);
    }


    private static void curve(
            String name, Model model, Weigher weighting, DoubleUnaryOperator truth, double s0, double s1) {
        int[][] held = new int[SAMPLES.length][2];
        int[] counted = new int[SAMPLES.length];
        Random random = new Random(20250411);
        for (int i = 0; i < CURVES; i++) {
            trial(model, weighting, truth, s0, s1, random, held, counted);
        }
        StringBuilder line = new StringBuilder(name).append(", ").append(weighting.word()).append(':');
        for (int k = 0; k < SAMPLES.length; k++) {
            line.append(String.format(
                    Locale.ROOT, "  %.1f / %.1f", 100.0 * held[k][0] / counted[k], 100.0 * held[k][1] / counted[k]));
        }
        line.append(String.format(Locale.ROOT, "  (lost %d)", SAMPLES.length * CURVES - IntStream.of(counted).sum()));
        print(line.toString());
    }

    private static void trial(
            Model model,
            Weigher weighting,
            DoubleUnaryOperator truth,
            double s0,
            double s1,
            Random random,
            int[][] held,
            int[] counted) {
        double blankSd = s0 > 0 ? s0 : 0.002;
        double blank = blankSd / Math.sqrt(BLANKS) * random.nextGaussian();
        double[] level = new double[2 * LEVELS.length];
        double[] response = new double[level.length];
        for (int j = 0; j < level.length; j++) {
            level[j] = LEVELS[j / 2];
            response[j] = draw(truth.applyAsDouble(level[j]), weighting, s0, s1, random) - blank;
        }
        Calibration made;
        try {
            made = Calibrator.fit(level, response, model, weighting);
        } catch (StandardsException lost) {
            return;
        }
        for (int k = 0; k < SAMPLES.length; k++) {
            double y = truth.applyAsDouble(SAMPLES[k]);
            double mean = (draw(y, weighting, s0, s1, random) + draw(y, weighting, s0, s1, random)) / 2 - blank;
            if (made.invert(mean) instanceof Inverse.Within within) {
                ResponseVariance plain = ResponseVariance.residual(made, within.level(), 2);
                ResponseVariance all =
                        new ResponseVariance(plain.unit(), plain.own(), blankSd * blankSd / BLANKS, 0);
                InversePrediction found = new InversePrediction(made, mean, all);
                double t = StudentT.twoSided(0.95, made.fit().degreesOfFreedom());
                LevelInterval interval = found.interval(t);
                counted[k]++;
                held[k][0] += Math.abs(found.level() - SAMPLES[k]) <= t * found.standardUncertainty() ? 1 : 0;
                held[k][1] += interval.contains(SAMPLES[k]) ? 1 : 0;
            }
        }
    }

    private static double draw(double y, Weigher weighting, double s0, double s1, Random random) {
        double sd = weighting == Weighting.ONE_OVER_Y ? 0.006 * Math.sqrt(y) : Math.hypot(s0, s1 * y);
        return y + sd * random.nextGaussian();
    }

    private static void plates(String name, String calibration, DoubleUnaryOperator truth, double s0, double s1)
            throws IOException, InputException {
        String layout = Files.readString(Path.of("plate-layouts/thirty-six-in-duplicate.yaml"))
                .lines()
                .filter(line -> !line.startsWith("#"))
                .collect(Collectors.joining("\n"));
        plates("36 samples, " + name, layout, calibration, truth, s0, s1);
    }

    private static void few(String name, String calibration, DoubleUnaryOperator truth, double s0, double s1)
            throws InputException {
        plates("8 samples, " + name, EIGHT, calibration, truth, s0, s1);
    }

    /** Coverage over all results, and at each of the five amounts. */
    private static void plates(
            String name, String layout, String calibration, DoubleUnaryOperator truth, double s0, double s1)
            throws InputException {
        NoisyPlate plate = NoisyPlate.of(NoisyPlate.method(calibration), layout, List.of(), truth, s0, s1);
        int[] held = new int[AMOUNTS];
        int[] counted = new int[AMOUNTS];
        for (int i = 0; i < PLATES; i++) {
            PlateBudget budget = PlateBudget.of(plate.redrawn(truth, s0, s1, i * SPREAD).analyse());
            for (ResultBudget result :
                    budget.results().stream().flatMap(Optional::stream).toList()) {
                int slot = result.result().slot().orElseThrow();
                double off = Math.abs(result.result().value().orElseThrow() - NoisyPlate.amount(slot));
                counted[(slot - 1) % AMOUNTS]++;
                held[(slot - 1) % AMOUNTS] += off <= result.expandedUncertainty() ? 1 : 0;
            }
        }
        StringBuilder line = new StringBuilder(name).append(":");
        for (int k = 0; k < AMOUNTS; k++) {
            line.append(String.format(Locale.ROOT, "  %.2f: %.1f", NoisyPlate.amount(k + 1), 100.0 * held[k] / counted[k]));
        }
        print(line.append(String.format(
                        Locale.ROOT,
                        "  all: %.1f (%d results)",
                        100.0 * IntStream.of(held).sum() / IntStream.of(counted).sum(),
                        IntStream.of(counted).sum()))
                .toString());
    }

    private static void print(String line) {
        System.out.println(line);
    }
}
