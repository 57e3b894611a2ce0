package tallywell.report;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.curve.Line;
import tallywell.curve.Model;
import tallywell.curve.Standard;
import tallywell.method.CalibrationRule;
import tallywell.method.LightPath;
import tallywell.method.Volumes;
import tallywell.quantity.Numbers;
import tallywell.report.CalibrationPlaces.Fact;
import tallywell.report.CalibrationPlaces.Scope;
import tallywell.report.CalibrationPlaces.Section;
import tallywell.workup.StepAnalysis;

/** What a step is worked up with: constants of the method as they are, the rest as formulas with what they give. */
final class FactFormulas {
    private final Draft draft;
    private final StepAnalysis step;
    private final Section section;

    FactFormulas(Draft draft, StepAnalysis step) {
        this.draft = draft;
        this.step = step;
        this.section = draft.calibration().of(step.number());
    }

    /** The formula of a fact; empty for what goes in, and for what no formula gives. */
    Optional<String> formula(Fact fact, Scope scope) {
        boolean zero = step.calibration().isPresent()
                && step.calibration().get().curve().model() == Model.LINE_THROUGH_ZERO;
        return switch (fact) {
            case TRIGGER_FACTOR -> Optional.of(own(Fact.VOLUME_BEFORE) + "/" + own(Fact.VOLUME_AFTER));
            case PATH ->
                section.has(Fact.WELL_AREA)
                        ? Optional.of(own(Fact.VOLUME_AFTER) + "/" + own(Fact.WELL_AREA) + "/10")
                        : Optional.empty();
            case FACTOR ->
                Optional.of(own(Fact.VOLUME_AFTER) + "*" + own(Fact.MOLAR_MASS) + "/(" + own(Fact.ABSORPTIVITY) + "*"
                        + own(Fact.PATH) + "*" + own(Fact.VOLUME_SAMPLE) + "*" + own(Fact.SIGNALS) + ")");
            case POINTS -> Optional.of("COUNTIF(" + weights(scope) + ",\">0\")");
            case MEAN_LEVEL ->
                guarded(scope, "SUMPRODUCT(" + weights(scope) + "," + levels() + ")/SUM(" + weights(scope) + ")");
            case MEAN_NET ->
                guarded(scope, "SUMPRODUCT(" + weights(scope) + "," + nets(scope) + ")/SUM(" + weights(scope) + ")");
            case SLOPE -> zero ? slopeThroughZero(scope) : slope(scope);
            case INTERCEPT -> zero ? Optional.of("0") : intercept(scope);
            case RESIDUAL_SD -> residualSd(scope, zero ? 1 : 2);
            case LOWEST -> Optional.of(lowest(scope, zero));
            case HIGHEST -> Optional.of("MAX(" + section.points(scope.level) + ")");
            case NET_LOWEST -> end(Fact.LOWEST, "-", scope);
            case NET_HIGHEST -> end(Fact.HIGHEST, "+", scope);
            default -> Optional.empty();
        };
    }

    private String own(Fact fact) {
        return section.own(fact, Scope.USED);
    }

    private String weights(Scope scope) {
        return section.points(scope.weight);
    }

    private String levels() {
        return section.points(1);
    }

    private String nets(Scope scope) {
        return section.points(scope.response);
    }

    private Optional<String> guarded(Scope scope, String formula) {
        return Optional.of("IF(" + section.own(Fact.POINTS, scope) + "=0,\"\"," + formula + ")");
    }

    private Optional<String> slope(Scope scope) {
        String x = "(" + levels() + "-" + section.own(Fact.MEAN_LEVEL, scope) + ")";
        String y = "(" + nets(scope) + "-" + section.own(Fact.MEAN_NET, scope) + ")";
        String level = section.points(scope.level);
        return Optional.of("IF(COUNT(" + level + ")<2,\"\",IF(MAX(" + level + ")=MIN(" + level + "),\"\",SUMPRODUCT("
                + weights(scope) + "*" + x + "*" + y + ")/SUMPRODUCT(" + weights(scope) + "*" + x + "^2)))");
    }

    private Optional<String> slopeThroughZero(Scope scope) {
        String xx = "SUMPRODUCT(" + weights(scope) + "*" + levels() + "^2)";
        return Optional.of("IF(" + xx + "=0,\"\",SUMPRODUCT(" + weights(scope) + "*" + levels() + "*" + nets(scope)
                + ")/" + xx + ")");
    }

    private Optional<String> intercept(Scope scope) {
        String slope = section.own(Fact.SLOPE, scope);
        return Optional.of("IF(" + slope + "=\"\",\"\"," + section.own(Fact.MEAN_NET, scope) + "-" + slope + "*"
                + section.own(Fact.MEAN_LEVEL, scope) + ")");
    }

