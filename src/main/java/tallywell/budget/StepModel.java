package tallywell.budget;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tallywell.curve.Calibration;
import tallywell.curve.Standard;
import tallywell.method.AssayMethod;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.workup.BlankMean;
import tallywell.workup.CreepSlope;
import tallywell.workup.Result;
import tallywell.workup.Scale;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * How the results of one step follow from the ΔA of its wells, laid out by index for quick evaluation: the common ground
 * of the budget and of the simulation.
 */
final class StepModel {
    private final AssayMethod method;
    private final StepAnalysis step;
    private final Scatter scatter;
    private final Scale scale;
    private final Map<Well, Integer> index = new HashMap<>();
    private final Map<Integer, int[]> sampleBlanks = new HashMap<>();
    private final Map<String, int[]> blanks = new LinkedHashMap<>();
    private final Map<String, int[]> untriggered = new LinkedHashMap<>();
    private final int[] standards;
    private final boolean residuals;
    private final double unit;

    StepModel(AssayMethod method, StepAnalysis step, Scatter scatter) {
        this.method = method;
        this.step = step;
        this.scatter = scatter;
        this.scale = new Scale(method, step);
        for (int i = 0; i < step.wells().size(); i++) {
            index.put(step.wells().get(i).well(), i);
        }
        Map<Integer, List<Well>> own = new HashMap<>();
        for (WellResult well : step.wells()) {
            if (well.used() && well.deltaA().isPresent() && well.content() instanceof Content.SampleBlank blank) {
                own.computeIfAbsent(blank.of(), slot -> new ArrayList<>()).add(well.well());
            }
        }
        own.forEach((slot, wells) -> sampleBlanks.put(slot, indexes(wells)));
        for (BlankMean blank : step.blanks().values()) {
            blanks.put(blank.group(), indexes(blank.wells()));
            untriggered.put(blank.group(), indexes(blank.untriggered()));
        }
        standards = indexes(step.calibrationWells());
        residuals = step.calibration().map(StepModel::showsLackOfFit).orElse(false);
        unit = step.calibration().map(this::unit).orElse(0.0);
    }

    private int[] indexes(List<Well> wells) {
        return wells.stream()
                .mapToInt(well -> index.getOrDefault(well, -1))
                .filter(each -> each >= 0)
                .toArray();
    }

    /**
     * Only where there are more levels than parameters do residuals say more than the scatter of replicates, which the
     * scatter of the whole plate says better.
     */
    private static boolean showsLackOfFit(Calibration calibration) {
        long levels = calibration.standards().stream()
                .mapToDouble(Standard::level)
                .distinct()
                .count();
        return levels > calibration.fit().size() && calibration.fit().sumOfSquares() > 0;
    }

    private double unit(Calibration calibration) {
        if (residuals) {
            return calibration.fit().residualVariance();
        }
        double sum = 0;
        for (int i = 0; i < standards.length; i++) {
            sum += calibration.standards().get(i).weight() * scatter.variance(well(standards[i]));
        }
        return sum / standards.length;
    }

    AssayMethod method() {
        return method;
    }

    StepAnalysis step() {
        return step;
    }

    Scatter scatter() {
        return scatter;
    }

    /** Whether the curve's uncertainty comes from its residuals; else it comes from the scatter of single wells. */
    boolean usesResiduals() {
        return residuals;
    }

    /** Variance of a standard of weight 1. */
    double unitVariance() {
        return unit;
    }

    /** The wells that are points of the calibration, in its order. */
    int[] standards() {
        return standards;
    }

    WellResult well(int at) {
        return step.wells().get(at);
    }

    int indexOf(WellResult well) {
        return index.getOrDefault(well.well(), -1);
    }

    int[] blanksOf(String group) {
        return blanks.getOrDefault(group, new int[0]);
    }

    int[] untriggeredOf(String group) {
        return untriggered.getOrDefault(group, new int[0]);
    }

    /** The sample blanks that a well is taken against; empty if it has none. */
    Optional<int[]> sampleBlanksOf(WellResult well) {
        Content content = well.content();
        int slot = content instanceof Content.Sample sample
                ? sample.slot()
                : content instanceof Content.Spike spike ? spike.of() : 0;
        return Optional.ofNullable(sampleBlanks.get(slot));
    }

    /** The wells whose values a result is the mean of. */
    List<WellResult> wellsOf(Result result) {
        return step.where(well ->
                well.used() && well.value().isPresent() && result.wells().contains(well.well()));
    }

    /**
     * What the course of the traces of a result leaves open, in net ΔA, all its wells being wrong alike; 0 where the noise of
     * the traces, which holds it, is all that is known.
     */
    double courseOf(List<WellResult> wells) {
        return scatter.pooled().isEmpty()
                ? 0
                : wells.stream()
                        .mapToDouble(well -> well.trace().uCourse())
                        .average()
                        .orElse(0);
    }

    /** Whether a well is a point of the calibration. */
    boolean isStandard(int at) {
        return Arrays.stream(standards).anyMatch(each -> each == at);
    }

    /** What the course of the trace of a standard leaves open, in net ΔA; 0 as above. */
    double courseOf(int at) {
        return scatter.pooled().isEmpty() ? 0 : well(at).trace().uCourse();
    }

    /** Creep of a well in absorbance per s, positive where the signal goes the way it should; 0 where it was not measured. */
    double creepPerS(int at) {
        return step.step().signal().direction().sign()
                * well(at).trace().pathScale()
                * well(at).trace().creepPerMin().orElse(0)
                / 60;
    }

    /** Creep of a well less that of the blanks that its net ΔA is taken against, in absorbance per s. */
    double netCreepPerS(int at) {
        WellResult well = well(at);
        String group = well.trace().group();
        double blank = meanCreepPerS(blanksOf(group));
        return creepPerS(at)
                - sampleBlanksOf(well)
                        .map(own -> meanCreepPerS(own) + blank - meanCreepPerS(untriggeredOf(group)))
                        .orElse(blank);
    }

    private double meanCreepPerS(int[] wells) {
        return Arrays.stream(wells).mapToDouble(this::creepPerS).average().orElse(0);
    }

    /** How far net ΔA of a well may be off where its creep is analyte that reacts slowly, for each unit of {@link #slowPart}. */
    static double slowBy(WellResult well) {
        return well.netDeltaA().orElse(0) * CreepSlope.minutesOf(well.trace());
    }

    /** Standard uncertainty of net ΔA from analyte that reacts slowly, per min of reading and unit of net ΔA; 0 if none is seen. */
    double slowPart() {
        return step.creepSlope().map(CreepSlope::uPerMin).orElse(0.0);
    }

    /** Value for each unit of level, or of net ΔA by absorptivity. */
    double valuePerInput(WellResult well) {
        return scale.perConcentration(well)
                * (step.calibration().isPresent() ? scale.perLevel(well) : scale.perNetDeltaA(well));
    }

    /** The level that the curve gives for the net ΔA of a well that has a value. */
    double levelOf(WellResult well) {
        return well.concentration().orElseThrow() / scale.perLevel(well);
    }
}
