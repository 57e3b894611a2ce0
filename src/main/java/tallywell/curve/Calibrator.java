package tallywell.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import tallywell.numeric.LineThroughZero;
import tallywell.numeric.Regression;
import tallywell.numeric.StraightLine;
import tallywell.quantity.Numbers;

/**
 * Makes a calibration from standard wells.
 *
 * <p>The response is oriented so that it rises with the level whatever the absorbance does. Standards from which no
 * rising curve can be made are refused with a message for the user; a calibration that is returned holds no NaN.
 */
public final class Calibrator {
    /** Below this, 1 over its square is no finite number any more. */
    private static final double LEAST_SCALE = 1e-150;

    private Calibrator() {}

    /**
     * Fits a curve to standards.
     *
     * @param level levels of the standard wells, n values, finite and at least 0
     * @param response their net ΔA, n finite values
     * @param model the formula
     * @param weighting how much each well counts
     * @throws StandardsException if the standards do not determine a rising curve
     */
    public static Calibration fit(double[] level, double[] response, Model model, Weighting weighting)
            throws StandardsException {
        check(level, response);
        checkLevels(level, response, model);
        double[] weight = weights(level, response, weighting);
        return switch (model) {
            case LINE -> line(level, response, weight, weighting);
            case LINE_THROUGH_ZERO -> lineThroughZero(level, response, weight, weighting);
            default -> throw new StandardsException(List.of(), "found the model " + model + "; expected line");
        };
    }

    private static Calibration line(double[] level, double[] response, double[] weight, Weighting weighting)
            throws StandardsException {
        Regression fit = StraightLine.fit(level, response, weight);
        checkSlope(fit.parameter(1));
        Line line = Line.of(fit.parameter(0), fit.parameter(1));
        return calibration(line, weighting, fit, level, response, weight);
    }

    private static Calibration lineThroughZero(double[] level, double[] response, double[] weight, Weighting weighting)
            throws StandardsException {
        Regression fit = LineThroughZero.fit(level, response, weight);
        checkSlope(fit.parameter(0));
        Line line = Line.throughZero(fit.parameter(0));
        double lowest = Arrays.stream(level).min().orElseThrow();
        double highest = Arrays.stream(level).max().orElseThrow();
        // One level: the blank is the other end of what was measured, since the line is forced through it.
        return new Calibration(
                line, weighting, fit, standards(level, response, weight), lowest < highest ? lowest : 0, highest);
    }

    private static Calibration calibration(
            Curve curve, Weighting weighting, Regression fit, double[] level, double[] response, double[] weight) {
        double lowest = Arrays.stream(level).min().orElseThrow();
        double highest = Arrays.stream(level).max().orElseThrow();
        return new Calibration(curve, weighting, fit, standards(level, response, weight), lowest, highest);
    }

    static List<Standard> standards(double[] level, double[] response, double[] weight) {
        List<Standard> standards = new ArrayList<>(level.length);
        for (int i = 0; i < level.length; i++) {
            standards.add(new Standard(level[i], response[i], weight[i]));
        }
        return standards;
    }

    static void check(double[] level, double[] response) {
        if (level.length != response.length) {
            throw new IllegalArgumentException(
                    "response must have length " + level.length + " but was " + response.length);
        }
        for (int i = 0; i < level.length; i++) {
            if (!(level[i] >= 0 && level[i] <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException("level[" + i + "] must be at least 0 but was " + level[i]);
            }
            if (!(Math.abs(response[i]) <= Double.MAX_VALUE)) {
                throw new IllegalArgumentException("response[" + i + "] must be finite but was " + response[i]);
            }
        }
    }

    private static void checkLevels(double[] level, double[] response, Model model) throws StandardsException {
        if (level.length == 0) {
            throw new StandardsException(
                    List.of(), "found no standard to calibrate with; expected " + levels(model.leastLevels()));
        }
        List<Integer> all = all(level);
        long distinct = Arrays.stream(level).distinct().count();
        if (model == Model.LINE_THROUGH_ZERO) {
            if (distinct == 1 && level[0] == 0) {
                throw new StandardsException(
                        all, "found standards of level 0 only; expected at least one level above 0");
            }
        } else if (distinct < model.leastLevels()) {
            throw new StandardsException(
                    all,
                    "found standards of " + (distinct == 1 ? "one level" : distinct + " levels") + " only; the model "
                            + model + " needs " + levels(model.leastLevels()));
        }
        if (distinct > 1 && Arrays.stream(response).distinct().count() == 1) {
            throw new StandardsException(
                    all, "found the same net ΔA at every level; expected net ΔA that rises with the level");
        }
    }

    private static String levels(int least) {
        return least == 1 ? "at least one level above 0" : "at least " + least + " different levels";
    }

    private static void checkSlope(double slope) throws StandardsException {
        if (!(slope > 0)) {
            throw new StandardsException(
                    List.of(),
                    "found net ΔA that does not rise with the level (slope "
                            + Numbers.rounded(slope, 4)
                            + "); expected a rising line: check that the levels stand in the right wells and that the"
                            + " direction of the signal is right");
        }
    }

    private static double[] weights(double[] level, double[] response, Weighting weighting) throws StandardsException {
        double[] weight = new double[level.length];
        if (weighting == Weighting.NONE) {
            Arrays.fill(weight, 1);
            return weight;
        }
        double[] scale = weighting == Weighting.ONE_OVER_Y ? levelMeans(level, response) : level;
        List<Integer> bad = IntStream.range(0, scale.length)
                .filter(i -> !(scale[i] > LEAST_SCALE))
                .boxed()
                .toList();
        if (!bad.isEmpty()) {
            throw new StandardsException(
                    bad,
                    weighting == Weighting.ONE_OVER_Y
                            ? "found a mean net ΔA of 0 or less at a level, with weights 1/y; expected net ΔA above 0"
                                    + " at every level, or weights none"
                            : "found a standard of level 0 with weights " + weighting
                                    + "; expected levels above 0, or weights none");
        }
        for (int i = 0; i < weight.length; i++) {
            weight[i] = weighting == Weighting.ONE_OVER_X2 ? 1 / (scale[i] * scale[i]) : 1 / scale[i];
        }
        return weight;
    }

    private static double[] levelMeans(double[] level, double[] response) {
        return Arrays.stream(level)
                .map(each -> IntStream.range(0, level.length)
                        .filter(i -> level[i] == each)
                        .mapToDouble(i -> response[i])
                        .average()
                        .orElseThrow())
                .toArray();
    }

    private static List<Integer> all(double[] level) {
        return IntStream.range(0, level.length).boxed().toList();
    }
}
