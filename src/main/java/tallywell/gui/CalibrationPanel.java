package tallywell.gui;

import java.awt.BasicStroke;
import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.swing.JPanel;
import javax.swing.UIManager;
import org.jfree.chart.ChartPanel;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
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
        XYPlot main = plot(palette, Text.of("calibration.net"), "0.00#");
        band(main, each, palette);
        points(main, each, palette);
        XYPlot residuals = plot(palette, Text.of("trace.residuals"), "0.#");
        residuals.setDataset(collection("residuals", each.residuals()));
        residuals.setRenderer(shapes(palette.ink(), new Ellipse2D.Double(-2, -2, 4, 4)));
        residuals.addRangeMarker(new ValueMarker(0, palette.soft(), new BasicStroke(0.8f)));
        CombinedDomainXYPlot combined = new CombinedDomainXYPlot(axis(palette, Text.of("calibration.level"), "0.0##"));
        combined.setGap(6);
        combined.setBackgroundPaint(palette.card());
        combined.add(main, 4);
        combined.add(residuals, 1);
        JFreeChart chart = new JFreeChart(null, font(1), combined, false);
        chart.setBackgroundPaint(palette.card());
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
        XYSeries series = new XYSeries(key, true, true);
        points.forEach(point -> series.add(point[0], point[1]));
        return new XYSeriesCollection(series);
    }

    private static XYLineAndShapeRenderer shapes(Color colour, Shape shape) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        renderer.setSeriesPaint(0, colour);
        renderer.setSeriesShape(0, shape);
        return renderer;
    }

    private XYPlot plot(Palette palette, String label, String format) {
        XYPlot plot = new XYPlot(null, null, axis(palette, label, format), null);
        plot.setBackgroundPaint(palette.card());
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinePaint(palette.line());
        plot.setOutlineVisible(false);
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
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setDecimalSeparator(shown.mark());
        axis.setNumberFormatOverride(new DecimalFormat(format, symbols));
        return axis;
    }

    private static Font font(float scale) {
        Font font = UIManager.getFont("Label.font");
        return font.deriveFont(font.getSize2D() * scale);
    }
}
