package tallywell.assess;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tallywell.budget.PlateBudget;
import tallywell.quantity.Numbers;
import tallywell.workup.Analysis;
import tallywell.workup.BlankMean;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;

/** Holds a worked-up plate against the limits of its method. */
public final class Assessor {
    private static final int DIGITS = 4;
    private static final int DECIMALS = 4;

    /** Judges the batch, then each result. */
    public Assessment assess(Analysis analysis) {
        PlateBudget budget = PlateBudget.of(analysis);
        List<Check> checks = new ArrayList<>();
        for (StepAnalysis step : analysis.steps()) {
            String of = analysis.steps().size() == 1
                    ? ""
                    : ", " + step.step().analyte().name();
            for (BlankMean blank : step.blanks().values()) {
                checks.add(blank(blank, step.step().limits().blankDeltaAMost(), of));
            }
            checks.addAll(new BatchChecks(analysis.assay().method(), step, of).all());
        }
        Map<Result, Check> recoveries = recoveries(analysis);
        checks.addAll(recoveries.values());
        if (recoveries.keySet().stream().noneMatch(each -> each.role().equals("control"))) {
            checks.add(new Check(
                    "recovery of controls", "", "no control on the plate", Check.State.NOT_ASSESSED, "layout"));
        }
        // A spike that fails puts the samples in doubt that it speaks for, and the batch with it, but not the others.
        SpikedMatrix matrix = new SpikedMatrix(analysis);
        List<Check> ofSome = recoveries.keySet().stream()
                .filter(each -> !matrix.decidesForAll(each))
                .map(recoveries::get)
                .toList();
        boolean passed =
                checks.stream().noneMatch(check -> check.state() == Check.State.FAILED && !ofSome.contains(check));
        PatternReadings patterns = PatternReadings.of(analysis);
        DifferenceVerdicts verdicts =
                new DifferenceVerdicts(Verdicts.of(analysis, budget, passed, patterns), budget, passed);
        return new Assessment(
                verdicts.judgements(),
                checks,
                new Observations(budget, patterns).all(),
                budget,
                verdicts.differences());
    }

    private static Check blank(BlankMean blank, OptionalDouble most, String of) {
        String name = "size of the blank" + of + (blank.group().isEmpty() ? "" : ", group " + blank.group());
        String found = "mean ΔA " + Numbers.fixed(blank.mean(), DECIMALS) + " of "
                + blank.wells().size() + (blank.wells().size() == 1 ? " well" : " wells");
        if (most.isEmpty()) {
            return new Check(name, "", found, Check.State.NOT_ASSESSED, "no blank-delta-a in the method");
        }
        boolean passes = Math.abs(blank.mean()) <= most.getAsDouble();
        return new Check(
                name,
                "at most " + Numbers.rounded(most.getAsDouble(), DIGITS) + " either way",
                found,
                state(passes),
                "method, blank-delta-a");
    }

    private static Map<Result, Check> recoveries(Analysis analysis) {
        Map<Result, Check> checks = new LinkedHashMap<>();
        for (Result result : analysis.results()) {
            if (result.role().equals("control")) {
                checks.put(result, recovery(analysis, result, "recovery of the control '" + result.name() + "'"));
            } else if (result.role().equals("spike")) {
                checks.put(result, recovery(analysis, result, "recovery of the spike on '" + result.name() + "'"));
            }
        }
        return checks;
    }

    private static Check recovery(Analysis analysis, Result result, String name) {
        String full = analysis.steps().size() == 1 ? name : name + ", " + result.analyte();
        Recoveries.Range range = Recoveries.range(analysis, result);
        if (result.recoveryPercent().isEmpty()) {
            String why = result.value().isEmpty() ? "no value" : "nothing to compare with";
            boolean failed = Recoveries.fails(analysis, result);
            return new Check(
                    full,
                    range.isOpen() ? "" : range.words(),
                    failed ? why + doubt(analysis, result) : why,
                    failed ? Check.State.FAILED : Check.State.NOT_ASSESSED,
                    range.source());
        }
        double percent = result.recoveryPercent().getAsDouble();
        String found = Numbers.fixed(percent, 1) + " %";
        if (range.isOpen()) {
            return new Check(full, "", found, Check.State.NOT_ASSESSED, "no limit in " + range.source());
        }
        boolean holds = range.holds(percent);
        return new Check(
                full, range.words(), holds ? found : found + doubt(analysis, result), state(holds), range.source());
    }

    /** Which samples a spike that fails speaks for, in words. */
    private static String doubt(Analysis analysis, Result result) {
        return result.role().equals("spike") ? "; in doubt: " + new SpikedMatrix(analysis).words(result) : "";
    }

    private static Check.State state(boolean passes) {
        return passes ? Check.State.PASSED : Check.State.FAILED;
    }
}
