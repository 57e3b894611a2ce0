package tallywell.desk;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import tallywell.curve.Calibration;
import tallywell.curve.InversePrediction;
import tallywell.curve.Model;
import tallywell.curve.ResponseVariance;
import tallywell.curve.Standard;
import tallywell.curve.Weighting;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * What is drawn of a calibration; levels in g/L, responses as net ΔA.
 *
 * @param standards level and response of each standard
 * @param curve level, response, and twice the standard uncertainty of the curve there (0 where nothing shows it)
 * @param residuals level and residual in mA
 * @param samples level and response of the wells of samples within the standards
 * @param selected those of them that are selected
 * @param formula the curve in words
 */
public record CalibrationLook(
        List<double[]> standards,
        List<double[]> curve,
        List<double[]> residuals,
        List<double[]> samples,
        List<double[]> selected,
        String formula) {
    private static final int STEPS = 80;
    private static final double COVERAGE = 2;
    private static final double MILLI = 1000;

    /** Keeps copies that cannot change. */
    public CalibrationLook {
        standards = List.copyOf(standards);
        curve = List.copyOf(curve);
        residuals = List.copyOf(residuals);
        samples = List.copyOf(samples);
        selected = List.copyOf(selected);
    }

    /** The calibration of a step, from 1; empty where the absorptivity serves. */
    public static Optional<CalibrationLook> of(Analysis analysis, int step, Collection<Well> selection, Shown shown) {
        StepAnalysis of = analysis.steps().get(step - 1);
        return of.calibration().map(calibration -> look(of, calibration, selection, shown));
    }

    private static CalibrationLook look(
            StepAnalysis step, Calibration calibration, Collection<Well> selection, Shown shown) {
        List<double[]> standards = new ArrayList<>();
        List<double[]> residuals = new ArrayList<>();
        for (Standard each : calibration.standards()) {
            standards.add(new double[] {each.level(), each.response()});
            residuals.add(new double[] {each.level(), MILLI * calibration.residual(each)});
        }
        List<double[]> samples = new ArrayList<>();
        List<double[]> selected = new ArrayList<>();
        for (WellResult well : step.wells()) {
            boolean shows = well.content() instanceof Content.Sample || well.content() instanceof Content.Control;
            if (shows && well.netDeltaA().isPresent() && well.concentration().isPresent()) {
                double net = well.netDeltaA().getAsDouble();
                double level = calibration
                        .curve()
                        .levelOf(net)
                        .orElse(well.concentration().getAsDouble());
                (selection.contains(well.well()) ? selected : samples).add(new double[] {level, net});
            }
        }
        return new CalibrationLook(
                standards, curve(calibration), residuals, samples, selected, formula(calibration, shown));
    }

    /** Between the standards only: nothing is extrapolated. */
    private static List<double[]> curve(Calibration calibration) {
        List<double[]> curve = new ArrayList<>();
        double low = calibration.lowest();
        double span = calibration.highest() - low;
        for (int i = 0; i <= STEPS; i++) {
            double level = low + span * i / STEPS;
            curve.add(new double[] {level, calibration.curve().at(level), band(calibration, level)});
        }
        return curve;
    }

    private static double band(Calibration calibration, double level) {
        double sd = calibration.residualSd().orElse(0);
        double response = calibration.curve().at(level);
        InversePrediction prediction =
                new InversePrediction(calibration, response, new ResponseVariance(sd * sd, 0, 0, 0));
        return COVERAGE * prediction.curveUncertainty() * calibration.curve().slopeAt(prediction.level());
    }

    private static String formula(Calibration calibration, Shown shown) {
        List<String> parts = new ArrayList<>();
        String names = "abcdg";
        int offset = calibration.curve().model() == Model.LINE_THROUGH_ZERO ? 1 : 0;
        for (int i = 0; i < calibration.curve().size(); i++) {
            parts.add(names.charAt(i + offset) + " = "
                    + shown.rounded(calibration.curve().coefficient(i), 5));
        }
        String scatter = calibration.residualSd().isPresent()
                ? " · scatter " + shown.fixed(MILLI * calibration.sdAtLowEnd(), 1) + " mA"
                        + (calibration.weighting() == Weighting.NONE ? "" : " at the low end")
                : "";
        return equation(calibration.curve().model()) + ", " + String.join(", ", parts) + scatter;
    }

    /** The formula of a curve, as {@link Model} has it. */
    static String equation(Model model) {
        return "net ΔA = "
                + switch (model) {
                    case LINE -> "a + b · level";
                    case LINE_THROUGH_ZERO -> "b · level";
                    case QUADRATIC -> "a + b · level + c · level²";
                    case LOGISTIC_4 -> "d + (a − d) / (1 + (level / c)^b)";
                    case LOGISTIC_5 -> "d + (a − d) / (1 + (level / c)^b)^g";
                };
    }
}
