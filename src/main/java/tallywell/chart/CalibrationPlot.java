package tallywell.chart;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.data.Range;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import tallywell.curve.Calibration;
import tallywell.curve.Inverse;
import tallywell.curve.Standard;
import tallywell.plate.Well;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * Draws the calibration of a step: standards, the curve through them with twice its standard uncertainty, and where the
 * samples lie on it; below, how far each standard lies off the curve. Windows, pictures and documents all show this.
 */
public final class CalibrationPlot {
    private static final int CURVE_STEPS = 120;
    private static final double COVERAGE = 2;
    private static final double PER_MILLI = 1000;

    private final StepAnalysis step;
    private final Calibration calibration;
    private final Collection<Well> selected;
    private final ChartColours colours;
    private final Axes axes;

    private CalibrationPlot(StepAnalysis step, Calibration calibration, Collection<Well> selected, ChartStyle style) {
        this.step = step;
        this.calibration = calibration;
        this.selected = selected;
        this.colours = style.colours();
        this.axes = new Axes(style);
    }

    /**
     * The chart of a calibration.
     *
     * @param step that is calibrated by standards
     * @param analyte what it measures
     * @param selected wells that stand out
     */
    public static JFreeChart of(StepAnalysis step, String analyte, Collection<Well> selected, ChartStyle style) {
        Calibration calibration = step.calibration()
                .orElseThrow(() -> new IllegalArgumentException("step must have a calibration but was without"));
        return new CalibrationPlot(step, calibration, selected, style).chart(analyte);
    }

    private JFreeChart chart(String analyte) {
        NumberAxis level = axes.axis(analyte + " in the solution pipetted, g/L");
        double from = Math.min(0, calibration.lowest());
        double span = calibration.highest() - from;
        level.setRange(from - 0.02 * span, calibration.highest() + 0.03 * span);
        XYPlot main = main();
        return axes.chart(level, main, Optional.of(axes.residuals(List.of(standards(true)))), main);
    }

    private XYPlot main() {
        YIntervalSeries curve = curve();
        List<Axes.Signs> signs = List.of(samples(false), samples(true), standards(false));
        double low = 0;
        double high = 0;
        for (int i = 0; i < curve.getItemCount(); i++) {
            low = Math.min(low, curve.getYLowValue(i));
            high = Math.max(high, curve.getYHighValue(i));
        }
        for (Axes.Signs each : signs) {
            if (!each.series().isEmpty()) {
                low = Math.min(low, each.series().getMinY());
                high = Math.max(high, each.series().getMaxY());
            }
        }
        double margin = 0.05 * Math.max(high - low, 1e-3);
        NumberAxis axis = axes.axis("net ΔA");
        axis.setRange(new Range(low - margin, high + margin));
        XYPlot plot = axes.field(axis);
        YIntervalSeriesCollection set = new YIntervalSeriesCollection();
        set.addSeries(curve);
        DeviationRenderer line = new DeviationRenderer(true, false);
        line.setSeriesPaint(0, colours.accent());
        line.setSeriesFillPaint(0, colours.tint());
        line.setAlpha(1);
        line.setSeriesStroke(0, Ink.pen(1.4));
        plot.setDataset(0, set);
        plot.setRenderer(0, line);
        axes.signs(plot, 1, signs);
        return plot;
    }

    /** Between the standards only: nothing is extrapolated. */
    private YIntervalSeries curve() {
        String model = calibration.curve().model().word();
        String name = model.startsWith("line") ? "straight line" : "curve (" + model + ")";
        boolean known = calibration.residualSd().isPresent();
        YIntervalSeries curve = new YIntervalSeries(known ? name + " ± 2 u" : name);
        double from = calibration.lowest();
        double to = calibration.highest();
        for (int i = 0; i <= CURVE_STEPS; i++) {
            double x = from + (to - from) * i / CURVE_STEPS;
            double y = calibration.curve().at(x);
            double u = COVERAGE * calibration.uAt(x).orElse(0);
            curve.add(x, y, y - u, y + u);
        }
        return curve;
    }

    private Axes.Signs standards(boolean residuals) {
        XYSeries series = new XYSeries("standard", false);
        for (Standard each : calibration.standards()) {
            series.add(each.level(), residuals ? PER_MILLI * calibration.residual(each) : each.response());
        }
        return new Axes.Signs(series, Axes.dot(3), true, colours.good());
    }

    private Axes.Signs samples(boolean among) {
        XYSeries series = new XYSeries(among ? "selected" : "well of a sample, control or spike", false);
        for (WellResult well : step.wells()) {
            if (selected.contains(well.well()) == among) {
                place(well).ifPresent(x -> series.add(x, well.netDeltaA().orElseThrow()));
            }
        }
        return among
                ? new Axes.Signs(series, Axes.triangle(5), true, colours.accent())
                : new Axes.Signs(series, Axes.triangle(3.4), false, colours.attention());
    }

    /**
     * Where a well lies on the axis of levels: where the curve gives its net ΔA, whatever its own volume. Nowhere for
     * blanks, standards and what the standards do not reach.
     */
    OptionalDouble place(WellResult well) {
        boolean isMeasured = switch (well.content().role()) {
            case "sample", "control", "spike" ->
                well.used() && well.concentration().isPresent();
            default -> false;
        };
        if (!isMeasured) {
            return OptionalDouble.empty();
        }
        double net = well.netDeltaA().orElseThrow();
        return calibration.invert(net) instanceof Inverse.Within within
                ? OptionalDouble.of(within.level())
                : calibration.curve().levelOf(net);
    }
}
