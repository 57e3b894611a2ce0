package tallywell.assess;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tallywell.budget.PlateBudget;
import tallywell.budget.RestsOn;
import tallywell.method.Limits;
import tallywell.workup.Analysis;
import tallywell.workup.Flag;
import tallywell.workup.Repeatability;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;

/**
 * Judges each result by one table, first line that applies: over range or missing, ceiling, indicator, incomplete, range,
 * replicates, detection, then what a person should look at. The table stands in {@code docs/verdicts.md}.
 */
final class Verdicts {
    /** A saturated well tells only that it holds more than the reader sees; this much more dilution is a lower bound. */
    private static final double OVER_STEP = 5;

    private static final Set<Flag> LOOK_AT = EnumSet.of(
            Flag.READINGS_MISSING,
            Flag.EXCLUDED,
            Flag.SINGLE_REPLICATE,
            Flag.TRIGGER_BLANK_MISSING,
            Flag.CREEP_NOT_TESTED,
            Flag.CREEP_NOT_CONSTANT,
            Flag.BASELINE_DRIFTS,
            Flag.JUMP,
            Flag.CURVE_MISFIT,
            Flag.CREEP_BELONGS,
            Flag.RECOVERY_OUT,
            Flag.OUTLIER,
            Flag.SCATTER_HIGH,
            Flag.PLATE_DRIFTS,
            Flag.SAME_CEILING,
            Flag.CREEP_FOLLOWS_ANALYTE,
            Flag.TRIGGER_ELSEWHERE,
            Flag.DILUTION_ASSUMED,
            Flag.SPIKE_OUT,
            Flag.SAMPLES_DISAGREE,
            Flag.BELOW_ZERO,
            Flag.BOUND_NOT_SHOWN,
            Flag.OTHER_PLATE,
            Flag.STANDARDS_UNFINISHED,
            Flag.PATH_DOUBTFUL);

    private Verdicts() {}

    private static Judgement of(
            Analysis analysis, PlateBudget budget, Result result, boolean batchPassed, Map<Flag, Set<String>> marked) {
        StepAnalysis step = analysis.stepOf(result);
        Optional<Repeatability> scatter = budget.repeatabilities().get(result.step() - 1);
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        flags.addAll(result.flags());
        flags.addAll(windowFlags(result, step.step().limits()));
        flags.addAll(new Replicates(result, step).flags(scatter));
        marked.forEach((flag, keys) -> {
            if (keys.contains(result.key())) {
                flags.add(flag);
            }
        });
        if (Recoveries.isOut(analysis, result)) {
            flags.add(Flag.RECOVERY_OUT);
        }
        if (result.role().equals("sample") && result.netDeltaA().isPresent()) {
            Detection.of(step, scatter, result)
                    .flatMap(limits -> limits.flag(result.netDeltaA().getAsDouble()))
                    .ifPresent(flags::add);
        }
        if (new LowestStandard(step, scatter).isInDoubt(result)) {
            flags.add(Flag.BOUND_NOT_SHOWN);
        }
        Judgement judgement = judge(result.with(flags), flags, step, new DilutionAdvice(analysis, result));
        return !batchPassed && judgement.verdict() == Verdict.REPORT
                ? new Judgement(judgement.result(), Verdict.CHECK, judgement.advice(), Optional.empty())
                : judgement;
    }

