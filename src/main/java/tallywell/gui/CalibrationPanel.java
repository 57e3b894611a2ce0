package tallywell.gui;

import java.awt.BasicStroke;
import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import javax.swing.JPanel;
import org.jfree.chart.ChartPanel;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import tallywell.desk.CalibrationLook;
import tallywell.desk.Shown;

/** The standards with their curve, its interval, the residuals, and where the samples fall. */
final class CalibrationPanel extends JPanel {
    private static final Shape STANDARD = new Rectangle2D.Double(-3, -3, 6, 6);
    private static final Shape SAMPLE = new Ellipse2D.Double(-1.8, -1.8, 3.6, 3.6);
    private static final Shape SELECTED = new Ellipse2D.Double(-4, -4, 8, 8);

    private final Shown shown;
    private Optional<CalibrationLook> look = Optional.empty();

    CalibrationPanel(Shown shown) {
        super(new BorderLayout());
        this.shown = shown;
        setOpaque(false);
    }

    void show(Optional<CalibrationLook> other) {
        look = other;
        removeAll();
        look.ifPresent(each -> add(panel(each), BorderLayout.CENTER));
        revalidate();
        repaint();
    }

    @Override
    public void updateUI() {
        super.updateUI();
        if (look != null && look.isPresent()) {
            show(look);
        }
    }

    private ChartPanel panel(CalibrationLook each) {
        Palette palette = Palette.now();
        Axes axes = new Axes(shown, palette);
        XYPlot main = axes.plot(Text.of("calibration.net"), "0.00#");
        band(main, each, palette);
        points(main, each, palette);
        XYPlot residuals = axes.residuals(Text.of("calibration.residuals"));
        residuals.setDataset(collection("residuals", each.residuals()));
        residuals.setRenderer(shapes(palette.ink(), new Ellipse2D.Double(-2, -2, 4, 4)));
        JFreeChart chart = axes.chart(axes.axis(Text.of("calibration.level"), "0.0##"), main, List.of(residuals));
        chart.addLegend(legend(each, axes));
        ChartPanel panel = new ChartPanel(chart, 300, 200, 50, 50, 6000, 6000, false, true, false, false, true, false);
        panel.setMouseWheelEnabled(true);
        panel.setBackground(palette.card());
        panel.getAccessibleContext().setAccessibleName(each.formula());
        return panel;
    }

    /** What the signs stand for; only those that are seen. */
    private static LegendTitle legend(CalibrationLook each, Axes axes) {
        Palette palette = axes.palette();
        LegendItemCollection items = new LegendItemCollection();
        items.add(item("calibration.standards", STANDARD, palette.ink(), axes));
        items.add(item("calibration.curve", new Rectangle2D.Double(-8, -1, 16, 2), palette.accent(), axes));
        if (!each.samples().isEmpty()) {
            items.add(item("calibration.samples", SAMPLE, palette.edge(), axes));
        }
        if (!each.selected().isEmpty()) {
            items.add(item("calibration.selected", SELECTED, palette.accent(), axes));
        }
        LegendTitle legend = new LegendTitle(() -> items);
        legend.setPosition(RectangleEdge.BOTTOM);
        legend.setBackgroundPaint(palette.card());
        legend.setItemFont(axes.font(0.9f));
        legend.setItemPaint(palette.soft());
        return legend;
    }

    private static LegendItem item(String key, Shape shape, Color colour, Axes axes) {
        LegendItem item = new LegendItem(Text.of(key), null, null, null, shape, colour);
        item.setLabelFont(axes.font(0.9f));
        item.setLabelPaint(axes.palette().soft());
        return item;
    }

    private static void band(XYPlot plot, CalibrationLook each, Palette palette) {
        YIntervalSeries curve = new YIntervalSeries("curve");
        each.curve().forEach(point -> curve.add(point[0], point[1], point[1] - point[2], point[1] + point[2]));
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        data.addSeries(curve);
        DeviationRenderer renderer = new DeviationRenderer(true, false);
        renderer.setSeriesPaint(0, palette.accent());
        renderer.setSeriesFillPaint(0, palette.accent());
        renderer.setSeriesStroke(0, new BasicStroke(1.5f));
        renderer.setAlpha(0.16f);
        plot.setDataset(2, data);
        plot.setRenderer(2, renderer);
    }

    private static void points(XYPlot plot, CalibrationLook each, Palette palette) {
        plot.setDataset(1, collection("samples", each.samples()));
        plot.setRenderer(1, shapes(palette.edge(), SAMPLE));
        plot.setDataset(0, collection("standards", each.standards()));
        plot.setRenderer(0, shapes(palette.ink(), STANDARD));
        plot.setDataset(3, collection("selected", each.selected()));
        plot.setRenderer(3, shapes(palette.accent(), SELECTED));
    }

    private static XYSeriesCollection collection(String key, List<double[]> points) {
        return new XYSeriesCollection(Axes.series(key, points));
    }

    private static XYLineAndShapeRenderer shapes(Color colour, Shape shape) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        renderer.setSeriesPaint(0, colour);
        renderer.setSeriesShape(0, shape);
        return renderer;
    }
}
