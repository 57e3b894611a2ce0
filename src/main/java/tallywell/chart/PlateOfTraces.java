package tallywell.chart;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Polygon;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.plate.WellMap;
import tallywell.trace.Series;

/**
 * The plate as small traces on common axes. A flagged well has a firm frame, a corner with a sign, and its first flag in
 * a word or two, so that it is seen without colour; a well that is not in use is a dot.
 */
public final class PlateOfTraces {
    private static final double LEFT = 58;
    private static final double TOP = 74;
    private static final double RIGHT = 18;
    private static final double BOTTOM = 46;
    private static final double GAP = 5;
    /** Cells lower than this (in pixels) have no room for words. */
    private static final double WORDS_FROM = 44;

    private final String title;
    private final WellMap<Optional<TracedWell>> wells;
    private final double firstMin;
    private final double lastMin;
    private final double low;
    private final double high;

    /**
     * A picture of a plate.
     *
     * @param title what stands above it
     * @param wells what is in each well; empty where it is not in use
     */
    public PlateOfTraces(String title, WellMap<Optional<TracedWell>> wells) {
        this.title = title;
        this.wells = wells;
        Extent extent = new Extent();
        wells.forEach((well, traced) -> traced.ifPresent(extent::add));
        firstMin = Math.min(0, extent.firstMin);
        lastMin = extent.lastMin > firstMin ? extent.lastMin : firstMin + 1;
        double rise = extent.high - extent.low;
        low = rise > 0 ? extent.low - 0.04 * rise : extent.low - 0.5;
        high = rise > 0 ? extent.high + 0.16 * rise : extent.low + 0.5;
    }

    /** The picture in pixels, twice the size asked for. */
    public byte[] png(int width, int height) {
        return Drawing.png(width, height, this::draw);
    }

    /** The picture as SVG text. */
    public String svg(int width, int height) {
        return Drawing.svg(width, height, this::draw);
    }

    /** How many wells are marked. */
    int marked() {
        int[] marked = {0};
        wells.forEach((well, traced) ->
                marked[0] += traced.isPresent() && !traced.get().flags().isEmpty() ? 1 : 0);
        return marked[0];
    }

    /** Lowest and highest absorbance of the common axis. */
    double[] absorbances() {
        return new double[] {low, high};
    }

    /** First and last minute of the common axis. */
    double[] minutes() {
        return new double[] {firstMin, lastMin};
    }

    /** What the axes have to hold. */
    private static final class Extent {
        private double firstMin;
        private double lastMin;
        private double low = Double.POSITIVE_INFINITY;
        private double high = Double.NEGATIVE_INFINITY;

        void add(TracedWell well) {
            firstMin = Math.min(firstMin, well.firstMin());
            lastMin = Math.max(lastMin, well.lastMin());
            well.before().ifPresent(this::add);
            add(well.after());
        }

        private void add(Series series) {
            for (int i = 0; i < series.size(); i++) {
                low = Math.min(low, series.absorbance(i));
                high = Math.max(high, series.absorbance(i));
            }
        }
    }

    private void draw(Graphics2D g, Rectangle2D area) {
        g.setPaint(Tokens.PAPER);
        g.fill(area);
        g.setFont(Tokens.TITLE);
        g.setPaint(Tokens.INK);
        g.drawString(title, (float) LEFT, 28f);
        g.setFont(Tokens.TEXT);
        g.setPaint(Tokens.SOFT_INK);
        g.drawString(legend(), (float) LEFT, 47f);
        if (!(high < Double.POSITIVE_INFINITY)) {
            g.drawString("no well of this plate has readings", (float) LEFT, (float) TOP);
            return;
        }
        PlateFormat format = wells.format();
        double width = (area.getWidth() - LEFT - RIGHT) / format.columns();
        double height = (area.getHeight() - TOP - BOTTOM) / format.rows();
        for (Well well : format.all()) {
            Rectangle2D cell = new Rectangle2D.Double(
                    LEFT + well.column() * width, TOP + well.row() * height, width - GAP, height - GAP);
            drawWell(g, cell, wells.get(well).orElse(null));
            if (well.row() == 0) {
                centred(g, String.valueOf(well.column() + 1), cell.getCenterX(), TOP - 6);
            }
            if (well.column() == 0) {
                centred(g, well.rowName(), LEFT - 44, cell.getCenterY() + 4);
                drawAbsorbances(g, cell);
            }
            if (well.row() == format.rows() - 1) {
                drawMinutes(g, cell);
            }
        }
        centred(g, "minutes from the trigger", area.getWidth() / 2, area.getHeight() - 10);
    }

