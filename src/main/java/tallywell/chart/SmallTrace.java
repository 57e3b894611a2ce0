package tallywell.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Collection;
import java.util.List;
import org.jfree.data.xy.XYSeries;

/**
 * A trace small enough for a well of a plate: the readings as a line, broken where some are missing, over what was fitted.
 *
 * @param trace what is drawn
 * @param scale the axes that the wells of the plate share
 */
public record SmallTrace(DrawnTrace trace, Scale scale) {
    /**
     * Axes that traces share.
     *
     * @param first minute from the trigger
     * @param last minute from the trigger
     * @param low absorbance
     * @param high absorbance
     */
    public record Scale(double first, double last, double low, double high) {
        /** From the lowest to the highest reading that was not left out, in steps of 0.05, with nothing wasted. */
        public static Scale of(Collection<DrawnTrace> traces) {
            double first = 0;
            double last = 0;
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (DrawnTrace each : traces) {
                first = Math.min(first, each.points().firstMinute());
                last = Math.max(last, each.points().lastMinute());
                for (TracePoints.Point point : each.points().all()) {
                    if (point.part() != TracePoints.Part.LEFT_OUT) {
                        low = Math.min(low, point.absorbance());
                        high = Math.max(high, point.absorbance());
                    }
                }
            }
            last = last > first ? last : first + 1;
            if (!(low <= high)) {
                return new Scale(first, last, 0, 1);
            }
            low = Math.floor(20 * low) / 20;
            high = Math.ceil(20 * high) / 20;
            return new Scale(first, last, low, high > low ? high : low + 0.05);
        }

        double x(Rectangle2D field, double minutes) {
            return field.getX() + field.getWidth() * (minutes - first) / (last - first);
        }

        double y(Rectangle2D field, double absorbance) {
            double clipped = Math.max(low, Math.min(high, absorbance));
            return field.getMaxY() - field.getHeight() * (clipped - low) / (high - low);
        }
    }

    /**
     * Draws it.
     *
     * @param thick of the lines
     * @param colours of trigger, fit and what is over range
     * @param readings colour of the readings
     */
    public void draw(Graphics2D g, Rectangle2D field, double thick, ChartColours colours, Color readings) {
        double trigger = scale.x(field, trace.triggerMin());
        g.setPaint(colours.soft());
        g.setStroke(Ink.dots(0.6 * thick));
        g.draw(new Line2D.Double(trigger, field.getMinY(), trigger, field.getMaxY()));
        g.setStroke(Ink.pen(thick));
        trace.lines().finished().ifPresent(line -> {
            g.setPaint(colours.accent());
            g.draw(line(line, field));
        });
        g.setPaint(readings);
        g.draw(through(field));
        g.setPaint(colours.attention());
        for (double minute : trace.points().overMinutes()) {
            double x = scale.x(field, minute);
            g.fill(new Rectangle2D.Double(x - thick, field.getMinY() - thick, 2 * thick, 2 * thick));
        }
    }

    private Line2D line(XYSeries series, Rectangle2D field) {
        return new Line2D.Double(
                scale.x(field, series.getX(0).doubleValue()),
                scale.y(field, series.getY(0).doubleValue()),
                scale.x(field, series.getX(1).doubleValue()),
                scale.y(field, series.getY(1).doubleValue()));
    }

    private Path2D through(Rectangle2D field) {
        Path2D path = new Path2D.Double();
        for (List<TracePoints.Point> run : trace.points().runs()) {
            path.moveTo(
                    scale.x(field, run.get(0).minutes()),
                    scale.y(field, run.get(0).absorbance()));
            // A single reading between two gaps is a dot, so that the first one has a line, too.
            for (TracePoints.Point point : run) {
                path.lineTo(scale.x(field, point.minutes()), scale.y(field, point.absorbance()));
            }
        }
        return path;
    }
}
