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
    private static final Font FACE = Ink.bold(11);

    private final double from;
    private final double to;
    private final String words;

    /**
     * A measure at t = 0.
     *
     * @param from absorbance at its foot
     * @param to absorbance at its head
     */
    Measure(double from, double to, String words) {
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
        double x = domain.valueToJava2D(0, area, RectangleEdge.BOTTOM) - ASIDE;
        double foot = range.valueToJava2D(from, area, RectangleEdge.LEFT);
        double head = range.valueToJava2D(to, area, RectangleEdge.LEFT);
        g.setPaint(Ink.TEXT);
        g.setStroke(Ink.pen(1.3));
        g.draw(new Line2D.Double(x, foot, x, head));
        g.draw(new Line2D.Double(x - FOOT, foot, x + FOOT, foot));
        g.draw(new Line2D.Double(x - FOOT, head, x + FOOT, head));
        g.setFont(FACE);
        Rectangle2D size = g.getFontMetrics().getStringBounds(words, g);
        double height = size.getHeight();
        // Where the measure is lower than its number, the number stands above the readings.
        double middle = Math.abs(foot - head) > 2.5 * height
                ? (foot + head) / 2
                : Math.max(area.getMinY() + height, Math.min(foot, head) - 1.4 * height);
        double left = Math.max(area.getMinX() + 2, x - FOOT - 4 - size.getWidth());
        g.setPaint(Ink.CARD);
        g.fill(new Rectangle2D.Double(left - 1, middle - height / 2, size.getWidth() + 2, height));
        g.setPaint(Ink.TEXT);
        g.drawString(words, (float) left, (float) (middle + 0.36 * FACE.getSize2D()));
    }
}
