package tallywell.chart;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemSource;
import org.jfree.chart.annotations.XYTitleAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.DatasetRenderingOrder;
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
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** What all charts share: axes, fields, signs and words in one style. */
record Axes(ChartStyle style) {
    /** A scale of residuals never shows less than this, in mA. */
    private static final double LEAST_RESIDUAL_MA = 1;

    /** Room above the residuals for what they are called, which their short axis has no room for. */
    private static final double ROOM_FOR_WORDS = 2.2;

    NumberAxis axis(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setAutoRangeIncludesZero(false);
        axis.setStandardTickUnits(Ink.axisSteps(style.mark()));
        axis.setLabelFont(style.font());
        axis.setLabelPaint(style.colours().text());
        axis.setTickLabelFont(style.small());
        axis.setTickLabelPaint(style.colours().soft());
        axis.setAxisLinePaint(style.colours().line());
        axis.setTickMarkPaint(style.colours().line());
        return axis;
    }

    /** A field over a vertical axis; the horizontal one is shared. */
    XYPlot field(NumberAxis range) {
        XYPlot plot = new XYPlot();
        plot.setRangeAxis(range);
        plot.setBackgroundPaint(style.colours().card());
        plot.setOutlinePaint(style.colours().line());
        plot.setRangeGridlinePaint(style.colours().line());
        plot.setRangeGridlineStroke(Ink.pen(0.6));
        plot.setDomainGridlinesVisible(false);
        plot.setRangeZeroBaselineVisible(false);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        plot.setDomainPannable(true);
        plot.setRangePannable(true);
        return plot;
    }

    /** A low field of residuals. */
    XYPlot residuals(List<Signs> series) {
        double most = series.stream()
                .map(Signs::series)
                .filter(each -> !each.isEmpty())
                .mapToDouble(each -> Math.max(Math.abs(each.getMinY()), Math.abs(each.getMaxY())))
                .reduce(LEAST_RESIDUAL_MA, Math::max);
        NumberAxis axis = axis("");
        axis.setRange(-1.5 * most, ROOM_FOR_WORDS * most);
        XYPlot plot = field(axis);
        signs(plot, 0, series);
        ((XYLineAndShapeRenderer) plot.getRenderer(0)).setDefaultSeriesVisibleInLegend(false);
        TextTitle words = words("residual, mA", style.colours().soft());
        words.setBackgroundPaint(style.colours().card());
        plot.addAnnotation(new XYTitleAnnotation(0.004, 0.99, words, RectangleAnchor.TOP_LEFT));
        plot.addRangeMarker(new ValueMarker(0, style.colours().soft(), Ink.pen(0.8)), Layer.BACKGROUND);
        return plot;
    }

    /** A large field over a low one of residuals, on one horizontal axis. */
    JFreeChart chart(NumberAxis domain, XYPlot main, Optional<XYPlot> residuals, LegendItemSource legend) {
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(domain);
        both.setGap(8);
        both.setBackgroundPaint(style.colours().card());
        both.setDomainPannable(true);
        both.add(main, 7);
        residuals.ifPresent(low -> both.add(low, 2));
        JFreeChart chart = new JFreeChart(null, style.font(), both, false);
        chart.setBackgroundPaint(style.colours().card());
        chart.addSubtitle(legend(legend));
        return chart;
    }

    private LegendTitle legend(LegendItemSource of) {
        LegendTitle legend = new LegendTitle(of);
        legend.setPosition(RectangleEdge.BOTTOM);
        legend.setItemFont(style.small());
        legend.setItemPaint(style.colours().text());
        legend.setFrame(BlockBorder.NONE);
        legend.setBackgroundPaint(style.colours().card());
        legend.setLegendItemGraphicPadding(new RectangleInsets(1, 6, 1, 3));
        return legend;
    }

    /** Puts a title above a chart, and lines of words below it. */
    void title(JFreeChart chart, String title, double factor, TextTitle... lines) {
        chart.setTitle(new TextTitle(title, style.bold(factor)));
        chart.getTitle().setPaint(style.colours().text());
        chart.getTitle().setHorizontalAlignment(HorizontalAlignment.LEFT);
        for (int i = 0; i < lines.length; i++) {
            chart.addSubtitle(i, lines[i]);
        }
    }

    /** A line of words. */
    TextTitle words(String text, Color colour) {
        TextTitle title = new TextTitle(text, style.font());
        title.setPaint(colour);
        title.setHorizontalAlignment(HorizontalAlignment.LEFT);
        title.setTextAlignment(HorizontalAlignment.LEFT);
        title.setPadding(1, 1, 1, 1);
        return title;
    }

    /**
     * Points that look alike; form and filling tell them apart, colour only helps.
     *
     * @param series the points, named as the legend has it
     * @param shape about its own middle, in print
     * @param filled whether it is more than an outline
     * @param colour of both
     */
    record Signs(XYSeries series, Shape shape, boolean filled, Color colour) {}

    /** Draws points; kinds of which there are none stay out of the legend. */
    void signs(XYPlot plot, int index, List<Signs> kinds) {
        XYSeriesCollection set = new XYSeriesCollection();
        XYLineAndShapeRenderer marks = new XYLineAndShapeRenderer(false, true);
        marks.setUseFillPaint(true);
        marks.setUseOutlinePaint(true);
        marks.setDrawOutlines(true);
        for (Signs each : kinds) {
            if (each.series().isEmpty()) {
                continue;
            }
            int at = set.getSeriesCount();
            set.addSeries(each.series());
            marks.setSeriesShape(at, scaled(each.shape()));
            marks.setSeriesPaint(at, each.colour());
            marks.setSeriesFillPaint(
                    at, each.filled() ? each.colour() : style.colours().card());
            marks.setSeriesOutlinePaint(at, each.colour());
        }
        plot.setDataset(index, set);
        plot.setRenderer(index, marks);
    }

    private Shape scaled(Shape shape) {
        return AffineTransform.getScaleInstance(style.scale(), style.scale()).createTransformedShape(shape);
    }

    static Shape dot(double r) {
        return new Ellipse2D.Double(-r, -r, 2 * r, 2 * r);
    }

    static Shape triangle(double r) {
        return closed(new double[][] {{0, -r}, {r, 0.8 * r}, {-r, 0.8 * r}});
    }

    static Shape cross(double r) {
        double w = 0.9;
        return closed(new double[][] {
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
        });
    }

    private static Path2D closed(double[][] corners) {
        Path2D path = new Path2D.Double();
        path.moveTo(corners[0][0], corners[0][1]);
        for (int i = 1; i < corners.length; i++) {
            path.lineTo(corners[i][0], corners[i][1]);
        }
        path.closePath();
        return path;
    }
}
