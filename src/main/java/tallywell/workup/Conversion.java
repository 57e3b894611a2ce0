package tallywell.workup;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.Analyte;
import tallywell.method.ReportRule;
import tallywell.method.Sample;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

/**
 * From the concentration of the solution pipetted to the value in the original sample, and between units.
 *
 * <pre>{@code
 * liquids, c in g/L after dilution, ρ in g/mL, M in g/mol:
 *   g/100 mL = c / 10   g/100 g = c / (10 ρ)   mg/kg = 1000 c / ρ   mmol/L = 1000 c / M
 * solids:
 *   g/100 g = c · extract mL / 1000 / mass g · 100
 * }</pre>
 */
final class Conversion {
    private static final double PER_MILLI = 1000;

    private final Analyte analyte;
    private final ReportRule report;

    Conversion(Analyte analyte, ReportRule report) {
        this.analyte = analyte;
        this.report = report;
    }

    /** A concentration in g/L, whichever way a file gave it. */
    double gPerL(Quantity quantity) {
        return quantity.unit().kind() == Kind.AMOUNT_CONCENTRATION
                ? quantity.base() * molarMass() / PER_MILLI
                : quantity.in(Unit.GRAM_PER_LITRE);
    }

    /** The unit that values of a sample are reported in; of a control or standard where there is none. */
    Unit unit(Optional<Sample> sample) {
        if (sample.isPresent() && sample.get().solid().isPresent()) {
            return report.solids();
        }
        // A control or standard has no density: what it holds per volume is all that can be said.
        return sample.isEmpty() && report.unit().kind() == Kind.CONTENT ? Unit.GRAM_PER_LITRE : report.unit();
    }

    /** What a concentration of the analyte is in the form that the report states, in g/L each. */
    private double inForm(double gPerL) {
        return report.as().isPresent() ? gPerL * report.as().get().massRatio(molarMass()) : gPerL;
    }

    /**
     * A concentration as the report says it, in the form it states.
     *
     * @param gPerL concentration after dilution was put back, in g/L; of the extract for a solid
     * @param sample the sample, or empty for a control or standard
     */
    double reported(double gPerL, Optional<Sample> sample) {
        return stated(inForm(gPerL), sample);
    }

    private double stated(double gPerL, Optional<Sample> sample) {
        Unit unit = unit(sample);
        Optional<Sample.Extraction> solid = sample.flatMap(Sample::solid);
        if (solid.isPresent()) {
            double per100g =
                    gPerL * (solid.get().extractMl() / PER_MILLI) / solid.get().massG() * 100;
            return per100g / unit.factor();
        }
        return switch (unit.kind()) {
            case CONCENTRATION -> gPerL / unit.factor();
            case AMOUNT_CONCENTRATION -> PER_MILLI * gPerL / molarMassOfForm() / unit.factor();
            case CONTENT -> gPerL / (10 * density(sample)) / unit.factor();
            default -> throw new AssertionError("no unit for a result: " + unit);
        };
    }

    /** An assigned value of a control, which is of the form that the report states, in the unit that controls are reported in; empty if its unit is of another sort. */
    OptionalDouble assigned(Quantity quantity) {
        Unit unit = unit(Optional.empty());
        if (quantity.unit() == unit) {
            return OptionalDouble.of(quantity.value());
        }
        if (quantity.unit().kind() == Kind.CONTENT) {
            return OptionalDouble.empty();
        }
        double gPerL = quantity.unit().kind() == Kind.AMOUNT_CONCENTRATION
                ? quantity.base() * molarMassOfForm() / PER_MILLI
                : quantity.in(Unit.GRAM_PER_LITRE);
        return OptionalDouble.of(stated(gPerL, Optional.empty()));
    }

    private double molarMassOfForm() {
        return report.as().isPresent() ? report.as().get().formula().molarMass() : molarMass();
    }

    private double molarMass() {
        return analyte.molarMass().orElseThrow(() -> new AssertionError("no molar mass for " + analyte.name()));
    }

    private static double density(Optional<Sample> sample) {
        return sample.map(Sample::densityGPerMl)
                .orElse(OptionalDouble.empty())
                .orElseThrow(() -> new AssertionError("no density"));
    }
}
