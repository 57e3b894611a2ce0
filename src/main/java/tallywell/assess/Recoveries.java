package tallywell.assess;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.Limits;
import tallywell.plate.Content;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.quantity.Quantity;
import tallywell.workup.Analysis;
import tallywell.workup.Result;

/**
 * Limits of recoveries. A control's own tolerance, drawn in the layout, comes before the limits of the method.
 */
public final class Recoveries {
    private Recoveries() {}

    /**
     * Limits in percent, either of which may be open.
     *
     * @param least smallest
     * @param most largest
     * @param source where they come from
     */
    public record Range(OptionalDouble least, OptionalDouble most, String source) {
        /** Whether there is no limit. */
        public boolean isOpen() {
            return least.isEmpty() && most.isEmpty();
        }

        boolean holds(double percent) {
            return !(least.isPresent() && percent < least.getAsDouble())
                    && !(most.isPresent() && percent > most.getAsDouble());
        }

        String words() {
            String from = least.isPresent() ? Numbers.rounded(least.getAsDouble(), 4) + " %" : "";
            String to = most.isPresent() ? Numbers.rounded(most.getAsDouble(), 4) + " %" : "";
            return from.isEmpty() ? "at most " + to : to.isEmpty() ? "at least " + from : from + " to " + to;
        }
    }

    static boolean isOut(Analysis analysis, Result result) {
        return result.recoveryPercent().isPresent()
                && !range(analysis, result).holds(result.recoveryPercent().getAsDouble());
    }

    /** Whether the criterion fails: the recovery is out of its limits, or there is none for want of a value. */
    static boolean fails(Analysis analysis, Result result) {
        boolean without = result.recoveryPercent().isEmpty()
                && result.value().isEmpty()
                && isExpected(analysis, result)
                && !range(analysis, result).isOpen();
        return without || isOut(analysis, result);
    }

    /** Whether the layout says what a control holds of the analyte, or what was added to a spike. */
    private static boolean isExpected(Analysis analysis, Result result) {
        return analysis.assay().layout().at(result.wells().get(0)) instanceof Content.Spike spike
                ? spike.added()
                        .of(analysis.stepOf(result).step().analyte().name())
                        .isPresent()
                : result.assigned().isPresent();
    }

    /** The limits of a control or spike. */
    public static Range range(Analysis analysis, Result result) {
        Limits limits = analysis.stepOf(result).step().limits();
        if (result.role().equals("spike")) {
            return new Range(percent(limits.spikeLeast()), percent(limits.spikeMost()), "method, spike-recovery");
        }
        Content content = analysis.assay().layout().at(result.wells().get(0));
        Optional<Quantity> tolerance =
                content instanceof Content.Control control ? control.tolerance() : Optional.empty();
        OptionalDouble assigned = result.assigned();
        if (tolerance.isPresent() && assigned.isPresent() && assigned.getAsDouble() > 0) {
            double percent = tolerance.get().unit().kind() == Kind.RATIO
                    ? 100 * tolerance.get().base()
                    : 100 * inUnitOf(analysis, result, tolerance.get(), content) / assigned.getAsDouble();
            return new Range(
                    OptionalDouble.of(100 - percent),
                    OptionalDouble.of(100 + percent),
                    "layout, tolerance of the control");
        }
        return new Range(percent(limits.controlLeast()), percent(limits.controlMost()), "method, control-recovery");
    }

    /** The tolerance scales as the assigned value does, whose unit in the layout and in the report may differ. */
    private static double inUnitOf(Analysis analysis, Result result, Quantity tolerance, Content content) {
        Optional<Quantity> assigned = ((Content.Control) content)
                .assigned()
                .of(analysis.stepOf(result).step().analyte().name());
        boolean same = assigned.isPresent()
                && assigned.get().unit().kind() == tolerance.unit().kind();
        return same && assigned.get().base() > 0
                ? tolerance.base() / assigned.get().base() * result.assigned().orElse(0)
                : tolerance.value();
    }

    private static OptionalDouble percent(OptionalDouble fraction) {
        return fraction.isPresent() ? OptionalDouble.of(100 * fraction.getAsDouble()) : OptionalDouble.empty();
    }
}
