package tallywell.gui;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import javax.swing.UIManager;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTitleAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYSeries;
import org.jspecify.annotations.Nullable;
import tallywell.desk.Shown;

/** What all our charts share: axes, plots and type in our colours, numbers with the user's decimal mark. */
final class Axes {
    private static final float LABEL = 0.9f;
    private static final float TICK = 0.88f;

    private final Shown shown;
    private final Palette palette;

    Axes(Shown shown, Palette palette) {
        this.shown = shown;
        this.palette = palette;
    }

    Palette palette() {
        return palette;
    }

    Shown shown() {
        return shown;
    }

    NumberAxis axis(@Nullable String label, String format) {
        NumberAxis axis = new NumberAxis(label);
        axis.setAutoRangeIncludesZero(false);
        axis.setLabelFont(font(LABEL));
        axis.setTickLabelFont(font(TICK));
        axis.setLabelPaint(palette.soft());
        axis.setTickLabelPaint(palette.soft());
        axis.setAxisLineVisible(false);
        axis.setTickMarkPaint(palette.line());
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setDecimalSeparator(shown.mark());
        axis.setNumberFormatOverride(new DecimalFormat(format, symbols));
        return axis;
    }

    /** A plot with a vertical axis; the horizontal one is shared. */
    XYPlot plot(@Nullable String label, String format) {
        XYPlot plot = new XYPlot(null, null, axis(label, format), null);
        plot.setBackgroundPaint(palette.card());
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinePaint(palette.line());
        plot.setRangeGridlineStroke(new BasicStroke(0.7f));
        plot.setOutlineVisible(false);
        plot.setDomainPannable(true);
        plot.setRangePannable(true);
        return plot;
    }

    /** A low plot of residuals; what it shows is written in it, since its axis is too short for words. */
    XYPlot residuals(String words) {
        XYPlot plot = plot(null, "0.#");
        TextTitle title = new TextTitle(words, font(LABEL));
        title.setPaint(palette.soft());
        title.setBackgroundPaint(palette.card());
        plot.addAnnotation(new XYTitleAnnotation(0.004, 1, title, RectangleAnchor.TOP_LEFT));
        plot.addRangeMarker(new ValueMarker(0, palette.soft(), new BasicStroke(0.8f)));
        // Room for the words above the points, however large the text.
        plot.getRangeAxis().setUpperMargin(0.8);
        plot.getRangeAxis().setLowerMargin(0.2);
        return plot;
    }

    /** A large plot over a low one for its residuals, on one horizontal axis. */
    JFreeChart chart(NumberAxis domain, XYPlot main, List<XYPlot> below) {
        CombinedDomainXYPlot combined = new CombinedDomainXYPlot(domain);
        combined.setGap(6);
        combined.setBackgroundPaint(palette.card());
        combined.add(main, 4);
        below.forEach(each -> combined.add(each, 1));
        combined.setDomainPannable(true);
        JFreeChart chart = new JFreeChart(null, font(1), combined, false);
        chart.setBackgroundPaint(palette.card());
        chart.setPadding(new RectangleInsets(0, 0, 0, 4));
        return chart;
    }

    Font font(float scale) {
        Font font = UIManager.getFont("Label.font");
        return font.deriveFont(font.getSize2D() * scale);
    }

    /** The colour of one of several wells. */
    Color colour(int index) {
        Color[] colours = {palette.accent(), palette.good(), palette.attention(), palette.ink(), palette.soft()};
        return colours[index % colours.length];
    }

    static XYSeries series(String key, List<double[]> points) {
        XYSeries series = new XYSeries(key, true, true);
        points.forEach(point -> series.add(point[0], point[1]));
        return series;
    }
}
