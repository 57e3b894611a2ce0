package tallywell.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.curve.Calibration;
import tallywell.curve.LackOfFit;
import tallywell.curve.Mandel;
import tallywell.curve.Model;
import tallywell.numeric.Significance;
import tallywell.numeric.VarianceRatio;
import tallywell.quantity.Numbers;
import tallywell.workup.StepAnalysis;

/** Whether the curve suits the standards; neither test ever changes the model. */
final class CurveObservations {
    private static final int DIGITS = 4;

    private final StepAnalysis step;
    private final String of;

    CurveObservations(StepAnalysis step, String of) {
        this.step = step;
        this.of = of;
    }

    List<Check> all() {
        List<Check> checks = new ArrayList<>();
        if (step.calibration().isEmpty()) {
            return checks;
        }
        Calibration calibration = step.calibration().get();
        if (calibration.curve().model() == Model.LINE) {
            checks.add(check(
                    "calibration is straight",
                    Mandel.test(calibration),
                    "fewer than four standards or three levels",
                    "Mandel's test after ISO 8466-1, 1 %"));
        }
        checks.add(check(
                "curve fits the means of the levels",
                LackOfFit.test(calibration),
                "no replicates, or no more levels than parameters",
                "lack of fit against pure error, 1 %"));
        return checks;
    }

    private Check check(String name, Optional<VarianceRatio> ratio, String why, String source) {
        if (ratio.isEmpty()) {
            return Observations.open(name + of, why, source);
        }
        return new Check(
                name + of,
                "F at most " + Numbers.rounded(ratio.get().critical(Significance.ONE_PERCENT), DIGITS),
                "F " + Numbers.rounded(ratio.get().statistic(), DIGITS),
                Observations.state(!ratio.get().beyond(Significance.ONE_PERCENT)),
                source);
    }
}