    private String legend() {
        int marked = marked();
        String flagged =
                marked == 0 ? "no well is flagged" : "▲ flagged: " + marked + (marked == 1 ? " well" : " wells");
        return "absorbance over time, all wells on the same axes  ·  dotted: trigger  ·  " + flagged;
    }

    private static void centred(Graphics2D g, String text, double x, double y) {
        g.setFont(Tokens.SMALL);
        g.setPaint(Tokens.SOFT_INK);
        FontMetrics metrics = g.getFontMetrics(Tokens.SMALL);
        g.drawString(text, (float) (x - metrics.stringWidth(text) / 2.0), (float) y);
    }

    private void drawAbsorbances(Graphics2D g, Rectangle2D cell) {
        Font tiny = Tokens.SMALL.deriveFont(9f);
        FontMetrics metrics = g.getFontMetrics(tiny);
        g.setFont(tiny);
        g.setPaint(Tokens.SOFT_INK);
        double step = step(high - low);
        for (double a = Math.ceil(low / step) * step; a <= high; a += step) {
            double y = y(cell, a);
            if (y > cell.getMinY() + 3 && y < cell.getMaxY() - 1) {
                String text = Drawing.numbers("0.##").format(a);
                g.drawString(text, (float) (LEFT - 5 - metrics.stringWidth(text)), (float) (y + 3));
            }
        }
    }

    private void drawMinutes(Graphics2D g, Rectangle2D cell) {
        Font tiny = Tokens.SMALL.deriveFont(9f);
        FontMetrics metrics = g.getFontMetrics(tiny);
        g.setFont(tiny);
        g.setPaint(Tokens.SOFT_INK);
        double step = step(lastMin - firstMin);
        for (double t = 0; t <= lastMin; t += step) {
            String text = Drawing.numbers("0.##").format(t);
            g.drawString(text, (float) (x(cell, t) - metrics.stringWidth(text) / 2.0), (float) cell.getMaxY() + 13);
        }
    }

    /** A round step that divides a span into two to four. */
    private static double step(double span) {
        double power = Math.pow(10, Math.floor(Math.log10(span)));
        double part = span / power;
        return power * (part < 1.5 ? 0.5 : part < 3 ? 1 : part < 7 ? 2 : 5);
    }

    private double x(Rectangle2D cell, double minutes) {
        return cell.getMinX() + 3 + (minutes - firstMin) / (lastMin - firstMin) * (cell.getWidth() - 6);
    }

    private double y(Rectangle2D cell, double absorbance) {
        return cell.getMaxY() - 3 - (absorbance - low) / (high - low) * (cell.getHeight() - 6);
    }

    private void drawWell(Graphics2D g, Rectangle2D cell, @Nullable TracedWell well) {
        if (well == null) {
            g.setPaint(Tokens.LINE);
            g.fill(new Ellipse2D.Double(cell.getCenterX() - 2, cell.getCenterY() - 2, 4, 4));
            return;
        }
        RoundRectangle2D card =
                new RoundRectangle2D.Double(cell.getMinX(), cell.getMinY(), cell.getWidth(), cell.getHeight(), 8, 8);
        boolean flagged = !well.flags().isEmpty();
        g.setPaint(Tokens.CARD);
        g.fill(card);
        drawTrace(g, cell, well);
        g.setStroke(flagged ? Tokens.FIRM : Tokens.HAIR);
        g.setPaint(flagged ? Tokens.ATTENTION : Tokens.LINE);
        g.draw(card);
        drawWords(g, cell, well, flagged);
    }

