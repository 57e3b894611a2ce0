package tallywell.budget;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.curve.Calibration;
import tallywell.curve.Curve;
import tallywell.method.InputQuantity;
import tallywell.method.Spread;
import tallywell.method.UncertaintyRule;
import tallywell.workup.Repeatability;
import tallywell.workup.Result;
import tallywell.workup.WellResult;

/**
 * Makes the budget of one result from the sensitivities of its value.
 *
 * <p>Blanks enter twice, through the net ΔA of the sample and through those of the standards. Both ways are added with
 * their signs before anything is squared: with a free intercept a common blank cancels, through zero it counts, with
 * another group of blanks both count.
 */
final class Budgeting {
    private static final String OWN = "repeatability";
    private static final String TRACE = "noise of the trace";
    private static final String COURSE = "course of the trace";
    private static final String OF_STANDARDS = "course of the standards";
    private static final String SLOW = "creep that follows the analyte";
    private static final String BLANK = "blank";
    private static final String CURVE = "calibration";

    private final StepModel model;
    private final Result result;
    private final List<WellResult> wells;
    private final List<Contribution> contributions = new ArrayList<>();
    private final Set<InputQuantity> unstated = EnumSet.noneOf(InputQuantity.class);

    /** Factors of s0² and s1² in the variance that rests on the pooled repeatability. */
    private double ofConstant;

    private double ofProportional;
    private double curveVariance;

    /** Variances of slots that are not in the pool, and their degrees of freedom. */
    private final List<double[]> apart = new ArrayList<>();

    Budgeting(StepModel model, Result result) {
        this.model = model;
        this.result = result;
        this.wells = model.wellsOf(result);
    }

    ResultBudget budget() {
        return budget(List.of());
    }

    /** The budget with further contributions. */
    ResultBudget budget(List<Contribution> further) {
        further.forEach(each -> add(each.source(), each.sensitivity(), each.standardUncertainty()));
        own();
        course();
        blanks();
        if (model.step().calibration().isPresent()) {
            curve(model.step().calibration().get());
        }
        stated();
        UncertaintyRule rule = model.method().uncertainty();
        OptionalDouble validation = rule.validation().isPresent()
                ? OptionalDouble.of(Math.hypot(
                        rule.validation().get().precision(),
                        rule.validation().get().bias()))
                : OptionalDouble.empty();
        return new ResultBudget(result, contributions, degreesOfFreedom(), validation, rule.stated(), unstated);
    }

    /** Change of the value with the net ΔA of one of its wells. */
    private double perNet(WellResult well) {
        double perInput = model.valuePerInput(well) / wells.size();
        return model.step().calibration().isPresent()
                ? perInput / model.step().calibration().get().curve().slopeAt(model.levelOf(well))
                : perInput;
    }

    private void own() {
        double variance = 0;
        Scatter scatter = model.scatter();
        Optional<Repeatability.Slot> outlier = scatter.outlierOf(wells.get(0));
        for (WellResult well : wells) {
            double net = well.netDeltaA().orElseThrow();
            double square = perNet(well) * perNet(well);
            if (outlier.isPresent()) {
                variance += square * outlier.get().variance();
            } else {
                variance += square * scatter.variance(well);
                ofConstant += square;
                ofProportional += square * net * net;
            }
        }
        if (outlier.isPresent()) {
            apart.add(new double[] {variance, outlier.get().degreesOfFreedom()});
        }
        Estimate estimate = outlier.isPresent() ? Estimate.OWN_SCATTER : scatter.estimate();
        String label = estimate == Estimate.TRACE ? TRACE : OWN;
        add(label, result.key(), estimate, 1, Math.sqrt(variance));
    }

    private void course() {
        double sensitivity = wells.stream().mapToDouble(this::perNet).sum();
        add(COURSE, result.key(), Estimate.COURSE, sensitivity, model.courseOf(wells));
        double slow = wells.stream()
                .mapToDouble(well -> perNet(well) * StepModel.slowBy(well))
                .sum();
        add(SLOW, "step " + result.step(), Estimate.COURSE, slow, model.slowPart());
        add(OF_STANDARDS, "step " + result.step(), Estimate.COURSE, ofStandards(), 1);
    }

