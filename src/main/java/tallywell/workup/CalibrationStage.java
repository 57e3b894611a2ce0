package tallywell.workup;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.curve.Calibration;
import tallywell.curve.Calibrator;
import tallywell.curve.FittedVariance;
import tallywell.curve.Model;
import tallywell.curve.SingleStandard;
import tallywell.curve.StandardsException;
import tallywell.curve.Weigher;
import tallywell.curve.Weighting;
import tallywell.method.CalibrationRule;
import tallywell.method.Step;
import tallywell.method.Weights;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Quantity;

/** Makes the calibration of a step from its standards; blanks are not points. */
final class CalibrationStage {
    private CalibrationStage() {}

    /** A calibration and the wells that are its points, in order. */
    record Made(Optional<Calibration> calibration, List<Well> wells) {}

    /** A standard well with what it holds, in g/L, and its net ΔA. */
    private record Point(Well well, double level, double net) {}

    static Made of(Assay assay, Step step, List<WellTrace> traces, NetChanges net) throws InputException {
        if (step.calibration() instanceof CalibrationRule.ByAbsorptivity) {
            return new Made(Optional.empty(), List.of());
        }
        List<Point> points = points(step, traces, net);
        double[] levels = points.stream().mapToDouble(Point::level).toArray();
        double[] nets = points.stream().mapToDouble(Point::net).toArray();
        try {
            Calibration calibration = step.calibration() instanceof CalibrationRule.ByStandards by
                    ? Calibrator.fit(
                            levels, nets, model(by), weigher(assay, step, by, new Scattered(traces, net, points)))
                    : SingleStandard.fit(levels, nets);
            return new Made(
                    Optional.of(calibration), points.stream().map(Point::well).toList());
        } catch (StandardsException e) {
            String wells = Means.words(
                    e.points().isEmpty()
                            ? points.stream().map(Point::well).toList()
                            : e.points().stream()
                                    .map(index -> points.get(index).well())
                                    .toList());
            throw new InputException(
                    assay.place(),
                    "standards of " + step.analyte().name() + (wells.isEmpty() ? "" : " (" + wells + ")") + ": "
                            + e.getMessage(),
                    e);
        }
    }

    private static List<Point> points(Step step, List<WellTrace> traces, NetChanges net) {
        Conversion conversion = new Conversion(step.analyte(), step.report());
        List<Point> points = new ArrayList<>();
        for (WellTrace trace : traces) {
            if (trace.used() && trace.content() instanceof Content.Standard standard) {
                Optional<Quantity> level = standard.level().of(step.analyte().name());
                OptionalDouble value = net.net(trace, java.util.EnumSet.noneOf(Flag.class));
                if (level.isPresent() && value.isPresent()) {
                    points.add(new Point(trace.well(), conversion.gPerL(level.get()), value.getAsDouble()));
                }
            }
        }
        return points;
    }

    private static Model model(CalibrationRule.ByStandards by) {
        return Model.of(by.model().word()).orElseThrow(() -> new AssertionError("no curve for " + by.model()));
    }

    /** What weights can be fitted to. */
    private record Scattered(List<WellTrace> traces, NetChanges net, List<Point> points) {}

    private static Weigher weigher(Assay assay, Step step, CalibrationRule.ByStandards by, Scattered found)
            throws InputException {
        if (by.weights() != Weights.VARIANCE_FUNCTION) {
            return Weighting.of(by.weights().word())
                    .orElseThrow(() -> new AssertionError("no weights for " + by.weights()));
        }
        double largest = found.points().stream()
                .mapToDouble(point -> Math.abs(point.net()))
                .max()
                .orElse(0);
        Optional<Repeatability> scatter = Repeatability.of(found.traces(), found.net());
        // Without a net ΔA that differs from 0 the fit itself says what is wrong.
        if (!(largest > 0)) {
            return Weighting.NONE;
        }
        if (scatter.isEmpty()) {
            throw new InputException(
                    assay.place(),
                    "standards of " + step.analyte().name()
                            + ": found no replicates that differ, which the weights variance-function are fitted to;"
                            + " expected two wells or more of samples, controls, standards or blanks, or weights none");
        }
        return FittedVariance.ofBlank(scatter.get().function(), largest);
    }
}