    private static Judgement judge(Result result, Set<Flag> flags, StepAnalysis step, DilutionAdvice dilution) {
        if (flags.contains(Flag.OVER_RANGE) && result.value().isEmpty()) {
            return repeat(result, dilution.timesMore(OVER_STEP));
        }
        if (flags.contains(Flag.READINGS_MISSING) && result.netDeltaA().isEmpty() || result.n() == 0) {
            return repeat(result, new Advice.Repeat());
        }
        if (flags.contains(Flag.READER_CEILING)) {
            return repeat(result, dilution.timesMore(OVER_STEP));
        }
        // Without indicator no reaction ends, however long it is read.
        if (flags.contains(Flag.INDICATOR_LOW)) {
            // What was seen is only what the indicator could show, so the dilution is a lower bound.
            return repeat(result, dilution.timesMore(2));
        }
        if (flags.contains(Flag.REACTION_INCOMPLETE)) {
            return repeat(result, new Advice.ReadLonger());
        }
        if (flags.contains(Flag.ABOVE_STANDARDS)
                || flags.contains(Flag.ABOVE_WINDOW)
                || flags.contains(Flag.ABSORBANCE_HIGH)) {
            return repeat(result, dilution.higher());
        }
        boolean low = flags.contains(Flag.BELOW_STANDARDS) || flags.contains(Flag.BELOW_WINDOW);
        // At dilution 1 there is nothing to repeat: the sample holds that little. Less than nothing is no content at
        // all,
        // and measuring more of the sample would not mend it.
        if (low && !flags.contains(Flag.BELOW_ZERO) && result.dilution().factor() > 1) {
            return repeat(result, dilution.lower());
        }
        if (flags.contains(Flag.REPLICATES_DIFFER)) {
            return repeat(result, new Advice.Repeat());
        }
        if (flags.contains(Flag.BELOW_DETECTION) && result.dilution().factor() > 1) {
            return repeat(result, dilution.lower());
        }
        boolean look = isToBeLookedAt(flags, step);
        return new Judgement(result, look ? Verdict.CHECK : Verdict.REPORT, new Advice.None(), Optional.empty());
    }

    /**
     * Whether a person must look at a result with these flags. One reading after the trigger is the routine of published
     * methods, which rests on standards treated alike; by absorptivity nothing makes up for what it does not show.
     */
    static boolean isToBeLookedAt(Set<Flag> flags, StepAnalysis step) {
        return flags.stream().anyMatch(LOOK_AT::contains)
                || flags.contains(Flag.CREEP_NOT_MEASURED) && step.calibration().isEmpty();
    }

    private static Judgement repeat(Result result, Advice advice) {
        return new Judgement(result, Verdict.REPEAT, advice, Optional.empty());
    }

    /** The window is for samples; a control or spike is judged by its recovery. */
    private static Set<Flag> windowFlags(Result result, Limits limits) {
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        if (!result.role().equals("sample") || result.netDeltaA().isEmpty()) {
            return flags;
        }
        double net = result.netDeltaA().getAsDouble();
        if (limits.deltaALeast().isPresent() && net < limits.deltaALeast().getAsDouble()) {
            flags.add(Flag.BELOW_WINDOW);
        }
        if (limits.deltaAMost().isPresent() && net > limits.deltaAMost().getAsDouble()) {
            flags.add(Flag.ABOVE_WINDOW);
        }
        return flags;
    }

    static List<Judgement> of(Analysis analysis, PlateBudget budget, boolean batchPassed, PatternReadings patterns) {
        Set<String> ceiling = new HashSet<>();
        for (StepAnalysis step : analysis.steps()) {
            ceiling.addAll(SameCeiling.keys(
                    step, analysis.results(), budget.repeatabilities().get(step.number() - 1)));
        }
        Map<Flag, Set<String>> marked = Map.of(
                Flag.SAME_CEILING, ceiling,
                Flag.DILUTION_ASSUMED, ForgottenDilutions.keys(analysis),
                Flag.SPIKE_OUT, new SpikedMatrix(analysis).inDoubt(),
                Flag.SAMPLES_DISAGREE, SameSample.disagreeing(budget),
                Flag.OTHER_PLATE, patterns.isOtherPlate() ? keys(analysis) : Set.of(),
                Flag.STANDARDS_UNFINISHED, RestsOn.unfinished(analysis));
        List<Judgement> judgements = new ArrayList<>();
        for (int i = 0; i < analysis.results().size(); i++) {
            judgements.add(of(analysis, budget, analysis.results().get(i), batchPassed, marked)
                    .with(budget.results().get(i)));
        }
        return judgements;
    }

    private static Set<String> keys(Analysis analysis) {
        return analysis.results().stream().map(Result::key).collect(Collectors.toSet());
    }
}
