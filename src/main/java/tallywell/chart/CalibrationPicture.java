package tallywell.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.OptionalDouble;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.Range;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import tallywell.curve.Calibration;
import tallywell.curve.Standard;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * The calibration of a step: standards, the curve through them, and where the samples lie on it; below, how far each
 * standard lies off the curve.
 */
public final class CalibrationPicture implements Picture {
    private static final double WIDTH = 700;
    private static final double HEIGHT = 430;
    private static final int CURVE_STEPS = 120;
    private static final double PER_MILLI = 1000;
    private static final double LEAST_RESIDUAL_MA = 1;

    private final StepAnalysis step;
    private final String analyte;
    private final Calibration calibration;

    private CalibrationPicture(StepAnalysis step, String analyte) {
        this.step = step;
        this.analyte = analyte;
        this.calibration = step.calibration()
                .orElseThrow(() -> new IllegalArgumentException("step must have a calibration but was without"));
    }

    /**
     * The picture of a step.
     *
     * @param step that is calibrated by standards
     * @param analyte what it measures
     */
    public static CalibrationPicture of(StepAnalysis step, String analyte) {
        return new CalibrationPicture(step, analyte);
    }

    @Override
    public double width() {
        return WIDTH;
    }

    @Override
    public double height() {
        return HEIGHT;
    }

    @Override
    public void draw(Graphics2D to) {
        chart().draw(to, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
    }

    private JFreeChart chart() {
        NumberAxis level = TracePicture.axis(analyte + " in the solution pipetted, g/L");
        double span = calibration.highest() - Math.min(0, calibration.lowest());
        level.setRange(Math.min(0, calibration.lowest()) - 0.02 * span, calibration.highest() + 0.03 * span);
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(level);
        both.setGap(10);
        XYPlot points = points();
        both.add(points, 7);
        both.add(residuals(), 2);
        JFreeChart chart = new JFreeChart("Calibration, " + analyte, Ink.bold(13), both, false);
        chart.setBackgroundPaint(Ink.CARD);
        chart.setPadding(new RectangleInsets(4, 4, 4, 10));
        chart.getTitle().setPaint(Ink.TEXT);
        chart.getTitle().setHorizontalAlignment(HorizontalAlignment.LEFT);
        chart.addSubtitle(TracePicture.legend(points));
        return chart;
    }

    private XYPlot points() {
        NumberAxis axis = TracePicture.axis("net ΔA");
        XYSeriesCollection marks = new XYSeriesCollection();
        XYLineAndShapeRenderer shapes = new XYLineAndShapeRenderer(false, true);
        XYSeries standards = new XYSeries("standard", false);
        calibration.standards().forEach(each -> standards.add(each.level(), each.response()));
        XYSeries samples = new XYSeries("well of a sample, control or spike", false);
        for (WellResult well : step.wells()) {
            place(well).ifPresent(x -> samples.add(x, well.netDeltaA().orElseThrow()));
        }
        add(marks, shapes, samples, triangle(3.4), Ink.ATTENTION, false);
        add(marks, shapes, standards, dot(3), Ink.GOOD, true);
        XYPlot plot = TracePicture.plot(axis);
        plot.setDataset(0, curve());
        XYLineAndShapeRenderer line = new XYLineAndShapeRenderer(true, false);
        line.setSeriesPaint(0, Ink.ACCENT);
        line.setSeriesStroke(0, Ink.pen(1.4));
        plot.setRenderer(0, line);
        plot.setDataset(1, marks);
        plot.setRenderer(1, shapes);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        axis.setRange(range(plot));
        return plot;
    }

    /** Where a well lies on the axis of levels; nowhere for blanks, standards and what the standards do not reach. */
    static OptionalDouble place(WellResult well) {
        boolean isMeasured = switch (well.content().role()) {
            case "sample", "control", "spike" -> well.used();
            default -> false;
        };
        return isMeasured && well.netDeltaA().isPresent() ? well.concentration() : OptionalDouble.empty();
    }

    private static Range range(XYPlot plot) {
        double low = 0;
        double high = 0;
        for (int i = 0; i < 2; i++) {
            XYSeriesCollection set = (XYSeriesCollection) plot.getDataset(i);
            for (int series = 0; series < set.getSeriesCount(); series++) {
                if (!set.getSeries(series).isEmpty()) {
                    low = Math.min(low, set.getSeries(series).getMinY());
                    high = Math.max(high, set.getSeries(series).getMaxY());
                }
            }
        }
        double margin = 0.05 * Math.max(high - low, 1e-3);
        return new Range(low - margin, high + margin);
    }

    private XYSeriesCollection curve() {
        String name = calibration.curve().model().word();
        XYSeries curve = new XYSeries(name.startsWith("line") ? "straight line" : "curve (" + name + ")", false);
        double from = calibration.lowest();
        double to = calibration.highest();
        for (int i = 0; i <= CURVE_STEPS; i++) {
            double x = from + (to - from) * i / CURVE_STEPS;
            curve.add(x, calibration.curve().at(x));
        }
        return new XYSeriesCollection(curve);
    }

    private XYPlot residuals() {
        XYSeries off = new XYSeries("residual", false);
        double most = LEAST_RESIDUAL_MA;
        for (Standard each : calibration.standards()) {
            double residual = PER_MILLI * calibration.residual(each);
            most = Math.max(most, Math.abs(residual));
            off.add(each.level(), residual);
        }
        NumberAxis axis = TracePicture.axis("residual, mA");
        axis.setRange(-1.25 * most, 1.25 * most);
        XYSeriesCollection marks = new XYSeriesCollection();
        XYLineAndShapeRenderer shapes = new XYLineAndShapeRenderer(false, true);
        add(marks, shapes, off, dot(2.6), Ink.GOOD, true);
        shapes.setDefaultSeriesVisibleInLegend(false);
        XYPlot plot = TracePicture.plot(axis);
        plot.setDataset(0, marks);
        plot.setRenderer(0, shapes);
        plot.addRangeMarker(new ValueMarker(0, Ink.SOFT, Ink.pen(0.8)), Layer.BACKGROUND);
        return plot;
    }

    private static void add(
            XYSeriesCollection set,
            XYLineAndShapeRenderer shapes,
            XYSeries series,
            Shape shape,
            Color colour,
            boolean filled) {
        if (series.isEmpty()) {
            return;
        }
        int index = set.getSeriesCount();
        set.addSeries(series);
        shapes.setSeriesShape(index, shape);
        shapes.setSeriesPaint(index, colour);
        shapes.setSeriesFillPaint(index, filled ? colour : Ink.CARD);
        shapes.setSeriesOutlinePaint(index, colour);
        shapes.setUseFillPaint(true);
        shapes.setUseOutlinePaint(true);
        shapes.setDrawOutlines(true);
    }

    private static Shape dot(double r) {
        return new Ellipse2D.Double(-r, -r, 2 * r, 2 * r);
    }

    private static Shape triangle(double r) {
        Path2D path = new Path2D.Double();
        path.moveTo(0, -r);
        path.lineTo(r, 0.8 * r);
        path.lineTo(-r, 0.8 * r);
        path.closePath();
        return path;
    }
}
