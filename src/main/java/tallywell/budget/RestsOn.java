package tallywell.budget;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import tallywell.curve.Calibration;
import tallywell.method.AssayMethod;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.Result;
import tallywell.workup.Scale;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;
import tallywell.workup.WellTrace;

/**
 * Whether a result rests on standards that may not have been over.
 *
 * <pre>{@code
 * standards: levels of which most wells are flagged make up a fifth of the pull on the curve at the result's level, or
 *            2 |Σ pull(j) u course(j)| > 3 mA and > a tenth of net ΔA
 * }</pre>
 *
 * <p>The limits in ΔA are those by which the well of a sample itself is flagged (docs/creep.md). A fifth is our own choice: a
 * single well that noise flags is not to take a whole plate along. Blanks do not count: what reacts slowly in them is of the
 * reagents, runs in the samples as well, and cancels in net ΔA.
 */
public final class RestsOn {
    private static final double SHARE_OF_STANDARDS = 0.2;
    private static final double LEAST = 0.003;
    private static final double TENTH = 0.1;
    private static final Set<Flag> UNFINISHED = EnumSet.of(Flag.REACTION_INCOMPLETE, Flag.CREEP_NOT_CONSTANT);

    private final StepAnalysis step;
    private final Scale scale;
    private final List<WellTrace> standards;
    private final Set<Content> unfinished = new HashSet<>();

    /** The keys of the results of a plate that do; never of one without a value. */
    public static Set<String> unfinished(Analysis analysis) {
        Set<String> keys = new HashSet<>();
        for (StepAnalysis step : analysis.steps()) {
            RestsOn on = new RestsOn(analysis.assay().method(), step);
            analysis.results().stream()
                    .filter(result -> result.step() == step.number() && on.isUnfinished(result))
                    .forEach(result -> keys.add(result.key()));
        }
        return keys;
    }

    private RestsOn(AssayMethod method, StepAnalysis step) {
        this.step = step;
        this.scale = new Scale(method, step);
        standards = traces(each -> step.calibrationWells().contains(each.well()));
        for (WellTrace each : standards) {
            List<WellTrace> level = standards.stream()
                    .filter(other -> other.content().equals(each.content()))
                    .toList();
            if (2 * level.stream().filter(RestsOn::isUnfinished).count() > level.size()) {
                unfinished.add(each.content());
            }
        }
    }

    /** Whether a well was not over, or shows nothing of that beyond a flag. */
    private static boolean isUnfinished(WellTrace trace) {
        boolean silent = trace.flags().contains(Flag.CREEP_NOT_TESTED) && !(trace.uCourse() > 0);
        return silent || trace.flags().stream().anyMatch(UNFINISHED::contains);
    }

    private boolean isUnfinished(Result result) {
        List<WellResult> wells = step.where(well -> result.wells().contains(well.well())
                && well.used()
                && well.value().isPresent());
        return result.value().isPresent() && wells.stream().anyMatch(this::isUnfinished);
    }

    private boolean isUnfinished(WellResult well) {
        double limit = Math.max(LEAST, TENTH * Math.abs(well.netDeltaA().orElse(0)));
        double[] pull = step.calibration().map(each -> pull(each, well)).orElse(new double[0]);
        double flagged = 0;
        double all = 0;
        double open = 0;
        for (int j = 0; j < pull.length; j++) {
            WellTrace standard = of(standards, step.calibrationWells().get(j));
            all += Math.abs(pull[j]);
            flagged += unfinished.contains(standard.content()) ? Math.abs(pull[j]) : 0;
            open += pull[j] * standard.uCourse();
        }
        return flagged > 0 && flagged >= SHARE_OF_STANDARDS * all || 2 * Math.abs(open) > limit;
    }

    private double[] pull(Calibration calibration, WellResult well) {
        double[] pull = Pull.of(calibration, well.concentration().orElseThrow() / scale.perLevel(well));
        // A curve that nothing pulls, as through one point only, rests on all of its standards alike.
        if (Arrays.stream(pull).allMatch(each -> each == 0)) {
            Arrays.fill(pull, 1.0 / pull.length);
        }
        return pull;
    }

    private List<WellTrace> traces(Predicate<WellResult> test) {
        return step.where(test).stream().map(WellResult::trace).toList();
    }

    private static WellTrace of(List<WellTrace> traces, Well well) {
        return traces.stream()
                .filter(each -> each.well().equals(well))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no standard in " + well));
    }
}
