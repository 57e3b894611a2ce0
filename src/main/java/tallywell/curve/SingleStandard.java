package tallywell.curve;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import tallywell.numeric.LineThroughZero;
import tallywell.quantity.Numbers;

/**
 * Makes a calibration from wells of one standard: the line from zero through their mean.
 *
 * <p>Its range goes from 0, where the blank stands, to the level of the standard.
 */
public final class SingleStandard {
    private SingleStandard() {}

    /**
     * Draws the line.
     *
     * @param level levels of the standard wells, n values, all the same and above 0
     * @param response their net ΔA, n finite values
     * @throws StandardsException if there is no well, the levels differ, or the mean response is not above 0
     */
    public static Calibration fit(double[] level, double[] response) throws StandardsException {
        Calibrator.check(level, response);
        if (level.length == 0) {
            throw new StandardsException(List.of(), "found no standard to calibrate with; expected at least one well");
        }
        List<Integer> all = IntStream.range(0, level.length).boxed().toList();
        if (Arrays.stream(level).distinct().count() > 1) {
            throw new StandardsException(
                    all, "found standards of several levels; a calibration by single standard has one level");
        }
        if (!(level[0] > 0)) {
            throw new StandardsException(all, "found a standard of level 0; expected a level above 0");
        }
        double[] weight = new double[level.length];
        Arrays.fill(weight, 1);
        var fit = LineThroughZero.fit(level, response, weight);
        double slope = fit.parameter(0);
        if (!(slope > 0)) {
            throw new StandardsException(
                    all,
                    "found a mean net ΔA of " + Numbers.rounded(slope * level[0], 4)
                            + " for the standard; expected one above 0: check that the standard stands in the right"
                            + " wells and that the direction of the signal is right");
        }
        return new Calibration(
                Line.throughZero(slope),
                Weighting.NONE,
                fit,
                Calibrator.standards(level, response, weight),
                0,
                level[0]);
    }
}