    private void drawTrace(Graphics2D g, Rectangle2D cell, TracedWell well) {
        g.setStroke(Tokens.DOTTED);
        g.setPaint(Tokens.LINE);
        g.draw(new Line2D.Double(x(cell, 0), cell.getMinY() + 1, x(cell, 0), cell.getMaxY() - 1));
        g.setStroke(Tokens.FIRM);
        well.before().ifPresent(before -> {
            Path2D path = new Path2D.Double();
            for (int i = 0; i < before.size(); i++) {
                extend(path, x(cell, well.beforeMin(before, i)), y(cell, before.absorbance(i)));
            }
            g.setPaint(Tokens.SOFT_INK);
            g.draw(path);
        });
        Path2D path = new Path2D.Double();
        for (int i = 0; i < well.after().size(); i++) {
            extend(path, x(cell, well.afterMin(i)), y(cell, well.after().absorbance(i)));
        }
        g.setPaint(Tokens.GOOD);
        g.draw(path);
        double after = y(cell, well.change().after());
        g.setPaint(Tokens.ACCENT);
        g.fill(new Ellipse2D.Double(x(cell, 0) - 2.2, after - 2.2, 4.4, 4.4));
    }

    private static void extend(Path2D path, double x, double y) {
        if (path.getCurrentPoint() == null) {
            path.moveTo(x, y);
            // A path of one point draws nothing; a short stroke makes it a dot.
            path.lineTo(x + 0.8, y);
        } else {
            path.lineTo(x, y);
        }
    }

    private void drawWords(Graphics2D g, Rectangle2D cell, TracedWell well, boolean flagged) {
        if (flagged) {
            int right = (int) Math.round(cell.getMaxX());
            int top = (int) Math.round(cell.getMinY());
            g.setPaint(Tokens.ATTENTION);
            g.fill(new Polygon(
                    new int[] {right - 16, right - 2, right - 9}, new int[] {top + 15, top + 15, top + 3}, 3));
            g.setPaint(Tokens.CARD);
            g.setFont(Tokens.SMALL.deriveFont(Font.BOLD, 9f));
            g.drawString("!", right - 10.2f, top + 13.5f);
        }
        if (cell.getHeight() < WORDS_FROM) {
            return;
        }
        Font tiny = Tokens.SMALL.deriveFont(9f);
        g.setFont(tiny);
        FontMetrics metrics = g.getFontMetrics(tiny);
        g.setPaint(Tokens.SOFT_INK);
        double room = cell.getWidth() - (flagged ? 24 : 8);
        g.drawString(
                fitted(well.caption().isEmpty() ? well.name() : well.caption(), metrics, room),
                (float) cell.getMinX() + 5,
                (float) cell.getMinY() + 11);
        if (flagged) {
            String words = fitted(well.mark(), metrics, 0.78 * cell.getWidth());
            double wide = metrics.stringWidth(words);
            // Where the trace is not: under its end if it ends high, else above it.
            boolean high = y(cell, well.change().after()) < cell.getCenterY();
            double base = high ? cell.getMaxY() - 5 : cell.getMinY() + 25;
            g.setPaint(Tokens.ATTENTION);
            g.drawString(words, (float) (cell.getMaxX() - wide - 5), (float) base);
        }
    }

    /** As much of a text as there is room for. */
    private static String fitted(String text, FontMetrics metrics, double room) {
        if (metrics.stringWidth(text) <= room) {
            return text;
        }
        int length = text.length();
        while (length > 1 && metrics.stringWidth(text.substring(0, length) + "…") > room) {
            length--;
        }
        return text.substring(0, length).strip() + "…";
    }
}
