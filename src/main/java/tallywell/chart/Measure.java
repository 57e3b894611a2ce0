package tallywell.chart;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;

/** A measure of height beside the trigger, with its number on the left. */
final class Measure extends AbstractXYAnnotation {
    private static final double ASIDE = 9;
    private static final double FOOT = 4;

    private final double at;
    private final double from;
    private final double to;
    private final String words;
    private final ChartStyle style;

    /**
     * A measure.
     *
     * @param at time of the trigger in min
     * @param from absorbance at its foot
     * @param to absorbance at its head
     */
    Measure(double at, double from, double to, String words, ChartStyle style) {
        this.at = at;
        this.style = style;
        this.from = from;
        this.to = to;
        this.words = words;
    }

    @Override
    public void draw(
            Graphics2D g,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis domain,
            ValueAxis range,
            int rendererIndex,
            PlotRenderingInfo info) {
        if (!plot.getOrientation().equals(PlotOrientation.VERTICAL)) {
            throw new IllegalArgumentException("plot must be upright but was " + plot.getOrientation());
        }
        double x = domain.valueToJava2D(at, area, RectangleEdge.BOTTOM) - ASIDE;
        double foot = range.valueToJava2D(from, area, RectangleEdge.LEFT);
        double head = range.valueToJava2D(to, area, RectangleEdge.LEFT);
        g.setPaint(style.colours().text());
        g.setStroke(Ink.pen(1.3));
        g.draw(new Line2D.Double(x, foot, x, head));
        g.draw(new Line2D.Double(x - FOOT, foot, x + FOOT, foot));
        g.draw(new Line2D.Double(x - FOOT, head, x + FOOT, head));
        Font face = style.bold(1.05);
        g.setFont(face);
        Rectangle2D size = g.getFontMetrics().getStringBounds(words, g);
        double height = size.getHeight();
        // Where the measure is lower than its number, the number stands above the readings.
        double middle = Math.abs(foot - head) > 2.5 * height
                ? (foot + head) / 2
                : Math.max(area.getMinY() + height, Math.min(foot, head) - 1.4 * height);
        double left = Math.max(area.getMinX() + 2, x - FOOT - 4 - size.getWidth());
        g.setPaint(style.colours().card());
        g.fill(new Rectangle2D.Double(left - 1, middle - height / 2, size.getWidth() + 2, height));
        g.setPaint(style.colours().text());
        g.drawString(words, (float) left, (float) (middle + 0.36 * face.getSize2D()));
    }
}