    private Optional<String> residualSd(Scope scope, int parameters) {
        String slope = section.own(Fact.SLOPE, scope);
        String points = section.own(Fact.POINTS, scope);
        return Optional.of("IF(OR(" + slope + "=\"\"," + points + "<=" + parameters + "),\"\",SQRT(SUMPRODUCT("
                + weights(scope) + "*(" + nets(scope) + "-" + section.own(Fact.INTERCEPT, scope) + "-" + slope + "*"
                + levels() + ")^2)/(" + points + "-" + parameters + ")))");
    }

    /** The range of a line through zero begins at zero where there is one level only. */
    private String lowest(Scope scope, boolean throughZero) {
        String level = section.points(scope.level);
        if (step.step().calibration() instanceof CalibrationRule.BySingleStandard) {
            return "0";
        }
        return throughZero ? "IF(MIN(" + level + ")<MAX(" + level + "),MIN(" + level + "),0)" : "MIN(" + level + ")";
    }

    /** Rounding may not put a well that equals the end standard outside. */
    private Optional<String> end(Fact level, String sign, Scope scope) {
        String slope = section.own(Fact.SLOPE, scope);
        return Optional.of("IF(" + slope + "=\"\",\"\"," + section.own(Fact.INTERCEPT, scope) + "+" + slope + "*"
                + section.own(level, scope) + sign + Numbers.plain(Calibration.END_TOLERANCE) + "*" + slope + "*("
                + section.own(Fact.HIGHEST, scope) + "-" + section.own(Fact.LOWEST, scope) + "))");
    }

    /** What the facts come to, for the wells that are used and for all. */
    void values(Map<Fact, OptionalDouble> used, Map<Fact, OptionalDouble> all) {
        constants(used);
        step.calibration().ifPresent(calibration -> fitted(used, calibration));
        draft.whole()
                .flatMap(whole -> whole.steps().get(step.number() - 1).calibration())
                .ifPresent(calibration -> fitted(all, calibration));
    }

    private void constants(Map<Fact, OptionalDouble> values) {
        step.step().volumes().ifPresent(volumes -> {
            values.put(Fact.VOLUME_BEFORE, OptionalDouble.of(volumes.beforeTriggerUl()));
            values.put(Fact.VOLUME_AFTER, OptionalDouble.of(volumes.afterTriggerUl()));
            values.put(Fact.VOLUME_SAMPLE, OptionalDouble.of(volumes.sampleUl()));
            values.put(Fact.TRIGGER_FACTOR, OptionalDouble.of(volumes.beforeTriggerUl() / volumes.afterTriggerUl()));
        });
        values.put(Fact.MOLAR_MASS, step.step().analyte().molarMass());
        values.put(Fact.ABSORPTIVITY, step.step().signal().absorptivity());
        values.put(Fact.SIGNALS, OptionalDouble.of(step.step().analyte().signalPerAnalyte()));
        if (step.calibration().isEmpty()) {
            absorptivity(values);
        }
    }

    private void absorptivity(Map<Fact, OptionalDouble> values) {
        Volumes volumes = step.step().volumes().orElseThrow();
        LightPath path = draft.analysis().assay().method().lightPath().orElseThrow();
        if (path instanceof LightPath.Vertical vertical) {
            values.put(Fact.WELL_AREA, OptionalDouble.of(vertical.wellAreaMm2()));
        }
        double cm = path.cm(volumes.afterTriggerUl());
        values.put(Fact.PATH, OptionalDouble.of(cm));
        values.put(
                Fact.FACTOR,
                OptionalDouble.of(volumes.afterTriggerUl()
                        * step.step().analyte().molarMass().orElseThrow()
                        / (step.step().signal().absorptivity().orElseThrow()
                                * cm
                                * volumes.sampleUl()
                                * step.step().analyte().signalPerAnalyte())));
    }

    private static void fitted(Map<Fact, OptionalDouble> values, Calibration calibration) {
        values.put(Fact.POINTS, OptionalDouble.of(calibration.standards().size()));
        values.put(Fact.LOWEST, OptionalDouble.of(calibration.lowest()));
        values.put(Fact.HIGHEST, OptionalDouble.of(calibration.highest()));
        double weight = 0;
        double level = 0;
        double net = 0;
        for (Standard standard : calibration.standards()) {
            weight += standard.weight();
            level += standard.weight() * standard.level();
            net += standard.weight() * standard.response();
        }
        values.put(Fact.MEAN_LEVEL, OptionalDouble.of(level / weight));
        values.put(Fact.MEAN_NET, OptionalDouble.of(net / weight));
        if (calibration.curve() instanceof Line line) {
            double room = Calibration.END_TOLERANCE * line.slope() * (calibration.highest() - calibration.lowest());
            values.put(Fact.SLOPE, OptionalDouble.of(line.slope()));
            values.put(Fact.INTERCEPT, OptionalDouble.of(line.intercept()));
            values.put(Fact.NET_LOWEST, OptionalDouble.of(line.at(calibration.lowest()) - room));
            values.put(Fact.NET_HIGHEST, OptionalDouble.of(line.at(calibration.highest()) + room));
            values.put(Fact.RESIDUAL_SD, calibration.residualSd());
        }
    }
}
