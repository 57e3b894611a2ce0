package tallywell.plan;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.AssayMethod;
import tallywell.method.CalibrationRule;
import tallywell.method.Step;
import tallywell.method.Volumes;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

/**
 * What a step can see of the solution pipetted, at the sample volume of the method.
 *
 * <pre>{@code
 * factor = V M / (ε d v s)      concentration for a net ΔA of 1
 * range  = factor · window of net ΔA, within the lowest and highest standard where standards make the calibration
 * }</pre>
 *
 * @param lowest concentration in g/L; empty where nothing bounds it
 * @param highest concentration in g/L; empty where nothing bounds it
 * @param factor concentration in g/L for a net ΔA of 1; empty where the method lacks a constant for it
 */
public record WorkingRange(OptionalDouble lowest, OptionalDouble highest, OptionalDouble factor) {
    /** The range of a step; the standards of the layout bound it where the method calibrates by them. */
    public static WorkingRange of(AssayMethod method, Step step, Optional<Layout> layout) {
        OptionalDouble factor = factor(method, step);
        OptionalDouble low = scaled(step.limits().deltaALeast(), factor);
        OptionalDouble high = scaled(step.limits().deltaAMost(), factor);
        if (step.calibration() instanceof CalibrationRule.ByAbsorptivity || layout.isEmpty()) {
            return new WorkingRange(low, high, factor);
        }
        double[] levels = levels(step, layout.get());
        if (levels.length == 0) {
            return new WorkingRange(low, high, factor);
        }
        double first = levels[0];
        double last = levels[levels.length - 1];
        boolean single = step.calibration() instanceof CalibrationRule.BySingleStandard;
        double bottom = Math.max(low.orElse(0), single ? 0 : first);
        double top = Math.min(high.orElse(last), last);
        // A window and standards that do not meet leave the standards, outside of which nothing is reported.
        return bottom < top
                ? new WorkingRange(OptionalDouble.of(bottom), OptionalDouble.of(top), factor)
                : new WorkingRange(OptionalDouble.of(single ? 0 : first), OptionalDouble.of(last), factor);
    }

    /** The levels of the standards in g/L, ascending. */
    static double[] levels(Step step, Layout layout) {
        return layout.where(content -> content instanceof Content.Standard).stream()
                .map(well -> ((Content.Standard) layout.at(well))
                        .level()
                        .of(step.analyte().name()))
                .flatMap(Optional::stream)
                .mapToDouble(level -> gPerL(level, step))
                .sorted()
                .toArray();
    }

    /** A concentration in g/L; amounts need the molar mass that {@link Feasibility#molarMasses} found to be there. */
    static double gPerL(Quantity quantity, Step step) {
        return quantity.unit().kind() == Kind.AMOUNT_CONCENTRATION
                ? quantity.base()
                        * step.analyte().molarMass().orElseThrow(() -> new AssertionError("no molar mass"))
                        / 1000
                : quantity.in(Unit.GRAM_PER_LITRE);
    }

    private static OptionalDouble factor(AssayMethod method, Step step) {
        if (step.volumes().isEmpty()
                || method.lightPath().isEmpty()
                || step.signal().absorptivity().isEmpty()
                || step.analyte().molarMass().isEmpty()) {
            return OptionalDouble.empty();
        }
        Volumes volumes = step.volumes().get();
        return OptionalDouble.of(volumes.afterTriggerUl()
                * step.analyte().molarMass().getAsDouble()
                / (step.signal().absorptivity().getAsDouble()
                        * method.lightPath().get().cm(volumes.afterTriggerUl())
                        * volumes.sampleUl()
                        * step.analyte().signalPerAnalyte()));
    }

    private static OptionalDouble scaled(OptionalDouble value, OptionalDouble factor) {
        return value.isPresent() && factor.isPresent()
                ? OptionalDouble.of(value.getAsDouble() * factor.getAsDouble())
                : OptionalDouble.empty();
    }

    /** The middle of the range; empty where nothing bounds it above. */
    OptionalDouble middle() {
        return highest.isPresent()
                ? OptionalDouble.of((lowest.orElse(0) + highest.getAsDouble()) / 2)
                : OptionalDouble.empty();
    }
}
