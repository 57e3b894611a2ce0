package tallywell.chart;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.chart.util.ShapeUtils;
import org.jfree.data.Range;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import tallywell.trace.BaselineFit;
import tallywell.trace.Change;
import tallywell.trace.FinishedPart;
import tallywell.trace.FittedCurve;

/**
 * One well: readings, baseline, trigger, finished part, the line carried back to the trigger, ΔA as a measure beside it,
 * and the residuals on a scale of their own.
 */
public final class TracePicture {
    /** A burst is called over, for shading, once less than this is to come. */
    private static final double OVER = 0.0005;

    private static final int CURVE_POINTS = 240;
    private static final Shape DOT = new Ellipse2D.Double(-1.8, -1.8, 3.6, 3.6);

    private final TracedWell well;
    private final Change change;
    private final double firstMin;
    private final double lastMin;
    private final OptionalDouble finishedMin;

    /** A picture of a well. */
    public TracePicture(TracedWell well) {
        this.well = well;
        this.change = well.change();
        firstMin = well.firstMin();
        lastMin = well.lastMin();
        finishedMin = finishedMin();
    }

    /** The picture in pixels, twice the size asked for, so that it is sharp on paper. */
    public byte[] png(int width, int height) {
        return Drawing.png(width, height, (g, area) -> chart().draw(g, area));
    }

    /** The picture as SVG text. */
    public String svg(int width, int height) {
        return Drawing.svg(width, height, (g, area) -> chart().draw(g, area));
    }

    /** The chart, anew each time: charts can be changed, and this must not be. */
    JFreeChart chart() {
        NumberAxis time = axis("minutes from the trigger", "0.##");
        time.setRange(new Range(firstMin - margin(), lastMin + 0.02 * (lastMin - firstMin)));
        CombinedDomainXYPlot plots = new CombinedDomainXYPlot(time);
        plots.setGap(12);
        plots.add(tracePlot(), 5);
        if (residuals().getItemCount() > 0) {
            plots.add(residualPlot(), 1);
        }
        JFreeChart chart = new JFreeChart(null, Tokens.TITLE, plots, false);
        chart.setBackgroundPaint(Tokens.CARD);
        chart.setPadding(new RectangleInsets(12, 14, 12, 18));
        chart.setAntiAlias(true);
        chart.addSubtitle(0, title(well.name() + (well.caption().isEmpty() ? "" : "  ·  " + well.caption()), true));
        chart.addSubtitle(1, title(Figures.summary(change), false));
        for (int i = 0; i < well.flags().size(); i++) {
            TextTitle flag = title("▲ " + well.flags().get(i), false);
            flag.setPaint(Tokens.ATTENTION);
            chart.addSubtitle(2 + i, flag);
        }
        return chart;
    }

    /** Room left of the first reading for the measure of ΔA and its number. */
    private double margin() {
        return 0.17 * (lastMin - firstMin);
    }

    private static TextTitle title(String text, boolean strong) {
        TextTitle title = new TextTitle(text, strong ? Tokens.TITLE : Tokens.TEXT);
        title.setPaint(strong ? Tokens.INK : Tokens.SOFT_INK);
        title.setHorizontalAlignment(HorizontalAlignment.LEFT);
        title.setTextAlignment(HorizontalAlignment.LEFT);
        title.setMargin(new RectangleInsets(0, 4, strong ? 2 : 4, 0));
        return title;
    }

    private static NumberAxis axis(String label, String pattern) {
        NumberAxis axis = new NumberAxis(label);
        axis.setLabelFont(Tokens.TEXT);
        axis.setLabelPaint(Tokens.SOFT_INK);
        axis.setTickLabelFont(Tokens.SMALL);
        axis.setTickLabelPaint(Tokens.SOFT_INK);
        axis.setAxisLineVisible(false);
        axis.setTickMarksVisible(false);
        axis.setNumberFormatOverride(Drawing.numbers(pattern));
        return axis;
    }

    private OptionalDouble finishedMin() {
        if (change.finished().isPresent()) {
            return OptionalDouble.of(well.afterMin(change.finished().get().from()));
        }
        if (change.curve().isPresent()) {
            for (int i = 0; i < well.after().size(); i++) {
                if (Math.abs(change.curve().get().burstLeft(well.after().timeS(i))) < OVER) {
                    return OptionalDouble.of(well.afterMin(i));
                }
            }
        }
        return OptionalDouble.empty();
    }

