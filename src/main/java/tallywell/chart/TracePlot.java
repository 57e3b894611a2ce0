package tallywell.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.LegendItemSource;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.Marker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.Range;
import org.jfree.data.xy.XYDataItem;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Draws the traces of one or of several wells in one step: readings, baseline, finished part, what was fitted and ΔA at
 * the trigger; the residuals below, on a scale of their own. Windows, pictures and documents all show this.
 *
 * <p>Of one well, form and filling tell the parts of the readings and the legend names them; of several, the colour tells
 * the wells, and finished part and ΔA are those of the first.
 */
public final class TracePlot {
    /** Part of the time after the trigger that is kept free before it, for the measure of ΔA and its number. */
    private static final double ROOM = 0.19;

    /** Part of the scale that is kept free above the trace, for the name of the trigger. */
    private static final double ROOM_ABOVE = 0.13;

    /** A scale never shows less than this, so that the noise of a blank does not look like a reaction. */
    private static final double LEAST_SPAN = 0.04;

    /** Half the width of a scale on which readings without times stand at -1 and +1. */
    private static final double UNTIMED_EDGE = 1.6;

    private static final Color CLEAR = new Color(0, 0, 0, 0);

    private final List<DrawnTrace> traces;
    private final String absorbance;
    private final ChartStyle style;
    private final ChartColours colours;
    private final Axes axes;

    private TracePlot(List<DrawnTrace> traces, String absorbance, ChartStyle style) {
        this.traces = traces;
        this.absorbance = absorbance;
        this.style = style;
        this.colours = style.colours();
        this.axes = new Axes(style);
    }

    /**
     * The chart of traces.
     *
     * @param traces at least one, all of one step
     * @param absorbance what was measured, as the axis says it
     */
    public static JFreeChart of(List<DrawnTrace> traces, String absorbance, ChartStyle style) {
        return new TracePlot(traces, absorbance, style).chart();
    }

    private JFreeChart chart() {
        XYPlot main = main();
        boolean residuals = timed()
                && traces.stream()
                        .flatMap(each -> each.points().all().stream())
                        .anyMatch(point -> point.residualMa().isPresent());
        return axes.chart(domainAxis(), main, residuals ? Optional.of(residuals()) : Optional.empty(), legend(main));
    }

    private DrawnTrace first() {
        return traces.get(0);
    }

    private boolean single() {
        return traces.size() == 1;
    }

    private boolean timed() {
        return traces.stream().allMatch(DrawnTrace::timed);
    }

    private NumberAxis domainAxis() {
        NumberAxis axis =
                axes.axis(timed() ? "minutes from the trigger" : "from the trigger; the readings have no times");
        axis.setRange(domain());
        if (!timed()) {
            axis.setTickMarksVisible(false);
            axis.setTickUnit(new NumberTickUnit(1) {
                @Override
                public String valueToString(double value) {
                    return value == -1 ? "before" : value == 1 ? "after" : "";
                }
            });
        }
        return axis;
    }

    private Range domain() {
        double trigger = first().triggerMin();
        if (!timed()) {
            return new Range(trigger - UNTIMED_EDGE, trigger + UNTIMED_EDGE);
        }
        double from =
                traces.stream().mapToDouble(each -> each.points().firstMinute()).reduce(trigger, Math::min);
        double to = traces.stream().mapToDouble(DrawnTrace::endMin).reduce(trigger, Math::max);
        double span = to > trigger ? to - trigger : 1;
        return new Range(Math.min(from - 0.01 * span, trigger - ROOM * span), trigger + 1.015 * span);
    }

    private XYPlot main() {
        Range range = range();
        NumberAxis axis = axes.axis(absorbance);
        axis.setRange(range);
        XYPlot plot = axes.field(axis);
        List<Axes.Signs> kinds = new ArrayList<>(signs(point -> Optional.of(point.absorbance())));
        double top = range.getUpperBound() - 0.03 * range.getLength();
        for (DrawnTrace trace : traces) {
            XYSeries over = new XYSeries(key(trace, "over the range of the reader"), false);
            trace.points().overMinutes().forEach(minute -> over.add(minute.doubleValue(), top));
            kinds.add(new Axes.Signs(over, Axes.triangle(4.2), true, colour(trace, colours.attention())));
        }
        axes.signs(plot, 0, kinds);
        lines(plot);
        shade(plot, "finished part");
        trigger(plot, "trigger");
        first().result()
                .trace()
                .change()
                .filter(change -> first().result().deltaA().isPresent())
                .ifPresent(change -> plot.addAnnotation(
                        new Measure(first().triggerMin(), change.before(), change.after(), words(), style)));
        return plot;
    }

    private String words() {
        return "ΔA " + style.number(first().result().deltaA().orElseThrow(), TraceWords.DELTA_A_DECIMALS);
    }

    private XYPlot residuals() {
        XYPlot plot = axes.residuals(signs(point ->
                point.residualMa().isPresent() ? Optional.of(point.residualMa().getAsDouble()) : Optional.empty()));
        shade(plot, "");
        trigger(plot, "");
        return plot;
    }

    /** The readings of each well and part, by what is drawn of a reading. */
    private List<Axes.Signs> signs(Function<TracePoints.Point, Optional<Double>> drawn) {
        List<Axes.Signs> kinds = new ArrayList<>();
        for (DrawnTrace trace : traces) {
            boolean known = trace.result().trace().change().isPresent();
            for (TracePoints.Part part : TracePoints.Part.values()) {
                XYSeries series = new XYSeries(key(trace, name(part, known)), false);
                trace.points()
                        .of(part)
                        .forEach(point ->
                                drawn.apply(point).ifPresent(y -> series.add(point.minutes(), y.doubleValue())));
                kinds.add(look(part, trace, series));
            }
        }
        return kinds;
    }

