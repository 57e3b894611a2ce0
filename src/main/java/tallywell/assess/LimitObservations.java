package tallywell.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.budget.PlateBudget;
import tallywell.curve.Calibration;
import tallywell.curve.DetectionLimits;
import tallywell.curve.DetectionRule;
import tallywell.curve.Model;
import tallywell.quantity.Numbers;
import tallywell.workup.BlankMean;
import tallywell.workup.Result;
import tallywell.workup.Scale;
import tallywell.workup.StepAnalysis;

/** Limits of detection and quantification by every rule that the plate allows, each with its name. */
final class LimitObservations {
    private static final int DIGITS = 3;

    private final PlateBudget budget;
    private final StepAnalysis step;
    private final String of;
    private final Scale scale;

    LimitObservations(PlateBudget budget, StepAnalysis step, String of) {
        this.budget = budget;
        this.step = step;
        this.of = of;
        this.scale = new Scale(budget.analysis().assay().method(), step);
    }

    List<Check> all() {
        List<Check> checks = new ArrayList<>();
        double slope = slope();
        Optional<Result> sample = budget.analysis().results().stream()
                .filter(each -> each.step() == step.number() && each.role().equals("sample") && each.n() > 0)
                .findFirst();
        if (sample.isPresent() && slope > 0 && slope <= Double.MAX_VALUE) {
            Result first = sample.get();
            Detection.of(step, budget.repeatabilities().get(step.number() - 1), first)
                    .ifPresent(found -> {
                        checks.add(check(
                                DetectionRule.BLANKS,
                                OptionalDouble.of(found.decision() / slope),
                                2 * found.decision() / slope,
                                found.quantification() / slope,
                                forWells(first.n())
                                        + (Detection.sampleBlanks(step, first) > 0 ? " with sample blanks" : "")));
                    });
            for (BlankMean blank : step.blanks().values()) {
                if (blank.sd().orElse(0) > 0) {
                    checks.add(check(DetectionLimits.fromBlankMean(blank.sd().orElseThrow(), slope)));
                }
            }
        }
        step.calibration().ifPresent(calibration -> line(calibration, sample.map(Result::n), checks));
        if (checks.isEmpty()) {
            checks.add(Observations.open("limit of detection" + of, "nothing shows the scatter of a blank", "layout"));
        }
        return checks;
    }

    private double slope() {
        if (step.calibration().isPresent()) {
            Calibration calibration = step.calibration().get();
            return calibration.curve().slopeAt(calibration.lowest());
        }
        return 1
                / scale.perNetDeltaA(
                        step.where(well -> well.trace().sample().isEmpty()).get(0));
    }

    private void line(Calibration calibration, Optional<Integer> n, List<Check> checks) {
        if (calibration.curve().model() == Model.LINE && calibration.fit().degreesOfFreedom() > 0) {
            for (DetectionRule rule : List.of(DetectionRule.LINE_RESIDUAL, DetectionRule.LINE_INTERCEPT)) {
                checks.add(check(DetectionLimits.fromLine(rule, calibration)));
            }
            if (calibration.fit().sumOfSquares() > 0) {
                n.ifPresent(wells -> {
                    DetectionLimits limits = DetectionLimits.fromPrediction(calibration, wells);
                    checks.add(check(
                            limits.rule(),
                            limits.decision(),
                            limits.detection(),
                            limits.quantification(),
                            forWells(wells)));
                });
            }
        }
    }

    private Check check(DetectionLimits limits) {
        return check(limits.rule(), limits.decision(), limits.detection(), limits.quantification(), "");
    }

    private Check check(
            DetectionRule rule, OptionalDouble decision, double detection, double quantification, String wells) {
        String found = (decision.isPresent() ? "decision " + inUnit(decision.getAsDouble()) + ", " : "")
                + "detection " + inUnit(detection) + ", quantification " + inUnit(quantification)
                + form() + " in the solution pipetted" + wells;
        return Observations.open("limit of detection" + of, found, rule.toString());
    }

    private String form() {
        return step.step().report().as().map(form -> " of " + form.name()).orElse("");
    }

    private static String forWells(int n) {
        return " for " + n + (n == 1 ? " well" : " wells");
    }

    private String inUnit(double gPerL) {
        return Numbers.rounded(scale.perGPerL() * gPerL, DIGITS) + " "
                + scale.unit().symbol();
    }
}
