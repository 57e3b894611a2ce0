package tallywell.report;

import java.util.List;
import java.util.Optional;
import tallywell.method.Before;
import tallywell.method.Creep;
import tallywell.method.CreepOwner;
import tallywell.method.SignalFormula;
import tallywell.plate.Well;
import tallywell.trace.Change;
import tallywell.trace.FinishedPart;
import tallywell.workup.Ref;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellReadings;
import tallywell.workup.WellResult;

/**
 * The formulas from the readings of a well to its absorbance before and after the trigger and its creep. Where a curve
 * was fitted that no formula gives, there is none.
 */
final class TraceFormulas {
    /** Formulas longer than this are not taken by every program (8192 is the limit of most). */
    private static final int LONGEST = 8000;

    private final Draft draft;
    private final StepAnalysis step;
    private final Optional<Ref> soleBefore;
    private final Optional<Ref> soleAfter;

    TraceFormulas(Draft draft, StepAnalysis step) {
        this.draft = draft;
        this.step = step;
        this.soleBefore = sole(step.wells().stream()
                .map(well -> well.trace().readings().baseline())
                .toList());
        this.soleAfter = sole(step.wells().stream()
                .map(well -> well.trace().readings().after())
                .toList());
    }

    /** The one reading that the wells have before or after the trigger, if none has more. */
    private static Optional<Ref> sole(List<List<WellReadings.Point>> all) {
        List<Ref> refs = all.stream()
                .flatMap(List::stream)
                .map(WellReadings.Point::ref)
                .distinct()
                .toList();
        return refs.size() == 1 ? Optional.of(refs.get(0)) : Optional.empty();
    }

    /** The absorbance before the trigger; of a step coupled to an equilibrium, the equivalent baseline A0 + q²/p. */
    Optional<String> before(WellResult well) {
        List<WellReadings.Point> between = well.trace().readings().between();
        if (between.isEmpty() || well.trace().change().isEmpty()) {
            return first(well);
        }
        if (step.number() > 1) {
            return Optional.empty();
        }
        String a1 = single(well.well(), between.get(between.size() - 1).ref());
        String a2 = draft.wells().cell(step.number(), well.well(), WellColumns.A_AFTER);
        return first(well)
                .flatMap(a0 -> fitting("IF(OR(" + a2 + "=\"\"," + a0 + "=\"\"),\"\"," + a0 + "+(" + a1 + "-" + a0
                        + ")^2/(" + a2 + "-" + a0 + ")" + scarce(a0, a1, a2) + ")"));
    }

    /** Reactants that are not in excess: Π (C - p) / (C - q). */
    private String scarce(String a0, String a1, String a2) {
        return step.step().reactantAbsorbances(draft.analysis().assay().method().lightPath()).stream()
                .map(c -> "*(" + c + "-" + a2 + "+" + a0 + ")/(" + c + "-" + a1 + "+" + a0 + ")")
                .collect(java.util.stream.Collectors.joining());
    }

    private Optional<String> first(WellResult well) {
        if (step.number() > 1) {
            return well.trace().change().isPresent() ? carried(well) : Optional.empty();
        }
        WellReadings readings = well.trace().readings();
        if (well.trace().change().isEmpty()) {
            return lost(well.well(), soleBefore);
        }
        Change change = well.trace().change().get();
        List<WellReadings.Point> points = readings.baseline();
        if (draft.analysis().assay().method().before() == Before.LAST) {
            return Optional.of(single(well.well(), points.get(points.size() - 1).ref()));
        }
        if (points.size() == 1) {
            return Optional.of(single(well.well(), points.get(0).ref()));
        }
        List<Integer> leftOut = change.baseline().leftOut();
        Selection selection = new Selection(draft.readings(), well.well(), points, index -> !leftOut.contains(index));
        boolean line = draft.analysis().assay().method().before() == Before.LINE
                && points.stream().allMatch(WellReadings.Point::timed)
                && hasTwoTimes(points, leftOut);
        return fitting(line ? selection.intercept() : selection.mean());
    }

