package tallywell.workup;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.curve.Calibration;
import tallywell.curve.Inverse;
import tallywell.method.AssayMethod;
import tallywell.method.CalibrationRule;
import tallywell.method.Sample;
import tallywell.method.Step;
import tallywell.method.Volumes;
import tallywell.plate.Content;
import tallywell.quantity.Dilution;

/**
 * From net ΔA to the value of each well.
 *
 * <pre>{@code
 * by absorptivity:  c = net · V · M / (ε · d · v · s)
 * by standards:     c = f⁻¹(net) · v method / v
 * }</pre>
 *
 * <p>c is in g/L of the solution pipetted; the dilution comes on top. Outside the standards there is no value.
 */
final class Values {
    private final AssayMethod method;
    private final Step step;
    private final Optional<Calibration> calibration;
    private final Conversion conversion;

    Values(AssayMethod method, Step step, Optional<Calibration> calibration) {
        this.method = method;
        this.step = step;
        this.calibration = calibration;
        this.conversion = new Conversion(step.analyte(), step.report());
    }

    List<WellResult> of(List<WellTrace> traces, NetChanges net) {
        return traces.stream().map(trace -> result(trace, net)).toList();
    }

    private WellResult result(WellTrace trace, NetChanges nets) {
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        flags.addAll(trace.flags());
        OptionalDouble net = nets.net(trace, flags);
        Content content = trace.content();
        OptionalDouble concentration = OptionalDouble.empty();
        if (net.isPresent() && !(content instanceof Content.Blank)) {
            concentration = concentration(net.getAsDouble(), trace.sample(), flags);
        }
        OptionalDouble value = concentration.isPresent()
                ? OptionalDouble.of(conversion.reported(
                        concentration.getAsDouble()
                                * dilution(content, trace.sample()).factor(),
                        trace.sample()))
                : OptionalDouble.empty();
        return new WellResult(trace, net, concentration, value, conversion.unit(trace.sample()), flags);
    }

    /** The dilution that stands between the original material and the solution pipetted. */
    static Dilution dilution(Content content, Optional<Sample> sample) {
        return content instanceof Content.Control control
                ? control.dilution()
                : sample.map(Sample::dilution).orElse(Dilution.NONE);
    }

    private OptionalDouble concentration(double net, Optional<Sample> sample, Set<Flag> flags) {
        OptionalDouble own = sample.isPresent() ? sample.get().volumeUl() : OptionalDouble.empty();
        if (calibration.isEmpty()) {
            return OptionalDouble.of(byAbsorptivity(method, step, own, net));
        }
        OptionalDouble level = level(calibration.get(), net, flags);
        if (level.isPresent()) {
            return OptionalDouble.of(level.getAsDouble() * volumeScale(step, own));
        }
        return OptionalDouble.empty();
    }

    private OptionalDouble level(Calibration curve, double net, Set<Flag> flags) {
        Inverse inverse = curve.invert(net);
        if (inverse instanceof Inverse.Within within) {
            return OptionalDouble.of(within.level());
        }
        if (inverse instanceof Inverse.Above) {
            flags.add(Flag.ABOVE_STANDARDS);
            return OptionalDouble.empty();
        }
        // The line of a single standard starts at the blank: what lies a little below is scatter about nothing.
        if (step.calibration() instanceof CalibrationRule.BySingleStandard) {
            return curve.curve().levelOf(net);
        }
        flags.add(Flag.BELOW_STANDARDS);
        return OptionalDouble.empty();
    }

    /** The concentration in g/L of the solution pipetted that a net ΔA stands for by the molar absorptivity. */
    static double byAbsorptivity(AssayMethod method, Step step, OptionalDouble ownUl, double net) {
        Volumes volumes = step.volumes().orElseThrow(() -> new AssertionError("no volumes"));
        double pathCm = method.lightPath()
                .orElseThrow(() -> new AssertionError("no light path"))
                .cm(volumes.afterTriggerUl());
        double molarMass = step.analyte().molarMass().orElseThrow(() -> new AssertionError("no molar mass"));
        double absorptivity = step.signal().absorptivity().orElseThrow(() -> new AssertionError("no absorptivity"));
        double sampleUl = ownUl.orElse(volumes.sampleUl());
        return net
                * volumes.afterTriggerUl()
                * molarMass
                / (absorptivity * pathCm * sampleUl * step.analyte().signalPerAnalyte());
    }

    /** Volume of sample by the method over the sample's own. */
    static double volumeScale(Step step, OptionalDouble ownUl) {
        return ownUl.isPresent()
                ? step.volumes()
                                .orElseThrow(() -> new AssertionError("no volumes"))
                                .sampleUl()
                        / ownUl.getAsDouble()
                : 1;
    }
}