    /** What the course of the standards leaves open moves all results that are read off them, each by its pull. */
    private double ofStandards() {
        double effect = 0;
        for (WellResult well : wells) {
            if (model.step().calibration().isPresent()) {
                double[] pull = Pull.of(model.step().calibration().get(), model.levelOf(well));
                for (int j = 0; j < pull.length; j++) {
                    effect -= perNet(well) * pull[j] * model.courseOf(model.standards()[j]);
                }
            }
        }
        return effect;
    }

    private void blanks() {
        Map<String, Blank> groups = new LinkedHashMap<>();
        for (WellResult well : wells) {
            double perNet = perNet(well);
            String group = well.trace().group();
            add(groups, "" + group, model.blanksOf(group), -perNet);
            Optional<int[]> own = model.sampleBlanksOf(well);
            if (own.isPresent()) {
                add(groups, "without trigger " + group, model.untriggeredOf(group), perNet);
                add(groups, "of slot " + slotOf(well), own.get(), -perNet);
            }
            model.step().calibration().ifPresent(calibration -> standardsBlanks(groups, calibration, well, perNet));
        }
        // Rounding is left where the two ways of a common blank cancel.
        double least = 1e-9
                * wells.stream().mapToDouble(well -> Math.abs(perNet(well))).sum();
        groups.forEach((name, each) -> {
            if (Math.abs(each.sensitivity) > least) {
                blank(name, each);
            }
        });
    }

    private static String slotOf(WellResult well) {
        return well.trace()
                .sample()
                .map(sample -> Integer.toString(sample.slot()))
                .orElse("");
    }

    /** The blanks of the standards move the curve, and with it the level that the well's net ΔA stands for. */
    private void standardsBlanks(Map<String, Blank> groups, Calibration calibration, WellResult well, double perNet) {
        double[] pull = Pull.of(calibration, model.levelOf(well));
        int[] standards = model.standards();
        for (int j = 0; j < standards.length; j++) {
            String group = model.well(standards[j]).trace().group();
            add(groups, "" + group, model.blanksOf(group), perNet * pull[j]);
        }
    }

    private static void add(Map<String, Blank> groups, String name, int[] wells, double sensitivity) {
        if (wells.length > 0) {
            Blank blank = groups.computeIfAbsent(name, key -> new Blank(wells));
            blank.sensitivity += sensitivity;
        }
    }

    private void blank(String name, Blank blank) {
        Optional<Repeatability.Slot> outlier = model.scatter().outlierOf(model.well(blank.wells[0]));
        double n = blank.wells.length;
        double square = blank.sensitivity * blank.sensitivity / n;
        double variance = outlier.isPresent()
                ? outlier.get().variance()
                : Arrays.stream(blank.wells)
                        .mapToDouble(at -> model.scatter().variance(model.well(at)))
                        .average()
                        .orElseThrow();
        if (outlier.isPresent()) {
            apart.add(new double[] {square * variance, outlier.get().degreesOfFreedom()});
        } else {
            ofConstant += square;
        }
        Estimate estimate =
                outlier.isPresent() ? Estimate.OWN_SCATTER : model.scatter().estimate();
        add(BLANK, name + " " + result.step(), estimate, blank.sensitivity, Math.sqrt(variance / n));
    }

    /** The mean of some blank wells, and what it does to the value. */
    private static final class Blank {
        private final int[] wells;
        private double sensitivity;

        Blank(int[] wells) {
            this.wells = wells;
        }
    }

    /**
     * The parameters of a curve go together. Their covariance V = L Lᵀ is taken apart into as many independent sources,
     * so that sums of squares and of products hold for them too.
     */
    private void curve(Calibration calibration) {
        Curve curve = calibration.curve();
        int p = curve.size();
        double[] sensitivity = new double[p];
        for (WellResult well : wells) {
            double[] gradient = curve.gradientAt(model.levelOf(well));
            for (int i = 0; i < p; i++) {
                sensitivity[i] -= perNet(well) * gradient[i];
            }
        }
        double[][] root = choleskyRoot(calibration, model.unitVariance());
        Estimate estimate = model.usesResiduals()
                ? Estimate.CALIBRATION_RESIDUALS
                : model.scatter().estimate();
        for (int k = 0; k < p; k++) {
            double effect = 0;
            for (int i = k; i < p; i++) {
                effect += root[i][k] * sensitivity[i];
            }
            curveVariance += effect * effect;
            add(CURVE, "part " + (k + 1) + " of step " + result.step(), estimate, effect, 1);
        }
    }

