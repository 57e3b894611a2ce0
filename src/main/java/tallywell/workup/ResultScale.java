package tallywell.workup;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tallywell.curve.Calibration;
import tallywell.method.Sample;
import tallywell.method.Volumes;
import tallywell.plate.Content;
import tallywell.quantity.Unit;

/** What 1 g/L of the solution pipetted stands for in the original sample: dilution, own volume and unit of one result. */
public final class ResultScale {
    private static final double PER_MILLI = 1000;
    private static final double PER_CENT = 100;

    private final StepAnalysis step;
    private final Result result;
    private final Optional<Sample> sample;

    /** The scale of a result of an analysis. */
    public ResultScale(Analysis analysis, Result result) {
        this.result = result;
        this.step = analysis.stepOf(result);
        this.sample = sampleOf(analysis, result);
    }

    /** The sample of a sample or spike. */
    private static Optional<Sample> sampleOf(Analysis analysis, Result result) {
        Content content = analysis.assay().layout().at(result.wells().get(0));
        OptionalInt slot = content instanceof Content.Sample own
                ? OptionalInt.of(own.slot())
                : content instanceof Content.Spike spike ? OptionalInt.of(spike.of()) : OptionalInt.empty();
        return slot.isPresent() ? analysis.assay().samples().in(slot.getAsInt()) : Optional.empty();
    }

    /** The sample of a sample or spike. */
    public Optional<Sample> sample() {
        return sample;
    }

    /** The value, in the unit of the result, for 1 g/L. */
    public double value() {
        double scale = result.dilution().factor() * form();
        if (ownVolume().isPresent()) {
            scale *= volumes().sampleUl() / ownVolume().getAsDouble();
        }
        Unit unit = result.unit();
        if (solid().isPresent()) {
            return scale * solid().get().extractMl() / PER_MILLI / solid().get().massG() * PER_CENT / unit.factor();
        }
        return switch (unit.kind()) {
            case CONCENTRATION -> scale / unit.factor();
            case AMOUNT_CONCENTRATION -> scale * PER_MILLI / molarMass() / unit.factor();
            case CONTENT -> scale / (10 * density().orElseThrow()) / unit.factor();
            default -> throw new AssertionError("no unit for a result: " + unit);
        };
    }

    /** Mass of the form that the report states for each mass of analyte. */
    public double form() {
        return step.step()
                .report()
                .as()
                .map(form -> form.massRatio(step.step().analyte().molarMass().orElseThrow()))
                .orElse(1.0);
    }

    /** Molar mass in g/mol of what is reported. */
    public double molarMass() {
        return step.step()
                .report()
                .as()
                .map(form -> form.formula().molarMass())
                .orElseGet(() -> step.step().analyte().molarMass().orElseThrow());
    }

    /** The lowest or highest standard in the original sample, in the unit of the result, where standards bound what can be said. */
    public OptionalDouble bound(boolean highest) {
        if (step.calibration().isEmpty()) {
            return OptionalDouble.empty();
        }
        Calibration calibration = step.calibration().get();
        return OptionalDouble.of(value() * (highest ? calibration.highest() : calibration.lowest()));
    }

    /** Volume in µL of the sample, where it is not that of the method. */
    public OptionalDouble ownVolume() {
        return sample.isPresent() ? sample.get().volumeUl() : OptionalDouble.empty();
    }

    /** Density in g/mL, where the list has one. */
    public OptionalDouble density() {
        return sample.isPresent() ? sample.get().densityGPerMl() : OptionalDouble.empty();
    }

    /** Mass and extract of a solid. */
    public Optional<Sample.Extraction> solid() {
        return sample.flatMap(Sample::solid);
    }

    private Volumes volumes() {
        return step.step().volumes().orElseThrow();
    }
}