    private XYPlot tracePlot() {
        NumberAxis absorbance = axis("absorbance", "0.00##");
        absorbance.setAutoRangeIncludesZero(false);
        absorbance.setUpperMargin(0.08);
        absorbance.setLowerMargin(0.06);
        XYPlot plot = plot(absorbance);
        plot.setDataset(0, points());
        plot.setRenderer(0, pointRenderer());
        plot.setDataset(1, lines());
        plot.setRenderer(1, lineRenderer());
        shade(plot, true);
        ValueMarker trigger = new ValueMarker(0, Tokens.INK, Tokens.DOTTED);
        trigger.setLabel("trigger");
        trigger.setLabelFont(Tokens.SMALL);
        trigger.setLabelPaint(Tokens.INK);
        trigger.setLabelAnchor(RectangleAnchor.BOTTOM_RIGHT);
        trigger.setLabelTextAnchor(TextAnchor.BOTTOM_LEFT);
        trigger.setLabelBackgroundColor(new Color(0, 0, 0, 0));
        trigger.setLabelOffset(new RectangleInsets(2, 4, 4, 4));
        plot.addDomainMarker(trigger, Layer.BACKGROUND);
        measure(plot);
        return plot;
    }

    private static XYPlot plot(NumberAxis range) {
        XYPlot plot = new XYPlot(null, null, range, null);
        plot.setBackgroundPaint(Tokens.CARD);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinePaint(Tokens.LINE);
        plot.setRangeGridlineStroke(Tokens.FINE);
        plot.setOutlineVisible(false);
        plot.setRangeAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
        plot.setAxisOffset(new RectangleInsets(0, 2, 2, 0));
        return plot;
    }

    private void shade(XYPlot plot, boolean label) {
        finishedMin.ifPresent(from -> {
            IntervalMarker part = new IntervalMarker(from, lastMin + 0.02 * (lastMin - firstMin), Tokens.FINISHED);
            part.setAlpha(1);
            if (label) {
                part.setLabel(change.curve().isPresent() ? "reaction over" : "reaction over: line fitted here");
                part.setLabelFont(Tokens.SMALL);
                part.setLabelPaint(Tokens.SOFT_INK);
                part.setLabelBackgroundColor(new Color(0, 0, 0, 0));
                boolean late = from > firstMin + 0.6 * (lastMin - firstMin);
                part.setLabelAnchor(late ? RectangleAnchor.TOP_RIGHT : RectangleAnchor.TOP_LEFT);
                part.setLabelTextAnchor(late ? TextAnchor.TOP_RIGHT : TextAnchor.TOP_LEFT);
            }
            plot.addDomainMarker(part, Layer.BACKGROUND);
        });
    }

    /** ΔA as a measure left of the readings, between the levels before and after. */
    private void measure(XYPlot plot) {
        double x = firstMin - 0.25 * margin();
        double cap = 0.12 * margin();
        double before = change.before();
        double after = change.after();
        plot.addAnnotation(new XYLineAnnotation(x, before, x, after, Tokens.FIRM, Tokens.INK));
        plot.addAnnotation(new XYLineAnnotation(x - cap, before, x + cap, before, Tokens.FIRM, Tokens.INK));
        plot.addAnnotation(new XYLineAnnotation(x - cap, after, x + cap, after, Tokens.FIRM, Tokens.INK));
        plot.addAnnotation(new XYLineAnnotation(x, after, 0, after, Tokens.DOTTED, Tokens.SOFT_INK));
        XYTextAnnotation number =
                new XYTextAnnotation("ΔA " + Figures.absorbance(change.deltaA()), x - cap, (before + after) / 2);
        number.setFont(Tokens.STRONG);
        number.setPaint(Tokens.INK);
        number.setTextAnchor(TextAnchor.BOTTOM_CENTER);
        number.setRotationAnchor(TextAnchor.BOTTOM_CENTER);
        number.setRotationAngle(-Math.PI / 2);
        plot.addAnnotation(number);
    }

    /** Readings by what became of them: baseline, after the trigger, left out. */
    XYSeriesCollection points() {
        XYSeries baseline = new XYSeries("baseline");
        XYSeries readings = new XYSeries("readings");
        XYSeries leftOut = new XYSeries("left out");
        well.before().ifPresent(before -> {
            for (int i = 0; i < before.size(); i++) {
                XYSeries of = change.baseline().leftOut().contains(i) ? leftOut : baseline;
                of.add(well.beforeMin(before, i), before.absorbance(i));
            }
        });
        List<Integer> out = leftOut();
        for (int i = 0; i < well.after().size(); i++) {
            (out.contains(i) ? leftOut : readings)
                    .add(well.afterMin(i), well.after().absorbance(i));
        }
        XYSeriesCollection points = new XYSeriesCollection();
        points.addSeries(baseline);
        points.addSeries(readings);
        points.addSeries(leftOut);
        return points;
    }

    private List<Integer> leftOut() {
        Optional<List<Integer>> ofLine = change.finished().map(FinishedPart::leftOut);
        return ofLine.or(() -> change.curve().map(FittedCurve::leftOut)).orElse(List.of());
    }

