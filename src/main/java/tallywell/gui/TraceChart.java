package tallywell.gui;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.Marker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import tallywell.desk.TraceLook;

/** Draws traces: readings, baseline, finished part with its line carried back, ΔA, residuals. */
final class TraceChart {
    private static final double UNTIMED_EDGE = 1.6;
    private static final Color CLEAR = new Color(0, 0, 0, 0);

    private final Axes axes;
    private final Palette palette;
    private final List<TraceLook> looks;

    private TraceChart(Axes axes, List<TraceLook> looks) {
        this.axes = axes;
        this.palette = axes.palette();
        this.looks = looks;
    }

    /** The chart of at least one trace. */
    static JFreeChart of(List<TraceLook> looks, Axes axes) {
        return new TraceChart(axes, looks).chart();
    }

    private JFreeChart chart() {
        XYPlot main = axes.plot(Text.of("trace.absorbance"), "0.00");
        main.setDataset(
                0, points("points ", looks.stream().map(TraceLook::points).toList()));
        main.setRenderer(0, dots(1.8));
        lines(main);
        marks(main);
        NumberAxis domain = axes.axis(Text.of(timed() ? "trace.minutes" : "trace.order"), "0.#");
        domain.setLowerMargin(0.09);
        if (!timed()) {
            order(domain);
        }
        boolean residuals = looks.stream().anyMatch(look -> !look.residuals().isEmpty());
        return axes.chart(domain, main, residuals ? List.of(residuals()) : List.of());
    }

    /** Readings without times stand in their order, at -1 and +1 (see {@link TraceLook}). */
    private static void order(NumberAxis domain) {
        domain.setRange(-UNTIMED_EDGE, UNTIMED_EDGE);
        domain.setTickMarksVisible(false);
        domain.setNumberFormatOverride(null);
        domain.setTickUnit(new NumberTickUnit(1) {
            @Override
            public String valueToString(double value) {
                return value == 0 ? "" : Text.of(value < 0 ? "trace.before" : "trace.after");
            }
        });
    }

    private boolean timed() {
        return looks.stream().allMatch(TraceLook::timed);
    }

    private static XYSeriesCollection points(String key, List<List<double[]>> of) {
        XYSeriesCollection points = new XYSeriesCollection();
        for (int i = 0; i < of.size(); i++) {
            points.addSeries(Axes.series(key + i, of.get(i)));
        }
        return points;
    }

    private XYLineAndShapeRenderer dots(double radius) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        for (int i = 0; i < looks.size(); i++) {
            renderer.setSeriesShape(i, new Ellipse2D.Double(-radius, -radius, 2 * radius, 2 * radius));
            renderer.setSeriesPaint(i, axes.colour(i));
        }
        return renderer;
    }

    /** Baseline and finished line of each well. */
    private void lines(XYPlot plot) {
        XYSeriesCollection lines = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        for (int i = 0; i < looks.size(); i++) {
            TraceLook look = looks.get(i);
            XYSeries line = new XYSeries("line " + i, true, true);
            if (look.after().isPresent()) {
                line.add(look.triggerMin(), look.after().getAsDouble());
                look.lineAtEnd().ifPresent(end -> line.add(look.endMin(), end));
                if (!look.timed()) {
                    line.add(look.endMin(), look.after().getAsDouble());
                }
            }
            XYSeries base = new XYSeries("baseline " + i, true, true);
            if (look.before().isPresent() && !look.points().isEmpty()) {
                base.add(look.points().get(0)[0], look.before().getAsDouble());
                base.add(look.triggerMin(), look.before().getAsDouble());
            }
            add(lines, line, renderer, i);
            add(lines, base, renderer, i);
        }
        plot.setDataset(1, lines);
        plot.setRenderer(1, renderer);
    }

    private void add(XYSeriesCollection lines, XYSeries line, XYLineAndShapeRenderer renderer, int well) {
        renderer.setSeriesPaint(lines.getSeriesCount(), axes.colour(well));
        renderer.setSeriesStroke(lines.getSeriesCount(), new BasicStroke(1.5f));
        lines.addSeries(line);
    }

    private void marks(XYPlot plot) {
        TraceLook first = looks.get(0);
        ValueMarker trigger = new ValueMarker(
                first.triggerMin(),
                palette.soft(),
                new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {2, 3}, 0));
        label(trigger, Text.of("trace.trigger"), TextAnchor.BOTTOM_LEFT);
        plot.addDomainMarker(trigger, Layer.BACKGROUND);
        first.finishedFromMin().ifPresent(from -> {
            IntervalMarker part = new IntervalMarker(from, first.endMin(), palette.finished());
            part.setOutlinePaint(palette.accent());
            part.setOutlineStroke(new BasicStroke(1.4f));
            part.setAlpha(1);
            label(part, Text.of("trace.finished"), TextAnchor.BOTTOM_RIGHT);
            plot.addDomainMarker(part, Layer.BACKGROUND);
        });
        if (first.before().isPresent()
                && first.after().isPresent()
                && first.deltaA().isPresent()) {
            measure(plot, first);
        }
    }

    private void label(Marker marker, String text, TextAnchor anchor) {
        marker.setLabel(text);
        marker.setLabelFont(axes.font(0.85f));
        marker.setLabelPaint(palette.soft());
        marker.setLabelBackgroundColor(CLEAR);
        marker.setLabelAnchor(RectangleAnchor.BOTTOM_RIGHT);
        marker.setLabelTextAnchor(anchor);
    }

    private void measure(XYPlot plot, TraceLook look) {
        double left = look.points().get(0)[0];
        double x = left < look.triggerMin()
                ? look.triggerMin() + (left - look.triggerMin()) * 0.35
                : look.triggerMin() - 0.02 * look.endMin();
        double cap = Math.max(0.1, look.endMin() - left) * 0.012;
        double before = look.before().orElseThrow();
        double after = look.after().orElseThrow();
        BasicStroke stroke = new BasicStroke(1.6f);
        plot.addAnnotation(new XYLineAnnotation(x, before, x, after, stroke, palette.ink()));
        plot.addAnnotation(new XYLineAnnotation(x - cap, before, x + cap, before, stroke, palette.ink()));
        plot.addAnnotation(new XYLineAnnotation(x - cap, after, x + cap, after, stroke, palette.ink()));
        XYTextAnnotation text = new XYTextAnnotation(
                "ΔA " + axes.shown().fixed(look.deltaA().orElseThrow(), 3), x + cap, (before + after) / 2);
        text.setFont(axes.font(1).deriveFont(Font.BOLD));
        text.setPaint(palette.ink());
        text.setTextAnchor(TextAnchor.CENTER_LEFT);
        text.setBackgroundPaint(palette.card());
        plot.addAnnotation(text);
    }

    private XYPlot residuals() {
        XYPlot plot = axes.residuals(Text.of("trace.residuals"));
        plot.setDataset(
                points("residuals ", looks.stream().map(TraceLook::residuals).toList()));
        plot.setRenderer(dots(1.4));
        return plot;
    }
}
