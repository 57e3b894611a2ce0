package tallywell.paper;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.curve.Curve;
import tallywell.curve.FittedVariance;
import tallywell.curve.Line;
import tallywell.curve.Standard;
import tallywell.curve.Weigher;
import tallywell.method.AssayMethod;
import tallywell.plan.WorkingRange;
import tallywell.quantity.Numbers;
import tallywell.workup.BlankMean;
import tallywell.workup.Flag;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** The calibration of a step in sentences. */
final class CalibrationWords {
    private static final int DIGITS = 4;
    private static final double PER_MILLI = 1000;

    private CalibrationWords() {}

    /** How net ΔA becomes a concentration. */
    static String of(AssayMethod method, StepAnalysis step) {
        return (step.calibration().isPresent() ? curve(step, step.calibration().get()) : constants(method, step))
                + blanks(step)
                + beyond(step);
    }

    private static String curve(StepAnalysis step, Calibration calibration) {
        Curve curve = calibration.curve();
        String formula = curve instanceof Line line
                ? "straight line, net ΔA = " + (line.intercept() == 0 ? "" : brief(line.intercept()) + " + ")
                        + brief(line.slope()) + " · c"
                : "curve " + curve.model().word() + coefficients(curve);
        OptionalDouble sd = calibration.residualSd();
        return capital(formula) + ", c in g/L of the solution pipetted, from "
                + step.calibration().orElseThrow().standards().size() + " standard wells of " + levels(calibration)
                + " levels between " + brief(calibration.lowest()) + " and " + brief(calibration.highest())
                + " g/L; weights " + weights(calibration.weighting())
                + (sd.isPresent()
                        ? ". Residual standard deviation " + brief(PER_MILLI * sd.getAsDouble()) + " mA for weight 1."
                        : ".");
    }

    private static String weights(Weigher weigher) {
        return weigher instanceof FittedVariance fitted
                ? fitted.word() + ", 1 / (" + brief(fitted.ofConstant()) + " + " + brief(fitted.ofProportional())
                        + " · (net ΔA)²) from the replicates of the plate"
                : weigher.word();
    }

    private static long levels(Calibration calibration) {
        return calibration.standards().stream()
                .mapToDouble(Standard::level)
                .distinct()
                .count();
    }

    private static String coefficients(Curve curve) {
        StringBuilder text = new StringBuilder(" with coefficients");
        for (int i = 0; i < curve.size(); i++) {
            text.append(i == 0 ? " " : ", ").append(brief(curve.coefficient(i)));
        }
        return text.toString();
    }

    private static String constants(AssayMethod method, StepAnalysis step) {
        OptionalDouble factor =
                WorkingRange.of(method, step.step(), Optional.empty()).factor();
        return "No standards: the absorptivity makes the result"
                + (factor.isPresent()
                        ? ", " + brief(factor.getAsDouble())
                                + " g/L of the solution pipetted for a net ΔA of 1 (V · M / (ε · d · v · s))."
                        : ".");
    }

    private static String blanks(StepAnalysis step) {
        StringBuilder text = new StringBuilder();
        for (Map.Entry<String, BlankMean> each : step.blanks().entrySet()) {
            text.append(" Blanks")
                    .append(each.getKey().isEmpty() ? "" : " of group " + each.getKey())
                    .append(": mean ΔA ")
                    .append(Numbers.fixed(each.getValue().mean(), 4))
                    .append('.');
        }
        return text.toString();
    }

    private static String beyond(StepAnalysis step) {
        long above = wells(step, Flag.ABOVE_STANDARDS);
        long below = wells(step, Flag.BELOW_STANDARDS);
        return (above > 0 ? " Not shown: " + wells(above) + " above the highest standard." : "")
                + (below > 0 ? " Not shown: " + wells(below) + " below the lowest standard." : "");
    }

    private static String wells(long count) {
        return count + (count == 1 ? " well" : " wells");
    }

    private static long wells(StepAnalysis step, Flag flag) {
        return step.wells().stream()
                .filter(WellResult::used)
                .filter(well -> !well.content().role().equals("standard")
                        && !well.content().role().equals("blank"))
                .filter(well -> well.flags().contains(flag))
                .count();
    }

    /** What the drawing shows, for who cannot see it. */
    static String drawing(StepAnalysis step) {
        Calibration calibration = step.calibration().orElseThrow();
        double most = calibration.standards().stream()
                .mapToDouble(each -> Math.abs(PER_MILLI * calibration.residual(each)))
                .max()
                .orElse(0);
        return "Net ΔA over the level of the standards of "
                + step.step().analyte().name()
                + " with the curve through them and the wells of samples on it; below, the residuals of the standards,"
                + " none larger than " + brief(most) + " mA.";
    }

    private static String brief(double value) {
        return Numbers.brief(value, DIGITS);
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
