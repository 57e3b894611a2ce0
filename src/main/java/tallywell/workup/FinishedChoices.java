package tallywell.workup;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import tallywell.method.Creep;
import tallywell.method.Run;
import tallywell.method.SignalFormula;
import tallywell.method.Step;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;

/**
 * How late an analyst may let the finished part of a well begin: it needs two readings, in every step that has a line or a curve.
 *
 * <p>Wells with fewer than two readings after a trigger have no finished part, whatever was chosen, and are flagged for it.
 */
public final class FinishedChoices {
    private final Assay assay;
    private final Timeline timeline;

    private FinishedChoices(Assay assay) throws InputException {
        this.assay = assay;
        this.timeline = new Timeline(assay);
    }

    /**
     * The choice for each well.
     *
     * @param name of the run, for messages
     * @throws InputException if a well has two
     */
    public static Map<Well, Run.FinishedFrom> byWell(String name, List<Run.FinishedFrom> choices)
            throws InputException {
        Map<Well, Run.FinishedFrom> byWell = new HashMap<>();
        for (Run.FinishedFrom each : choices) {
            for (Well well : each.wells()) {
                Run.FinishedFrom before = byWell.put(well, each);
                if (before != null) {
                    throw new InputException(
                            new Place.InFile(name, each.line() > 0 ? "line " + each.line() : ""),
                            "found a second 'finished-from' for " + well
                                    + (before.line() > 0 ? " (the first is in line " + before.line() + ")" : "")
                                    + "; expected one for each well");
                }
            }
        }
        return byWell;
    }

    /**
     * Refuses choices that come too late.
     *
     * @throws InputException with every one of them
     */
    static void check(Assay assay) throws InputException {
        if (assay.finishedFrom().isEmpty()) {
            return;
        }
        FinishedChoices choices = new FinishedChoices(assay);
        List<Notice> faults = new ArrayList<>();
        for (Map.Entry<Well, Run.FinishedFrom> each : new TreeMap<>(assay.finishedFrom()).entrySet()) {
            OptionalDouble latest = choices.latest(each.getKey());
            if (latest.isPresent() && each.getValue().timeS() > latest.getAsDouble()) {
                faults.add(Notice.error(
                        new Place.InFile(assay.name(), "line " + each.getValue().line()),
                        "found 'finished-from' with a time of "
                                + seconds(each.getValue().timeS())
                                + " for " + each.getKey()
                                + ", which leaves fewer than two of its readings; expected at most "
                                + seconds(latest.getAsDouble()) + " from its trigger"));
            }
        }
        if (!faults.isEmpty()) {
            throw new InputException(faults);
        }
    }

    private static String seconds(double timeS) {
        return Numbers.plain(timeS) + " s";
    }

    /**
     * The latest start that leaves each of some wells two readings in each step, in s from the trigger.
     *
     * @param worked the plate
     * @return empty where none of them has two readings
     */
    public static OptionalDouble latestS(Analysis worked, Collection<Well> wells) {
        FinishedChoices choices;
        try {
            choices = new FinishedChoices(worked.assay());
        } catch (InputException e) {
            throw new AssertionError("a plate that was worked up has its triggers", e);
        }
        return wells.stream()
                .map(choices::latest)
                .flatMapToDouble(OptionalDouble::stream)
                .min();
    }

    private OptionalDouble latest(Well well) {
        OptionalDouble latest = OptionalDouble.empty();
        int trigger = 0;
        for (Step step : assay.method().steps()) {
            int triggers = step.signalFormula().triggers();
            // A step with two triggers is worked up by what follows the second.
            int own = step.signalFormula() == SignalFormula.EQUILIBRIUM_COUPLED ? trigger + 1 : trigger;
            trigger += triggers;
            List<WellReadings.Point> after = timeline.of(well, own).after();
            boolean timed = after.stream().allMatch(WellReadings.Point::timed);
            if (step.creep() != Creep.NONE && timed && after.size() >= 2) {
                double before = after.get(after.size() - 2).timeS();
                latest = OptionalDouble.of(Math.min(before, latest.orElse(before)));
            }
        }
        return latest;
    }
}
