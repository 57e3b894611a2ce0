package tallywell.workup;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.AssayMethod;
import tallywell.method.Sample;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

/**
 * How a value follows from what the calibration says of a well: proportional, so that one factor tells it.
 *
 * <pre>{@code
 * value = perConcentration · concentration
 * concentration = perLevel · level = perNetDeltaA · net ΔA       by standards; by absorptivity
 * }</pre>
 */
public final class Scale {
    private final AssayMethod method;
    private final StepAnalysis step;
    private final Conversion conversion;

    /** The scale of a step. */
    public Scale(AssayMethod method, StepAnalysis step) {
        this.method = method;
        this.step = step;
        this.conversion = new Conversion(step.step().analyte(), step.step().report());
    }

    /** Value in the original sample, in its unit, for each g/L of the solution pipetted. */
    public double perConcentration(WellResult well) {
        double dilution = Values.dilution(well.content(), well.trace().sample()).factor();
        return conversion.reported(dilution, well.trace().sample());
    }

    /** A concentration of the solution pipetted, in {@link #unit}, for each g/L, in the form that the report states. */
    public double perGPerL() {
        return conversion.reported(1, Optional.empty());
    }

    /** The unit of the report for what is in a volume: that of the report, or g/L where that is a content. */
    public Unit unit() {
        return conversion.unit(Optional.empty());
    }

    /** A concentration of the analyte in g/L, whichever way a file gave it. */
    public double gPerL(Quantity quantity) {
        return conversion.gPerL(quantity);
    }

    /** Concentration of the solution pipetted for each g/L that the curve says: volume by the method over the own one. */
    public double perLevel(WellResult well) {
        return Values.volumeScale(step.step(), ownUl(well));
    }

    /** Concentration of the solution pipetted in g/L for each unit of net ΔA, by the molar absorptivity. */
    public double perNetDeltaA(WellResult well) {
        return Values.byAbsorptivity(method, step.step(), ownUl(well), 1);
    }

    private static OptionalDouble ownUl(WellResult well) {
        return well.trace().sample().map(Sample::volumeUl).orElse(OptionalDouble.empty());
    }
}
