package tallywell.gui;

import java.awt.BasicStroke;
import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Cursor;
import java.awt.Font;
import java.awt.Point;
import java.awt.event.MouseEvent;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleConsumer;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import javax.swing.UIManager;
import org.jfree.chart.ChartPanel;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jspecify.annotations.Nullable;
import tallywell.desk.Shown;
import tallywell.desk.TraceLook;

/** The traces of the selected wells: readings, baseline, finished part with its line carried back, ΔA, residuals. */
final class TracePanel extends JPanel {
    private static final int GRIP = 7;
    private static final Color CLEAR = new Color(0, 0, 0, 0);

    private final Shown shown;
    private final Finish finish;
    private List<TraceLook> traces = List.of();

    /** Hears of the finished part being dragged. */
    interface Finish {
        /** The start is over this time now, in min. */
        void dragging(double fromMin);

        /** The start was let go at this time, in min. */
        void dropped(double fromMin);
    }

    TracePanel(Shown shown, Finish finish) {
        super(new BorderLayout());
        this.shown = shown;
        this.finish = finish;
        setOpaque(false);
        setName("trace");
    }

    void show(List<TraceLook> looks) {
        traces = looks;
        removeAll();
        if (!looks.isEmpty()) {
            add(panel(looks), BorderLayout.CENTER);
        }
        revalidate();
        repaint();
    }

    List<TraceLook> traces() {
        return traces;
    }

    /** Where a time stands on the screen, in the middle of the chart. */
    Point onScreen(double min) {
        DragPanel panel = (DragPanel) getComponent(0);
        return panel.onScreen(min);
    }

    @Override
    public void updateUI() {
        super.updateUI();
        if (traces != null && !traces.isEmpty()) {
            show(traces);
        }
    }

    private ChartPanel panel(List<TraceLook> looks) {
        Palette palette = Palette.now();
        XYPlot main = plot(palette, Text.of("trace.absorbance"), "0.00");
        XYSeriesCollection points = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        for (int i = 0; i < looks.size(); i++) {
            points.addSeries(series(looks.get(i).label() + " " + i, looks.get(i).points()));
            renderer.setSeriesShape(i, new Ellipse2D.Double(-1.8, -1.8, 3.6, 3.6));
            renderer.setSeriesPaint(i, colour(palette, i));
        }
        main.setDataset(0, points);
        main.setRenderer(0, renderer);
        lines(main, looks, palette);
        marks(main, looks, palette);
        NumberAxis domain = axis(palette, Text.of(timed(looks) ? "trace.minutes" : "trace.order"), "0.#");
        domain.setTickMarksVisible(timed(looks));
        domain.setTickLabelsVisible(timed(looks));
        domain.setLowerMargin(0.09);
        CombinedDomainXYPlot combined = new CombinedDomainXYPlot(domain);
        combined.setGap(6);
        combined.setBackgroundPaint(palette.card());
        combined.add(main, 4);
        if (looks.stream().anyMatch(look -> !look.residuals().isEmpty())) {
            combined.add(residuals(looks, palette), 1);
        }
        JFreeChart chart = new JFreeChart(null, font(1), combined, false);
        chart.setBackgroundPaint(palette.card());
        chart.setPadding(new RectangleInsets(0, 0, 0, 4));
        return new DragPanel(chart);
    }

    private static boolean timed(List<TraceLook> looks) {
        return looks.stream().allMatch(TraceLook::timed);
    }

    private XYPlot plot(Palette palette, String label, String format) {
        XYPlot plot = new XYPlot(null, null, axis(palette, label, format), null);
        plot.setBackgroundPaint(palette.card());
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinePaint(palette.line());
        plot.setRangeGridlineStroke(new BasicStroke(0.7f));
        plot.setOutlineVisible(false);
        plot.setDomainPannable(true);
        plot.setRangePannable(true);
        return plot;
    }

    private NumberAxis axis(Palette palette, String label, String format) {
        NumberAxis axis = new NumberAxis(label);
        axis.setAutoRangeIncludesZero(false);
        axis.setLabelFont(font(0.9f));
        axis.setTickLabelFont(font(0.88f));
        axis.setLabelPaint(palette.soft());
        axis.setTickLabelPaint(palette.soft());
        axis.setAxisLineVisible(false);
        axis.setTickMarkPaint(palette.line());
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setDecimalSeparator(shown.mark());
        axis.setNumberFormatOverride(new DecimalFormat(format, symbols));
        return axis;
    }

