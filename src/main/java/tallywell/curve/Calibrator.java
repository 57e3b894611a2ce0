package tallywell.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import tallywell.numeric.LineThroughZero;
import tallywell.numeric.LogisticCurve;
import tallywell.numeric.Polynomial;
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
    /** A weight beyond this comes from a level that is 0 but for rounding; its sums would overflow. */
    private static final double MOST_WEIGHT = 1e100;

    private Calibrator() {}

    /**
     * Fits a curve to standards.
     *
     * @param level levels of the standard wells, n values, finite and at least 0
     * @param response their net ΔA, n finite values
     * @param model the formula
     * @param weigher how much each well counts
     * @throws StandardsException if the standards do not determine a rising curve
     */
    public static Calibration fit(double[] level, double[] response, Model model, Weigher weigher)
            throws StandardsException {
        check(level, response);
        checkLevels(level, response, model);
        double[] weight = weights(level, response, weigher);
        double lowest = Arrays.stream(level).min().orElseThrow();
        double highest = Arrays.stream(level).max().orElseThrow();
        // One level: the blank is the other end of what was measured, since the line is forced through it.
        double from = lowest < highest ? lowest : 0;
        Regression fit = regression(level, response, weight, model);
        Curve curve = curve(fit, model, from, highest);
        return new Calibration(curve, weigher, fit, standards(level, response, weight), from, highest);
    }

    static Regression regression(double[] level, double[] response, double[] weight, Model model)
            throws StandardsException {
        return switch (model) {
            case LINE -> StraightLine.fit(level, response, weight);
            case LINE_THROUGH_ZERO -> LineThroughZero.fit(level, response, weight);
            case QUADRATIC -> quadratic(level, response, weight);
            case LOGISTIC_4, LOGISTIC_5 ->
                LogisticCurve.fit(level, response, weight, model.parameters())
                        .orElseThrow(() -> new StandardsException(
                                List.of(),
                                "found net ΔA that does not determine the model " + model
                                        + "; expected standards from the foot of the curve up to where it flattens, or a"
                                        + " model with fewer parameters (line, quadratic)"));
        };
    }

    private static Regression quadratic(double[] level, double[] response, double[] weight) throws StandardsException {
        try {
            return Polynomial.fit(level, response, weight, 2);
        } catch (IllegalArgumentException dependent) {
            throw new StandardsException(
                    List.of(),
                    "found levels that lie too close together for the model quadratic; expected at least 3 clearly"
                            + " different levels");
        }
    }

    private static Curve curve(Regression fit, Model model, double lowest, double highest) throws StandardsException {
        double[] p = fit.parameters();
        switch (model) {
            case LINE -> {
                checkSlope(p[1]);
                return Line.of(p[0], p[1]);
            }
            case LINE_THROUGH_ZERO -> {
                checkSlope(p[0]);
                return Line.throughZero(p[0]);
            }
            case QUADRATIC -> {
                Quadratic curve = new Quadratic(p[0], p[1], p[2]);
                // The slope is a straight line, so it is positive throughout if it is so at both ends.
                if (!(curve.slopeAt(lowest) > 0 && curve.slopeAt(highest) > 0)) {
                    throw notRising("bends over between the standards");
                }
                return curve;
            }
            default -> {
                if (!(p[1] > 0 && p[3] > p[0])) {
                    throw notRising("falls");
                }
                return new Logistic(model, p[0], p[1], p[2], p[3], p.length == 5 ? p[4] : 1);
            }
        }
    }

    private static StandardsException notRising(String course) {
        return new StandardsException(
                List.of(),
                "found a curve that " + course + ", so that one net ΔA would stand for two levels or for none; expected"
                        + " net ΔA that rises with the level throughout: leave out the levels at which the signal"
                        + " saturates, or take another model");
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

    private static double[] weights(double[] level, double[] response, Weigher weigher) throws StandardsException {
        double[] mean = levelMeans(level, response);
        double[] weight = new double[level.length];
        for (int i = 0; i < weight.length; i++) {
            weight[i] = weigher.weight(level[i], mean[i]);
        }
        List<Integer> bad = IntStream.range(0, weight.length)
                .filter(i -> !(weight[i] > 0 && weight[i] < MOST_WEIGHT))
                .boxed()
                .toList();
        if (!bad.isEmpty()) {
            throw new StandardsException(
                    bad,
                    weigher instanceof FittedVariance
                            ? "found a mean net ΔA of 0 at a level, with weights variance-function of a scatter that has no"
                                    + " constant part; expected blanks in two wells or more, which show it, or weights none"
                            : weigher == Weighting.ONE_OVER_Y
                                    ? "found a mean net ΔA of 0 or less at a level, with weights 1/y; expected net ΔA above 0"
                                            + " at every level, or weights none"
                                    : "found a standard of level 0 with weights " + weigher.word()
                                            + "; expected levels above 0, or weights none");
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
