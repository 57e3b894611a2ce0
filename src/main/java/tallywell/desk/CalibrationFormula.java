package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import tallywell.curve.Calibration;
import tallywell.curve.Model;
import tallywell.curve.Weighting;

/** The formula of a calibration in words. */
public final class CalibrationFormula {
    private static final double MILLI = 1000;

    private CalibrationFormula() {}

    /** The formula with its coefficients and the scatter of the standards, with the decimal mark of the user. */
    public static String of(Calibration calibration, Shown shown) {
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
