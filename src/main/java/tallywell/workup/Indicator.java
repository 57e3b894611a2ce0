package tallywell.workup;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tallywell.method.AssayMethod;
import tallywell.method.BatchLimits;
import tallywell.method.Creep;
import tallywell.method.Direction;
import tallywell.method.Signal;
import tallywell.method.SignalFormula;
import tallywell.method.Step;
import tallywell.plate.Content;
import tallywell.plate.Well;

/**
 * Judges for every well of a falling assay what is left of the indicator ({@link IndicatorLeft}), and marks the wells in
 * which it may have run out.
 *
 * <p>Steps that use up the same indicator one after the other share one supply: the baseline of the first of them.
 */
final class Indicator {
    /**
     * What must be left where the method says nothing, and the upper bound for plate and reagents where nothing says it,
     * in absorbance. Own choices: together they find an indicator that ran out where colour hides up to 0.23 of it, and pass
     * wells that keep 0.32 of theirs (IndicatorSimulationTest). Polystyrene plates with buffer read 0.04 to 0.12 at 340 nm
     * (common practice, no source).
     */
    static final double LEAST = 0.200;

    static final double BACKGROUND = 0.150;

    private final Step step;
    private final Map<Well, WellTrace> first;
    private final double dilutedBy;
    private final Map<String, Double> blankBefore;

    private Indicator(AssayMethod method, int index, int start, List<WellTrace> beginning) {
        this.step = method.steps().get(index);
        this.first = beginning.stream().collect(Collectors.toMap(WellTrace::well, Function.identity()));
        double factor = 1;
        for (WellTrace trace : beginning) {
            factor = Math.pow(trace.beforeFactor(), index - start);
        }
        this.dilutedBy = factor;
        this.blankBefore = new LinkedHashMap<>();
        beginning.stream()
                .filter(trace -> trace.used() && trace.content() instanceof Content.Blank blank && blank.triggered())
                .filter(trace -> before(trace).isPresent())
                .collect(Collectors.groupingBy(WellTrace::group))
                .forEach((group, blanks) -> blankBefore.put(
                        group,
                        Means.mean(blanks.stream()
                                .mapToDouble(trace -> before(trace).orElseThrow())
                                .toArray())));
    }

    /**
     * What is left in each well that was read; empty where the signal rises.
     *
     * @param index of the step, from 0
     * @param traces of the step
     * @param earlier the steps before it
     */
    static Map<Well, IndicatorLeft> of(
            AssayMethod method, int index, List<WellTrace> traces, List<StepAnalysis> earlier) {
        if (method.steps().get(index).signal().direction() != Direction.FALLS) {
            return Map.of();
        }
        int start = index;
        while (start > 0
                && isSame(
                        method.steps().get(start - 1).signal(),
                        method.steps().get(index).signal())) {
            start--;
        }
        List<WellTrace> beginning = start == index
                ? traces
                : earlier.get(start).wells().stream().map(WellResult::trace).toList();
        Indicator indicator = new Indicator(method, index, start, beginning);
        Map<Well, IndicatorLeft> left = new LinkedHashMap<>();
        for (WellTrace trace : traces) {
            indicator.left(trace).ifPresent(each -> left.put(trace.well(), each));
        }
        return left;
    }

    private static boolean isSame(Signal one, Signal other) {
        return one.direction() == other.direction()
                && one.species().equals(other.species())
                && one.wavelengthNm().equals(other.wavelengthNm());
    }

    private Optional<IndicatorLeft> left(WellTrace trace) {
        WellTrace beginning = first.get(trace.well());
        Double blank = blankBefore.get(trace.group());
        if (beginning == null
                || blank == null
                || before(beginning).isEmpty()
                || trace.change().isEmpty()) {
            return Optional.empty();
        }
        double before = before(beginning).getAsDouble();
        BatchLimits limits = step.limits().batch();
        double background = limits.background().orElse(BACKGROUND);
        return Optional.of(new IndicatorLeft(
                blank - background,
                background,
                limits.background().isPresent()
                        ? IndicatorLeft.BackgroundFrom.METHOD
                        : IndicatorLeft.BackgroundFrom.BOUND,
                Math.max(0, blank - before),
                before - end(trace),
                limits.indicatorLeft().orElse(LEAST)));
    }

    /** A before, diluted by what was added until the trigger of this step. */
    private OptionalDouble before(WellTrace trace) {
        if (trace.change().isEmpty()) {
            return OptionalDouble.empty();
        }
        if (step.signalFormula() == SignalFormula.DIFFERENCE) {
            return OptionalDouble.of(trace.change().get().before() * dilutedBy);
        }
        // The baseline of a step coupled to an equilibrium is an equivalent one; the indicator is that of A0.
        return trace.readings().baseline().stream()
                .mapToDouble(WellReadings.Point::absorbance)
                .average();
    }

    /** The lowest that counts: where creep is carried back, it went on until the last reading. */
    private double end(WellTrace trace) {
        double after = trace.change().orElseThrow().after();
        List<WellReadings.Point> readings = trace.readings().after();
        return step.creep() == Creep.NONE || readings.isEmpty()
                ? after
                : Math.min(after, readings.get(readings.size() - 1).absorbance());
    }

    /** The same wells, those marked in which the indicator may have run out. */
    static List<WellTrace> marked(Step step, List<WellTrace> traces, Map<Well, IndicatorLeft> left) {
        if (step.signal().direction() != Direction.FALLS) {
            return traces;
        }
        OptionalDouble read = step.limits().batch().absorbanceLeft();
        return traces.stream()
                .map(trace -> isLow(trace, left.get(trace.well()), read) ? trace.with(Flag.INDICATOR_LOW) : trace)
                .toList();
    }

    private static boolean isLow(WellTrace trace, @Nullable IndicatorLeft left, OptionalDouble read) {
        return left != null && left.isLow()
                || read.isPresent() && trace.after().orElse(Double.MAX_VALUE) < read.getAsDouble();
    }
}
