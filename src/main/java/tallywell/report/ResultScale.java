package tallywell.report;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tallywell.assess.Judgement;
import tallywell.method.Sample;
import tallywell.method.Volumes;
import tallywell.plate.Content;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.quantity.Unit;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;

/**
 * What 1 g/L of the solution pipetted stands for in the original sample: dilution, own volume and unit of one result,
 * as a number and as a formula.
 */
final class ResultScale {
    private static final double PER_MILLI = 1000;

    private final Draft draft;
    private final StepAnalysis step;
    private final Result result;
    private final Optional<Sample> sample;

    ResultScale(Draft draft, Judgement judgement) {
        this.draft = draft;
        this.result = judgement.result();
        this.step = draft.analysis().stepOf(result);
        this.sample = sampleOf(draft, result);
    }

    /** The sample of a sample or spike. */
    static Optional<Sample> sampleOf(Draft draft, Result result) {
        Content content = draft.analysis().assay().layout().at(result.wells().get(0));
        OptionalInt slot = WellColumns.slot(content);
        return slot.isPresent() ? draft.analysis().assay().samples().in(slot.getAsInt()) : Optional.empty();
    }

    Optional<Sample> sample() {
        return sample;
    }

    /** The value for 1 g/L. */
    double value() {
        double scale = result.dilution().factor() * form();
        if (ownVolume().isPresent()) {
            scale *= volumes().sampleUl() / ownVolume().getAsDouble();
        }
        Unit unit = result.unit();
        if (solid().isPresent()) {
            return scale * solid().get().extractMl() / PER_MILLI / solid().get().massG() * 100 / unit.factor();
        }
        return switch (unit.kind()) {
            case CONCENTRATION -> scale / unit.factor();
            case AMOUNT_CONCENTRATION -> scale * PER_MILLI / molarMass() / unit.factor();
            case CONTENT -> scale / (10 * density().orElseThrow()) / unit.factor();
            default -> throw new AssertionError("no unit for a result: " + unit);
        };
    }

    /** Mass of the form that the report states for each mass of analyte. */
    private double form() {
        return step.step()
                .report()
                .as()
                .map(form -> form.massRatio(step.step().analyte().molarMass().orElseThrow()))
                .orElse(1.0);
    }

    private double molarMass() {
        return step.step()
                .report()
                .as()
                .map(form -> form.formula().molarMass())
                .orElseGet(() -> step.step().analyte().molarMass().orElseThrow());
    }

    /** The formula for the same. */
    String formula() {
        int row = draft.results().row(result);
        CalibrationPlaces.Section section = draft.calibration().of(step.number());
        StringBuilder formula = new StringBuilder(ResultPlaces.own(row, ResultColumns.DILUTION));
        if (step.step().report().as().isPresent()) {
            formula.append('*').append(Numbers.plain(form()));
        }
        if (ownVolume().isPresent()) {
            formula.append('*')
                    .append(section.cell(CalibrationPlaces.Fact.VOLUME_SAMPLE, CalibrationPlaces.Scope.USED))
                    .append('/')
                    .append(ResultPlaces.own(row, ResultPlaces.Working.VOLUME));
        }
        if (solid().isPresent()) {
            formula.append('*')
                    .append(ResultPlaces.own(row, ResultPlaces.Working.EXTRACT))
                    .append("/1000/")
                    .append(ResultPlaces.own(row, ResultPlaces.Working.MASS))
                    .append("*100");
        } else if (result.unit().kind() == Kind.AMOUNT_CONCENTRATION) {
            formula.append("*1000/")
                    .append(
                            step.step().report().as().isPresent()
                                    ? Numbers.plain(molarMass())
                                    : section.cell(CalibrationPlaces.Fact.MOLAR_MASS, CalibrationPlaces.Scope.USED));
        } else if (result.unit().kind() == Kind.CONTENT) {
            formula.append("/(10*")
                    .append(ResultPlaces.own(row, ResultPlaces.Working.DENSITY))
                    .append(')');
        }
        double factor = result.unit().factor();
        return factor == 1
                ? formula.toString()
                : formula.append('/').append(Numbers.plain(factor)).toString();
    }

    /** The lowest or highest standard in the original sample, where standards bound what can be said. */
    OptionalDouble bound(boolean highest) {
        if (step.calibration().isEmpty()) {
            return OptionalDouble.empty();
        }
        var calibration = step.calibration().get();
        return OptionalDouble.of(value() * (highest ? calibration.highest() : calibration.lowest()));
    }

    OptionalDouble ownVolume() {
        return sample.isPresent() ? sample.get().volumeUl() : OptionalDouble.empty();
    }

    OptionalDouble density() {
        return sample.isPresent() ? sample.get().densityGPerMl() : OptionalDouble.empty();
    }

    Optional<Sample.Extraction> solid() {
        return sample.flatMap(Sample::solid);
    }

    private Volumes volumes() {
        return step.step().volumes().orElseThrow();
    }
}