    private static double[][] choleskyRoot(Calibration calibration, double unit) {
        int p = calibration.fit().size();
        double[][] root = new double[p][p];
        for (int i = 0; i < p; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = unit * calibration.fit().cofactor(i, j);
                for (int k = 0; k < j; k++) {
                    sum -= root[i][k] * root[j][k];
                }
                root[i][j] = i == j ? Math.sqrt(Math.max(0, sum)) : root[j][j] > 0 ? sum / root[j][j] : 0;
            }
        }
        return root;
    }

    private void stated() {
        Map<InputQuantity, Spread> inputs = model.method().uncertainty().inputs();
        for (Factor factor : Factor.of(model, result, wells)) {
            Spread spread = inputs.get(factor.quantity());
            if (spread == null && factor.quantity() != InputQuantity.PLATE) {
                unstated.add(factor.quantity());
            } else if (spread != null) {
                double sensitivity = factor.exponent() * result.value().orElseThrow() / factor.size();
                add(
                        factor.quantity().label(),
                        factor.name(),
                        Estimate.STATED,
                        sensitivity,
                        spread.standardUncertainty());
            }
        }
        Spread creep = inputs.get(InputQuantity.CREEP);
        if (creep != null) {
            double sensitivity = wells.stream().mapToDouble(this::perNet).sum();
            add(InputQuantity.CREEP.label(), result.key(), Estimate.STATED, sensitivity, creep.standardUncertainty());
        }
        Spread moment = inputs.get(InputQuantity.TRIGGER_MOMENT);
        if (moment != null) {
            triggerMoment(moment);
        }
    }

    /** A trigger written too early or late moves each well by its creep; what blanks and standards share with it cancels. */
    private void triggerMoment(Spread moment) {
        double sensitivity = 0;
        for (WellResult well : wells) {
            double perNet = perNet(well);
            sensitivity += perNet * model.netCreepPerS(model.indexOf(well));
            if (model.step().calibration().isPresent()) {
                double[] pull = Pull.of(model.step().calibration().get(), model.levelOf(well));
                int[] standards = model.standards();
                for (int j = 0; j < standards.length; j++) {
                    sensitivity -= perNet * pull[j] * model.netCreepPerS(standards[j]);
                }
            }
        }
        add(
                InputQuantity.TRIGGER_MOMENT.label(),
                "step " + result.step(),
                Estimate.STATED,
                sensitivity,
                moment.standardUncertainty());
    }

    private void add(String label, String name, Estimate estimate, double sensitivity, double u) {
        add(new Source(label, name, estimate), sensitivity, u);
    }

    private void add(Source source, double sensitivity, double u) {
        if (sensitivity != 0 && u > 0) {
            contributions.add(new Contribution(source, sensitivity, u));
        }
    }

    private double degreesOfFreedom() {
        double total = contributions.stream()
                .mapToDouble(each -> each.effect() * each.effect())
                .sum();
        Optional<Repeatability> found = model.scatter().pooled();
        double pooled = found.map(Repeatability::function)
                .map(each -> ofConstant * each.constant() + ofProportional * each.proportional())
                .orElse(0.0);
        // The noise of traces is taken as known.
        double pooledFreedom = found.map(each -> each.function().degreesOfFreedom(ofConstant, ofProportional))
                .orElse(Double.POSITIVE_INFINITY);
        double curve = curveVariance;
        double curveFreedom = model.usesResiduals()
                ? model.step().calibration().orElseThrow().fit().degreesOfFreedom()
                : pooledFreedom;
        if (curve > 0
                && (!model.usesResiduals()
                        || found.map(Repeatability::standardsIncluded).orElse(false))) {
            // One and the same scatter stands behind both, so they are wrong together.
            pooled += curve;
            pooledFreedom = Math.min(pooledFreedom, curveFreedom);
            curve = 0;
        }
        double sum = pooled * pooled / pooledFreedom + curve * curve / curveFreedom;
        for (double[] each : apart) {
            sum += each[0] * each[0] / each[1];
        }
        return sum > 0 ? total * total / sum : Double.POSITIVE_INFINITY;
    }
}