    private static boolean hasTwoTimes(List<WellReadings.Point> points, List<Integer> leftOut) {
        double first = Double.NaN;
        for (int i = 0; i < points.size(); i++) {
            if (!leftOut.contains(i)) {
                double time = points.get(i).timeS();
                if (!Double.isNaN(first) && time != first) {
                    return true;
                }
                first = time;
            }
        }
        return false;
    }

    /** A well without a change has no absorbance before or after unless both its readings become numbers. */
    private Optional<String> lost(Well well, Optional<Ref> wanted) {
        boolean coupled = step.step().signalFormula() != SignalFormula.DIFFERENCE;
        if (coupled
                || soleBefore.isEmpty()
                || soleAfter.isEmpty()
                || !has(well, soleBefore.get())
                || !has(well, soleAfter.get())) {
            return Optional.empty();
        }
        String before = draft.readings().cell(well, soleBefore.get());
        String after = draft.readings().cell(well, soleAfter.get());
        return wanted.map(ref ->
                "IF(COUNT(" + before + "," + after + ")=2," + draft.readings().cell(well, ref) + ",\"\")");
    }

    private boolean has(Well well, Ref ref) {
        return ref.index()
                < draft.analysis().assay().readings().get(ref.taken()).series().size(well);
    }

    private String single(Well well, Ref ref) {
        String cell = draft.readings().cell(well, ref);
        return "IF(ISNUMBER(" + cell + ")," + cell + ",\"\")";
    }

    /** The step before at this trigger: its last reading, or its finished line. */
    private Optional<String> carried(WellResult well) {
        StepAnalysis last = draft.analysis().steps().get(step.number() - 2);
        WellResult same = last.wells().stream()
                .filter(each -> each.well().equals(well.well()))
                .findFirst()
                .orElseThrow();
        List<WellReadings.Point> points = same.trace().readings().after();
        if (last.step().creep() == Creep.NONE) {
            return Optional.of(single(well.well(), points.get(points.size() - 1).ref()));
        }
        String after = draft.wells().cell(last.number(), well.well(), WellColumns.A_AFTER);
        boolean goesOn = same.trace().creepPerMin().isPresent() && last.step().creepOwner() == CreepOwner.NOTHING;
        if (!goesOn) {
            return Optional.of(after);
        }
        String creep = draft.wells().cell(last.number(), well.well(), WellColumns.CREEP_PER_MIN);
        String time = draft.wells().cell(last.number(), well.well(), WellPlaces.Working.NEXT_TRIGGER);
        return Optional.of(
                "IF(OR(" + after + "=\"\"," + creep + "=\"\"),\"\"," + after + "+" + creep + "/60*" + time + ")");
    }

    /** Whether the absorbance after the reaction is that of the line through the finished part. */
    static boolean isLine(WellResult well) {
        return well.trace()
                .change()
                .filter(change -> change.reading().isEmpty())
                .flatMap(change -> change.finished().filter(part -> part.intercept() == change.after()))
                .isPresent();
    }

    /** The absorbance after the reaction, at the trigger. */
    Optional<String> after(WellResult well) {
        if (well.trace().change().isEmpty()) {
            return step.number() == 1 ? lost(well.well(), soleAfter) : Optional.empty();
        }
        Change change = well.trace().change().get();
        if (change.reading().isPresent()) {
            List<WellReadings.Point> points = well.trace().readings().after();
            return Optional.of(
                    single(well.well(), points.get(change.reading().getAsInt()).ref()));
        }
        return isLine(well) ? fitting(finished(well).intercept()) : Optional.empty();
    }

    /** The creep in absorbance per minute. */
    Optional<String> creep(WellResult well) {
        return isLine(well) ? fitting(finished(well).slope("60*")) : Optional.empty();
    }

    private Selection finished(WellResult well) {
        FinishedPart part = well.trace().change().flatMap(Change::finished).orElseThrow();
        return new Selection(
                draft.readings(), well.well(), well.trace().readings().after(), part::uses);
    }

    private static Optional<String> fitting(String formula) {
        return formula.length() > LONGEST ? Optional.empty() : Optional.of(formula);
    }
}