    private static Font font(float scale) {
        Font font = UIManager.getFont("Label.font");
        return font.deriveFont(font.getSize2D() * scale);
    }

    private static XYSeries series(String key, List<double[]> points) {
        XYSeries series = new XYSeries(key, true, true);
        points.forEach(point -> series.add(point[0], point[1]));
        return series;
    }

    static Color colour(Palette palette, int index) {
        Color[] colours = {palette.accent(), palette.good(), palette.attention(), palette.ink(), palette.soft()};
        return colours[index % colours.length];
    }

    /** Baseline and finished line of each well. */
    private static void lines(XYPlot plot, List<TraceLook> looks, Palette palette) {
        XYSeriesCollection lines = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        for (int i = 0; i < looks.size(); i++) {
            TraceLook look = looks.get(i);
            XYSeries line = new XYSeries("line " + i, true, true);
            if (look.after().isPresent()) {
                line.add(0, look.after().getAsDouble());
                look.lineAtEnd().ifPresent(end -> line.add(look.endMin(), end));
            }
            lines.addSeries(line);
            renderer.setSeriesPaint(i, colour(palette, i));
            renderer.setSeriesStroke(i, new BasicStroke(1.5f));
        }
        for (int i = 0; i < looks.size(); i++) {
            TraceLook look = looks.get(i);
            XYSeries base = new XYSeries("baseline " + i, true, true);
            if (look.before().isPresent() && !look.points().isEmpty()) {
                base.add(look.points().get(0)[0], look.before().getAsDouble());
                base.add(0, look.before().getAsDouble());
            }
            lines.addSeries(base);
            renderer.setSeriesPaint(looks.size() + i, colour(palette, i));
            renderer.setSeriesStroke(looks.size() + i, new BasicStroke(1.5f));
        }
        plot.setDataset(1, lines);
        plot.setRenderer(1, renderer);
    }