    private static String name(TracePoints.Part part, boolean known) {
        return switch (part) {
            case BASELINE -> "before the trigger";
            case BURST -> known ? "after it, not in the fit" : "after the trigger";
            case USED -> "ΔA rests on these";
            case LEFT_OUT -> "off the trace, left out";
        };
    }

    private Axes.Signs look(TracePoints.Part part, DrawnTrace trace, XYSeries series) {
        return switch (part) {
            case BASELINE ->
                new Axes.Signs(
                        series, new Rectangle2D.Double(-1.8, -1.8, 3.6, 3.6), true, colour(trace, colours.soft()));
            case BURST -> new Axes.Signs(series, Axes.dot(1.9), false, colour(trace, colours.good()));
            case USED -> new Axes.Signs(series, Axes.dot(1.9), true, colour(trace, colours.good()));
            case LEFT_OUT -> new Axes.Signs(series, Axes.cross(3.4), true, colour(trace, colours.attention()));
        };
    }

    /** The name of a series among those of all wells. */
    private String key(DrawnTrace trace, String name) {
        return single() ? name : trace.label() + ", " + name;
    }

    private Color colour(DrawnTrace trace, Color own) {
        return single() ? own : colours.ofWell(traces.indexOf(trace));
    }

    private void lines(XYPlot plot) {
        XYSeriesCollection set = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        double from = domain().getLowerBound();
        for (DrawnTrace trace : traces) {
            TraceLines lines = trace.lines();
            boolean curved = lines.curve().isPresent();
            Color base = colour(trace, colours.text());
            Color fit = colour(trace, colours.accent());
            line(set, renderer, trace, lines.baseline(), base, Ink.pen(1.2));
            line(set, renderer, trace, lines.level(from), base, Ink.dashes(1.2));
            line(set, renderer, trace, lines.curve(), fit, Ink.pen(1.6));
            line(set, renderer, trace, lines.reading(), fit, Ink.dashes(1.2));
            line(set, renderer, trace, lines.finished(), fit, curved ? Ink.dashes(1.2) : Ink.pen(1.6));
        }
        plot.setDataset(1, set);
        plot.setRenderer(1, renderer);
    }

    private void line(
            XYSeriesCollection set,
            XYLineAndShapeRenderer renderer,
            DrawnTrace trace,
            Optional<XYSeries> line,
            Color colour,
            BasicStroke stroke) {
        line.ifPresent(series -> {
            int index = set.getSeriesCount();
            set.addSeries(named(series, key(trace, String.valueOf(series.getKey()))));
            renderer.setSeriesPaint(index, colour);
            renderer.setSeriesStroke(index, stroke);
        });
    }

    private static XYSeries named(XYSeries points, String name) {
        XYSeries series = new XYSeries(name, points.getAutoSort(), points.getAllowDuplicateXValues());
        for (Object item : points.getItems()) {
            series.add((XYDataItem) item);
        }
        return series;
    }

    private LegendItemSource legend(XYPlot main) {
        if (single()) {
            return main;
        }
        LegendItemCollection items = new LegendItemCollection();
        for (DrawnTrace trace : traces) {
            items.add(
                    new LegendItem(trace.label(), null, null, null, Axes.dot(3 * style.scale()), colour(trace, CLEAR)));
        }
        return () -> items;
    }

    private void shade(XYPlot plot, String label) {
        first().finishedFromMin().ifPresent(from -> {
            IntervalMarker finished = new IntervalMarker(from, first().endMin(), colours.finished());
            finished.setAlpha(1);
            label(finished, label, RectangleAnchor.BOTTOM_RIGHT, TextAnchor.BOTTOM_RIGHT);
            plot.addDomainMarker(finished, Layer.BACKGROUND);
        });
    }

    private void trigger(XYPlot plot, String label) {
        ValueMarker trigger = new ValueMarker(first().triggerMin(), colours.text(), Ink.dots(1.1));
        label(trigger, label, RectangleAnchor.TOP_RIGHT, TextAnchor.TOP_LEFT);
        plot.addDomainMarker(trigger, Layer.FOREGROUND);
    }

    private void label(Marker marker, String label, RectangleAnchor anchor, TextAnchor text) {
        marker.setLabel(label);
        marker.setLabelFont(style.small());
        marker.setLabelPaint(colours.soft());
        marker.setLabelBackgroundColor(CLEAR);
        marker.setLabelAnchor(anchor);
        marker.setLabelTextAnchor(text);
        marker.setLabelOffset(new RectangleInsets(3, 5, 3, 5));
    }

    /** All readings, the ends of every line, and ΔA. */
    private Range range() {
        List<Double> values = new ArrayList<>();
        for (DrawnTrace trace : traces) {
            TraceLines lines = trace.lines();
            trace.points().all().forEach(point -> values.add(point.absorbance()));
            for (Optional<XYSeries> line : List.of(lines.baseline(), lines.level(0), lines.finished(), lines.curve())) {
                line.ifPresent(series -> {
                    values.add(series.getMinY());
                    values.add(series.getMaxY());
                });
            }
            trace.result().trace().change().ifPresent(change -> {
                values.add(change.before());
                values.add(change.after());
            });
        }
        double low = values.stream().mapToDouble(Double::doubleValue).min().orElse(0);
        double high = values.stream().mapToDouble(Double::doubleValue).max().orElse(1);
        double lacking = Math.max(0, LEAST_SPAN - (high - low)) / 2;
        double span = Math.max(high - low, LEAST_SPAN);
        return new Range(low - lacking - 0.07 * span, high + lacking + ROOM_ABOVE * span);
    }
}
