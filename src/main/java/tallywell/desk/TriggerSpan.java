package tallywell.desk;

import java.util.List;
import java.util.Optional;
import tallywell.method.AssayMethod;
import tallywell.plate.ReadingSeries;
import tallywell.plate.Well;

/**
 * Where a trigger inside a single series stands, and between which times it can be moved, in s of the file's own time.
 *
 * @param atS where it stands
 * @param fromS it must come after this
 * @param toS and not after this
 */
public record TriggerSpan(double atS, double fromS, double toS) {
    private static final double LEAST_S = 1;

    /** The trigger of a step, from 1. */
    static Optional<TriggerSpan> of(RunDraft draft, int step) {
        if (draft.readings().size() != 1 || draft.method().isEmpty()) {
            return Optional.empty();
        }
        AssayMethod method = draft.method().get().value();
        List<Double> triggers = draft.readings().get(0).triggerAtS();
        boolean oneEach = method.triggers() == method.steps().size();
        if (!oneEach
                || triggers.size() < step
                || triggers.size() != method.steps().size()) {
            return Optional.empty();
        }
        ReadingSeries series = draft.readings().get(0).block().series();
        double first = Double.POSITIVE_INFINITY;
        double last = Double.NEGATIVE_INFINITY;
        for (Well well : series.wells()) {
            first = Math.min(first, series.timeS(well, 0));
            last = Math.max(last, series.timeS(well, series.size(well) - 1));
        }
        return Optional.of(new TriggerSpan(
                triggers.get(step - 1),
                step == 1 ? first : triggers.get(step - 2),
                step == triggers.size() ? last : triggers.get(step)));
    }

    /** The nearest whole second, or place within the bounds, to a time. */
    public double near(double timeS) {
        return Math.max(fromS + LEAST_S, Math.min(toS - LEAST_S, Math.rint(timeS)));
    }
}