    private void marks(XYPlot plot, List<TraceLook> looks, Palette palette) {
        ValueMarker trigger = new ValueMarker(
                0,
                palette.soft(),
                new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {2, 3}, 0));
        trigger.setLabel(Text.of("trace.trigger"));
        trigger.setLabelFont(font(0.85f));
        trigger.setLabelPaint(palette.soft());
        trigger.setLabelBackgroundColor(CLEAR);
        trigger.setLabelAnchor(RectangleAnchor.BOTTOM_RIGHT);
        trigger.setLabelTextAnchor(TextAnchor.BOTTOM_LEFT);
        plot.addDomainMarker(trigger, Layer.BACKGROUND);
        TraceLook first = looks.get(0);
        first.finishedFromMin().ifPresent(from -> {
            IntervalMarker part = new IntervalMarker(from, first.endMin(), palette.finished());
            part.setOutlinePaint(palette.accent());
            part.setOutlineStroke(new BasicStroke(1.4f));
            part.setAlpha(1);
            part.setLabel(Text.of("trace.finished"));
            part.setLabelFont(font(0.85f));
            part.setLabelPaint(palette.soft());
            part.setLabelBackgroundColor(CLEAR);
            part.setLabelAnchor(RectangleAnchor.BOTTOM_RIGHT);
            part.setLabelTextAnchor(TextAnchor.BOTTOM_RIGHT);
            plot.addDomainMarker(part, Layer.BACKGROUND);
        });
        if (first.before().isPresent()
                && first.after().isPresent()
                && first.deltaA().isPresent()) {
            measure(plot, first, palette);
        }
    }

    private void measure(XYPlot plot, TraceLook look, Palette palette) {
        double left = look.points().get(0)[0];
        double x = left < 0 ? left * 0.35 : -0.02 * look.endMin();
        double cap = Math.max(0.1, look.endMin() - left) * 0.012;
        double before = look.before().getAsDouble();
        double after = look.after().getAsDouble();
        BasicStroke stroke = new BasicStroke(1.6f);
        plot.addAnnotation(new XYLineAnnotation(x, before, x, after, stroke, palette.ink()));
        plot.addAnnotation(new XYLineAnnotation(x - cap, before, x + cap, before, stroke, palette.ink()));
        plot.addAnnotation(new XYLineAnnotation(x - cap, after, x + cap, after, stroke, palette.ink()));
        XYTextAnnotation text = new XYTextAnnotation(
                "ΔA " + shown.fixed(look.deltaA().getAsDouble(), 3), x + cap, (before + after) / 2);
        text.setFont(font(1).deriveFont(Font.BOLD));
        text.setPaint(palette.ink());
        text.setTextAnchor(TextAnchor.CENTER_LEFT);
        text.setBackgroundPaint(palette.card());
        plot.addAnnotation(text);
    }

    private XYPlot residuals(List<TraceLook> looks, Palette palette) {
        XYPlot plot = plot(palette, Text.of("trace.residuals"), "0.#");
        XYSeriesCollection points = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        for (int i = 0; i < looks.size(); i++) {
            points.addSeries(series("residuals " + i, looks.get(i).residuals()));
            renderer.setSeriesShape(i, new Ellipse2D.Double(-1.4, -1.4, 2.8, 2.8));
            renderer.setSeriesPaint(i, colour(palette, i));
        }
        plot.setDataset(points);
        plot.setRenderer(renderer);
        plot.addRangeMarker(new ValueMarker(0, palette.soft(), new BasicStroke(0.8f)));
        return plot;
    }

    /** Lets the start of the finished part be dragged; elsewhere a drag zooms, the wheel too, Ctrl and a drag pan. */
    private final class DragPanel extends ChartPanel {
        private boolean dragging;

        DragPanel(JFreeChart chart) {
            super(chart, 300, 200, 50, 50, 6000, 6000, false, true, false, false, true, false);
            setMouseWheelEnabled(true);
            setBackground(Palette.now().card());
            setFillZoomRectangle(true);
            getAccessibleContext().setAccessibleName(Text.of("trace.title"));
        }

        private @Nullable Rectangle2D area() {
            var info = getChartRenderingInfo().getPlotInfo();
            return info.getSubplotCount() == 0 ? null : info.getSubplotInfo(0).getDataArea();
        }

        private Point onScreen(double min) {
            Rectangle2D area = area();
            if (area == null) {
                throw new IllegalStateException("the chart has not been drawn yet");
            }
            CombinedDomainXYPlot plot = (CombinedDomainXYPlot) getChart().getXYPlot();
            double x = plot.getDomainAxis().valueToJava2D(min, area, plot.getDomainAxisEdge());
            Point point = new Point((int) Math.round(x), (int) area.getCenterY());
            SwingUtilities.convertPointToScreen(point, this);
            return point;
        }

        private double value(MouseEvent event, Rectangle2D area) {
            CombinedDomainXYPlot plot = (CombinedDomainXYPlot) getChart().getXYPlot();
            return plot.getDomainAxis().java2DToValue(event.getX(), area, plot.getDomainAxisEdge());
        }

        private boolean onEdge(MouseEvent event) {
            Rectangle2D area = area();
            if (area == null
                    || traces.isEmpty()
                    || traces.get(0).finishedFromMin().isEmpty()) {
                return false;
            }
            CombinedDomainXYPlot plot = (CombinedDomainXYPlot) getChart().getXYPlot();
            double x = plot.getDomainAxis()
                    .valueToJava2D(traces.get(0).finishedFromMin().getAsDouble(), area, plot.getDomainAxisEdge());
            return Math.abs(x - event.getX()) <= GRIP && area.contains(area.getCenterX(), event.getY());
        }

        private void to(MouseEvent event, DoubleConsumer taker) {
            Rectangle2D area = area();
            if (area != null) {
                taker.accept(Math.max(0, Math.min(traces.get(0).endMin(), value(event, area))));
            }
        }

        @Override
        public void mouseMoved(MouseEvent event) {
            setCursor(Cursor.getPredefinedCursor(onEdge(event) ? Cursor.E_RESIZE_CURSOR : Cursor.DEFAULT_CURSOR));
            super.mouseMoved(event);
        }

        @Override
        public void mousePressed(MouseEvent event) {
            dragging = onEdge(event);
            if (!dragging) {
                super.mousePressed(event);
            }
        }

        @Override
        public void mouseDragged(MouseEvent event) {
            if (dragging) {
                to(event, from -> move(from, false));
            } else {
                super.mouseDragged(event);
            }
        }

        @Override
        public void mouseReleased(MouseEvent event) {
            if (dragging) {
                dragging = false;
                to(event, from -> move(from, true));
            } else {
                super.mouseReleased(event);
            }
        }

        private void move(double from, boolean last) {
            CombinedDomainXYPlot combined = (CombinedDomainXYPlot) getChart().getXYPlot();
            XYPlot main = combined.getSubplots().get(0);
            for (Object each : main.getDomainMarkers(Layer.BACKGROUND)) {
                if (each instanceof IntervalMarker part) {
                    part.setStartValue(from);
                }
            }
            if (last) {
                finish.dropped(from);
            } else {
                finish.dragging(from);
            }
        }
    }
}
