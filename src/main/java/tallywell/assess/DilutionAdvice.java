package tallywell.assess;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.method.DilutionSeries;
import tallywell.method.Limits;
import tallywell.quantity.Dilution;
import tallywell.workup.Analysis;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;

/**
 * At which dilution of the laboratory's own series a result is to be repeated.
 *
 * <pre>{@code
 * wanted   = dilution · net ΔA / middle of the range
 * at least = dilution · net ΔA / top of the range        where it was too high
 * }</pre>
 *
 * <p>The range is the window of net ΔA of the method and that of the standards, whichever is narrower.
 */
final class DilutionAdvice {
    /** Where net ΔA says nothing of how much more, it is at least this much. */
    private static final double AT_LEAST = 2;

    /** Where net ΔA is too high, and the dilution used is the nearest one all the same, a step of this much at least. */
    private static final double ONE_STEP = 1.5;

    private final DilutionSeries series;
    private final double used;
    private final OptionalDouble net;
    private final Optional<Range> range;

    /** The net ΔA that can be used. */
    private record Range(double middle, double top) {}

    DilutionAdvice(Analysis analysis, Result result) {
        series = analysis.assay().dilutions();
        used = result.dilution().factor();
        net = result.netDeltaA();
        range = range(analysis.stepOf(result));
    }

    /** The next dilution that is at least some times the one used. */
    Advice timesMore(double times) {
        return new Advice.Dilute(series.next(used * times));
    }

    /** The dilution that brings net ΔA into the range, as near its middle as the series allows. */
    Advice higher() {
        if (isUnknown()) {
            return timesMore(AT_LEAST);
        }
        double least = used * net.getAsDouble() / range.orElseThrow().top();
        Dilution nearest = series.nearest(wanted(), least).orElseGet(() -> series.next(least));
        return nearest.factor() > used ? new Advice.Dilute(nearest) : timesMore(ONE_STEP);
    }

    /** The lower dilution that brings net ΔA nearest the middle of the range; undiluted where none is nearer. */
    Advice.Dilute lower() {
        Optional<Dilution> nearest = isUnknown() ? Optional.empty() : nearer();
        return new Advice.Dilute(nearest.orElse(Dilution.NONE));
    }

    /** The advice to dilute less, where that brings net ΔA nearer the middle of the range; empty where it does not. */
    Optional<Advice> finer() {
        if (range.isEmpty() || !(used > 1)) {
            return Optional.empty();
        }
        return isUnknown() || nearer().isPresent() ? Optional.of(lower()) : Optional.empty();
    }

    private Optional<Dilution> nearer() {
        return series.nearest(wanted(), 1).filter(each -> each.factor() < used);
    }

    private boolean isUnknown() {
        return range.isEmpty() || !(net.orElse(0) > 0);
    }

    private double wanted() {
        return used * net.orElseThrow() / range.orElseThrow().middle();
    }

    /** Empty where nothing bounds it. */
    private static Optional<Range> range(StepAnalysis step) {
        Limits limits = step.step().limits();
        OptionalDouble least = limits.deltaALeast();
        OptionalDouble most = limits.deltaAMost();
        if (step.calibration().isPresent()) {
            Calibration calibration = step.calibration().get();
            double top = calibration.curve().at(calibration.highest());
            double bottom = calibration.curve().at(calibration.lowest());
            least = OptionalDouble.of(Math.max(least.orElse(bottom), bottom));
            most = OptionalDouble.of(Math.min(most.orElse(top), top));
        }
        if (most.isEmpty()) {
            return Optional.empty();
        }
        double middle = (Math.max(0, least.orElse(0)) + most.getAsDouble()) / 2;
        return middle > 0 && most.getAsDouble() > 0
                ? Optional.of(new Range(middle, most.getAsDouble()))
                : Optional.empty();
    }
}