    private static XYLineAndShapeRenderer pointRenderer() {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        renderer.setSeriesShape(0, DOT);
        renderer.setSeriesPaint(0, Tokens.SOFT_INK);
        renderer.setSeriesShape(1, DOT);
        renderer.setSeriesPaint(1, Tokens.GOOD);
        renderer.setSeriesShape(2, ShapeUtils.createDiagonalCross(4, 0.8f));
        renderer.setSeriesPaint(2, Tokens.ATTENTION);
        return renderer;
    }

    /** Baseline, curve, finished line, the same carried back, the point at the trigger. */
    XYSeriesCollection lines() {
        XYSeriesCollection lines = new XYSeriesCollection();
        BaselineFit baseline = change.baseline();
        lines.addSeries(straight("line before", firstMin, 0, t -> baseline.at(60 * t)));
        XYSeries curve = new XYSeries("curve");
        XYSeries finished = new XYSeries("finished line");
        XYSeries back = new XYSeries("carried back");
        change.curve().ifPresent(fitted -> {
            for (int i = 0; i <= CURVE_POINTS; i++) {
                double t = lastMin * i / CURVE_POINTS;
                curve.add(t, fitted.at(60 * t));
            }
            back.add(0, fitted.finishedAt(0));
            back.add(finishedMin.orElse(lastMin), fitted.finishedAt(60 * finishedMin.orElse(lastMin)));
        });
        change.finished().ifPresent(part -> {
            double from = finishedMin.orElse(0);
            finished.add(from, part.at(60 * from));
            finished.add(lastMin, part.at(60 * lastMin));
            back.add(0, part.at(0));
            back.add(from, part.at(60 * from));
        });
        lines.addSeries(curve);
        lines.addSeries(finished);
        lines.addSeries(back);
        XYSeries end = new XYSeries("after, at the trigger");
        end.add(change.reading().isPresent() ? well.afterMin(change.reading().getAsInt()) : 0, change.after());
        lines.addSeries(end);
        return lines;
    }

    private interface Level {
        double at(double minutes);
    }

    private static XYSeries straight(String name, double from, double to, Level level) {
        XYSeries line = new XYSeries(name);
        line.add(from, level.at(from));
        line.add(to, level.at(to));
        return line;
    }

    private static XYLineAndShapeRenderer lineRenderer() {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        for (int i = 0; i < 4; i++) {
            renderer.setSeriesPaint(i, i == 0 ? Tokens.INK : Tokens.ACCENT);
            renderer.setSeriesStroke(i, i == 3 ? Tokens.DASHED : Tokens.FIRM);
        }
        renderer.setSeriesLinesVisible(4, false);
        renderer.setSeriesShapesVisible(4, true);
        renderer.setSeriesShape(4, new Ellipse2D.Double(-4.5, -4.5, 9, 9));
        renderer.setSeriesPaint(4, Tokens.ACCENT);
        renderer.setUseFillPaint(true);
        renderer.setSeriesFillPaint(4, Tokens.CARD);
        renderer.setDrawOutlines(true);
        renderer.setSeriesOutlineStroke(4, Tokens.FIRM);
        return renderer;
    }

    /** Residuals in mA of the readings that the line or the curve goes through. */
    XYSeries residuals() {
        XYSeries residuals = new XYSeries("residuals");
        for (int i = 0; i < well.after().size(); i++) {
            OptionalDouble residual = change.residual(well.after(), i);
            if (residual.isPresent()) {
                residuals.add(well.afterMin(i), 1000 * residual.getAsDouble());
            }
        }
        return residuals;
    }

    private XYPlot residualPlot() {
        XYSeries residuals = residuals();
        NumberAxis scale = axis("residual, mA", "0.##");
        scale.setRange(-residualScale(residuals), residualScale(residuals));
        XYPlot plot = plot(scale);
        plot.setDataset(new XYSeriesCollection(residuals));
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        renderer.setSeriesShape(0, DOT);
        renderer.setSeriesPaint(0, Tokens.INK);
        plot.setRenderer(renderer);
        shade(plot, false);
        plot.addRangeMarker(new ValueMarker(0, Tokens.SOFT_INK, Tokens.HAIR), Layer.BACKGROUND);
        plot.addDomainMarker(new ValueMarker(0, Tokens.INK, Tokens.DOTTED), Layer.BACKGROUND);
        return plot;
    }

    /** The next of 1, 2, 3, 5, 10 … above the largest residual. */
    private static double residualScale(XYSeries residuals) {
        double largest = Math.max(0.5, Math.max(Math.abs(residuals.getMinY()), Math.abs(residuals.getMaxY())));
        double power = Math.pow(10, Math.floor(Math.log10(largest)));
        List<Double> steps = new ArrayList<>(List.of(1.0, 2.0, 3.0, 5.0, 10.0));
        return power
                * steps.stream()
                        .filter(step -> step * power >= 1.05 * largest)
                        .findFirst()
                        .orElse(20.0);
    }
}
