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
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import tallywell.desk.CalibrationLook;
import tallywell.desk.Shown;

/** The standards with their curve, its interval, the residuals, and where the samples fall. */
final class CalibrationPanel extends JPanel {
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
        XYPlot residuals = axes.plot(Text.of("trace.residuals"), "0.#");
        residuals.setDataset(collection("residuals", each.residuals()));
        residuals.setRenderer(shapes(palette.ink(), new Ellipse2D.Double(-2, -2, 4, 4)));
        residuals.addRangeMarker(new ValueMarker(0, palette.soft(), new BasicStroke(0.8f)));
        JFreeChart chart = axes.chart(axes.axis(Text.of("calibration.level"), "0.0##"), main, List.of(residuals));
        ChartPanel panel = new ChartPanel(chart, 300, 200, 50, 50, 6000, 6000, false, true, false, false, true, false);
        panel.setMouseWheelEnabled(true);
        panel.setBackground(palette.card());
        panel.getAccessibleContext().setAccessibleName(each.formula());
        return panel;
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
        plot.setRenderer(1, shapes(palette.edge(), new Ellipse2D.Double(-1.8, -1.8, 3.6, 3.6)));
        plot.setDataset(0, collection("standards", each.standards()));
        plot.setRenderer(0, shapes(palette.ink(), new Rectangle2D.Double(-3, -3, 6, 6)));
        plot.setDataset(3, collection("selected", each.selected()));
        plot.setRenderer(3, shapes(palette.accent(), new Ellipse2D.Double(-4, -4, 8, 8)));
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
