package tallywell.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemSource;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.Range;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import tallywell.workup.WellResult;

/**
 * The trace of one well in one step: readings, baseline, finished part, what was fitted and ΔA at the trigger; the
 * residuals below, on a scale of their own.
 */
public final class TracePicture implements Picture {
    private static final double WIDTH = 700;
    private static final double HEIGHT = 500;

    /** Part of the time after the trigger that is kept free before it, for the measure of ΔA and its number. */
    private static final double ROOM = 0.19;

    /** A scale never shows less than this, so that the noise of a blank does not look like a reaction. */
    private static final double LEAST_SPAN = 0.04;

    private static final double LEAST_RESIDUAL_MA = 1;

    private final StepTraces step;
    private final WellResult well;
    private final TracePoints points;
    private final TraceLines lines;
    private final TraceWords words;

    private TracePicture(StepTraces step, WellResult well) {
        this.step = step;
        this.well = well;
        this.points = TracePoints.of(well.trace());
        this.lines = new TraceLines(well.trace(), points);
        this.words = new TraceWords(step, well);
    }

    /**
     * The picture of a well.
     *
     * @param step the step that the well was worked up in
     * @param well a well that has a trace
     */
    public static TracePicture of(StepTraces step, WellResult well) {
        if (!StepTraces.isTrace(well)) {
            throw new IllegalArgumentException("well must have a trace but was " + well.well() + " without");
        }
        return new TracePicture(step, well);
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

    /** The same as a chart, for a window that enlarges and reads values off; it may be changed. */
    public JFreeChart chart() {
        NumberAxis time = axis("minutes from the trigger");
        time.setRange(domain());
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(time);
        both.setGap(10);
        XYPlot trace = trace();
        both.add(trace, 7);
        both.add(residuals(), 2);
        JFreeChart chart = new JFreeChart(words.title(), Ink.bold(15), both, false);
        chart.setBackgroundPaint(Ink.CARD);
        chart.setPadding(new RectangleInsets(8, 10, 6, 14));
        chart.getTitle().setPaint(Ink.TEXT);
        chart.getTitle().setHorizontalAlignment(HorizontalAlignment.LEFT);
        below(chart, words.numbers(), Ink.SOFT);
        below(chart, (words.flags() + " " + words.verdict()).strip(), Ink.TEXT);
        chart.addSubtitle(legend(trace));
        return chart;
    }

    private static void below(JFreeChart chart, String text, Color colour) {
        TextTitle title = new TextTitle(text, Ink.plain(10.5f));
        title.setPaint(colour);
        title.setHorizontalAlignment(HorizontalAlignment.LEFT);
        title.setTextAlignment(HorizontalAlignment.LEFT);
        title.setPadding(1, 1, 1, 1);
        chart.addSubtitle(title);
    }

    private static LegendTitle legend(LegendItemSource of) {
        LegendTitle legend = new LegendTitle(of);
        legend.setPosition(RectangleEdge.BOTTOM);
        legend.setItemFont(Ink.plain(10));
        legend.setItemPaint(Ink.TEXT);
        legend.setFrame(BlockBorder.NONE);
        legend.setBackgroundPaint(Ink.CARD);
        legend.setLegendItemGraphicPadding(new RectangleInsets(1, 6, 1, 3));
        return legend;
    }

    private Range domain() {
        double last = points.lastMinute() > 0 ? points.lastMinute() : 1;
        return new Range(Math.min(points.firstMinute() - 0.01 * last, -ROOM * last), 1.015 * last);
    }

    private XYPlot trace() {
        Range range = range();
        NumberAxis axis = axis(step.absorbance());
        axis.setRange(range);
        XYSeriesCollection dots = new XYSeriesCollection();
        XYLineAndShapeRenderer marks = new XYLineAndShapeRenderer(false, true);
        for (TracePoints.Part part : TracePoints.Part.values()) {
            Look look = Look.of(part, well.trace().change().isPresent());
            add(dots, marks, series(look.words(), points.of(part)), look);
        }
        XYSeries over = new XYSeries("over the range of the reader", false);
        double top = range.getUpperBound() - 0.03 * range.getLength();
        points.overMinutes().forEach(minute -> over.add(minute.doubleValue(), top));
        add(dots, marks, over, Look.OVER);
        XYPlot plot = plot(axis);
        plot.setDataset(0, dots);
        plot.setRenderer(0, marks);
        lines(plot);
        shade(plot, "finished part");
        plot.addDomainMarker(trigger("trigger"), Layer.FOREGROUND);
        measure(plot);
        return plot;
    }

    private void lines(XYPlot plot) {
        XYSeriesCollection set = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        line(set, renderer, lines.baseline(), Ink.TEXT, Ink.pen(1.2));
        line(set, renderer, lines.level(domain().getLowerBound()), Ink.TEXT, Ink.dashes(1.2));
        line(set, renderer, lines.curve(), Ink.ACCENT, Ink.pen(1.6));
        line(set, renderer, lines.reading(), Ink.ACCENT, Ink.dashes(1.2));
        boolean curved = lines.curve().isPresent();
        line(set, renderer, lines.finished(), Ink.ACCENT, curved ? Ink.dashes(1.2) : Ink.pen(1.6));
        plot.setDataset(1, set);
        plot.setRenderer(1, renderer);
    }

    private static void line(
            XYSeriesCollection set,
            XYLineAndShapeRenderer renderer,
            Optional<XYSeries> series,
            Color colour,
            BasicStroke stroke) {
        if (series.isPresent()) {
            int index = set.getSeriesCount();
            set.addSeries(series.get());
            renderer.setSeriesPaint(index, colour);
            renderer.setSeriesStroke(index, stroke);
        }
    }

    private void measure(XYPlot plot) {
        well.trace().change().ifPresent(change -> {
            if (well.deltaA().isPresent()) {
                plot.addAnnotation(new Measure(change.before(), change.after(), words.deltaA()));
            }
        });
    }

    private void shade(XYPlot plot, String label) {
        lines.finishedFrom().ifPresent(from -> {
            IntervalMarker finished = new IntervalMarker(from, points.lastMinute(), Ink.FINISHED);
            finished.setAlpha(1);
            finished.setLabel(label);
            finished.setLabelFont(Ink.plain(10));
            finished.setLabelPaint(Ink.SOFT);
            finished.setLabelBackgroundColor(Ink.CLEAR);
            finished.setLabelAnchor(RectangleAnchor.BOTTOM_RIGHT);
            finished.setLabelTextAnchor(TextAnchor.BOTTOM_RIGHT);
            finished.setLabelOffset(new RectangleInsets(3, 6, 3, 6));
            plot.addDomainMarker(finished, Layer.BACKGROUND);
        });
    }

    private XYPlot residuals() {
        double most = points.all().stream()
                .filter(point -> point.residualMa().isPresent())
                .mapToDouble(point -> Math.abs(point.residualMa().getAsDouble()))
                .reduce(LEAST_RESIDUAL_MA, Math::max);
        NumberAxis axis = axis("residual, mA");
        axis.setRange(-1.15 * most, 1.15 * most);
        XYSeriesCollection dots = new XYSeriesCollection();
        XYLineAndShapeRenderer marks = new XYLineAndShapeRenderer(false, true);
        for (TracePoints.Part part : TracePoints.Part.values()) {
            XYSeries series = new XYSeries(part.name(), false);
            points.of(part).stream()
                    .filter(point -> point.residualMa().isPresent())
                    .forEach(point ->
                            series.add(point.minutes(), point.residualMa().getAsDouble()));
            add(dots, marks, series, Look.of(part, true));
        }
        marks.setDefaultSeriesVisibleInLegend(false);
        XYPlot plot = plot(axis);
        plot.setDataset(0, dots);
        plot.setRenderer(0, marks);
        plot.setDomainGridlinesVisible(false);
        plot.addRangeMarker(new ValueMarker(0, Ink.SOFT, Ink.pen(0.8)), Layer.BACKGROUND);
        shade(plot, "");
        plot.addDomainMarker(trigger(""), Layer.FOREGROUND);
        return plot;
    }

    private static void add(XYSeriesCollection set, XYLineAndShapeRenderer marks, XYSeries series, Look look) {
        if (series.isEmpty()) {
            return;
        }
        int index = set.getSeriesCount();
        set.addSeries(series);
        marks.setSeriesShape(index, look.shape());
        marks.setSeriesPaint(index, look.colour());
        marks.setSeriesFillPaint(index, look.filled() ? look.colour() : Ink.CARD);
        marks.setSeriesOutlinePaint(index, look.colour());
        marks.setUseFillPaint(true);
        marks.setUseOutlinePaint(true);
        marks.setDrawOutlines(true);
    }

    private static XYSeries series(String name, List<TracePoints.Point> points) {
        XYSeries series = new XYSeries(name, false);
        points.forEach(point -> series.add(point.minutes(), point.absorbance()));
        return series;
    }

    private static XYPlot plot(NumberAxis range) {
        XYPlot plot = new XYPlot();
        plot.setRangeAxis(range);
        plot.setBackgroundPaint(Ink.CARD);
        plot.setOutlinePaint(Ink.LINE);
        plot.setRangeGridlinePaint(Ink.LINE);
        plot.setRangeGridlineStroke(Ink.pen(0.6));
        plot.setDomainGridlinesVisible(false);
        plot.setRangeZeroBaselineVisible(false);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        return plot;
    }

    private static ValueMarker trigger(String label) {
        ValueMarker trigger = new ValueMarker(0, Ink.TEXT, Ink.dots(1.1));
        trigger.setLabel(label);
        trigger.setLabelFont(Ink.plain(10));
        trigger.setLabelPaint(Ink.SOFT);
        trigger.setLabelBackgroundColor(Ink.CLEAR);
        trigger.setLabelAnchor(RectangleAnchor.TOP_RIGHT);
        trigger.setLabelTextAnchor(TextAnchor.TOP_LEFT);
        trigger.setLabelOffset(new RectangleInsets(3, 5, 3, 5));
        return trigger;
    }

    private static NumberAxis axis(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setStandardTickUnits(Ink.axisSteps());
        axis.setLabelFont(Ink.plain(10.5f));
        axis.setLabelPaint(Ink.TEXT);
        axis.setTickLabelFont(Ink.plain(10));
        axis.setTickLabelPaint(Ink.SOFT);
        axis.setAxisLinePaint(Ink.LINE);
        axis.setTickMarkPaint(Ink.LINE);
        return axis;
    }

    /** All readings, the ends of every line, and ΔA. */
    private Range range() {
        List<Double> values = new ArrayList<>();
        points.all().forEach(point -> values.add(point.absorbance()));
        for (Optional<XYSeries> line : List.of(lines.baseline(), lines.level(0), lines.finished(), lines.curve())) {
            line.ifPresent(series -> {
                values.add(series.getMinY());
                values.add(series.getMaxY());
            });
        }
        well.trace().change().ifPresent(change -> {
            values.add(change.before());
            values.add(change.after());
        });
        double low = values.stream().mapToDouble(Double::doubleValue).min().orElse(0);
        double high = values.stream().mapToDouble(Double::doubleValue).max().orElse(1);
        double lacking = Math.max(0, LEAST_SPAN - (high - low)) / 2;
        double margin = 0.07 * Math.max(high - low, LEAST_SPAN);
        return new Range(low - lacking - margin, high + lacking + margin);
    }

    /**
     * How readings of one part look; shape and filling tell them apart, colour only helps.
     *
     * @param words what the legend says
     * @param shape about its own middle
     * @param filled whether it is more than an outline
     * @param colour of both
     */
    private record Look(String words, Shape shape, boolean filled, Color colour) {
        private static final Look OVER = new Look("over the range", triangle(4.2), true, Ink.ATTENTION);

        private static Look of(TracePoints.Part part, boolean known) {
            return switch (part) {
                case BASELINE -> new Look("before the trigger", square(1.8), true, Ink.SOFT);
                case BURST ->
                    new Look(known ? "after it, not in the fit" : "after the trigger", dot(1.9), false, Ink.GOOD);
                case USED -> new Look("ΔA rests on these", dot(1.9), true, Ink.GOOD);
                case LEFT_OUT -> new Look("off the trace, left out", cross(3.4), true, Ink.ATTENTION);
            };
        }

        private static Shape dot(double r) {
            return new Ellipse2D.Double(-r, -r, 2 * r, 2 * r);
        }

        private static Shape square(double r) {
            return new Rectangle2D.Double(-r, -r, 2 * r, 2 * r);
        }

        private static Shape triangle(double r) {
            Path2D path = new Path2D.Double();
            path.moveTo(0, -r);
            path.lineTo(r, r);
            path.lineTo(-r, r);
            path.closePath();
            return path;
        }

        private static Shape cross(double r) {
            double w = 0.9;
            Path2D path = new Path2D.Double();
            double[][] corners = {
                {-r, -r + w},
                {-w, 0},
                {-r, r - w},
                {-r + w, r},
                {0, w},
                {r - w, r},
                {r, r - w},
                {w, 0},
                {r, -r + w},
                {r - w, -r},
                {0, -w},
                {-r + w, -r}
            };
            path.moveTo(corners[0][0], corners[0][1]);
            for (int i = 1; i < corners.length; i++) {
                path.lineTo(corners[i][0], corners[i][1]);
            }
            path.closePath();
            return path;
        }
    }
}
