package tallywell.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.workup.WellResult;

/**
 * A plate of small traces, all on the same axes: what differs in size or form is seen at a glance. The form of a frame
 * tells the role, a badge what is special, a stroke that a well does not count.
 */
public final class PlateOfTraces implements Picture {
    private static final double WIDTH = 700;
    private static final double LEFT = 26;
    private static final double RIGHT = 10;
    private static final double TOP = 66;
    private static final double LEGEND = 88;
    /** Height of a well over its width. */
    private static final double FORM = 0.84;
    /** Plates of more wells have no room for words in them. */
    private static final double LEAST_WIDTH_FOR_WORDS = 40;

    private final StepTraces step;
    private final PlateFormat format;
    private final Map<Well, DrawnTrace> wells = new LinkedHashMap<>();
    private final double cellWidth;
    private final double cellHeight;
    private final SmallTrace.Scale scale;

    private PlateOfTraces(StepTraces step) {
        this.step = step;
        format = step.analysis().assay().layout().format();
        for (WellResult well : step.wells()) {
            wells.put(well.well(), DrawnTrace.of(well));
        }
        cellWidth = (WIDTH - LEFT - RIGHT) / format.columns();
        cellHeight = Math.min(FORM * cellWidth, 150);
        scale = SmallTrace.Scale.of(wells.values());
    }

    /** The plate of a step that has traces. */
    public static PlateOfTraces of(StepTraces step) {
        if (!step.hasTraces()) {
            throw new IllegalArgumentException("step must have traces but was step " + step.step() + " without");
        }
        return new PlateOfTraces(step);
    }

    /** The axes that all wells share. */
    SmallTrace.Scale axes() {
        return scale;
    }

    @Override
    public double width() {
        return WIDTH;
    }

    @Override
    public double height() {
        return TOP + format.rows() * cellHeight + LEGEND;
    }

    @Override
    public void draw(Graphics2D to) {
        to.setPaint(Ink.PAPER);
        to.fill(new Rectangle2D.Double(0, 0, WIDTH, height()));
        title(to);
        words(to, axesInWords(), LEFT, 39, 10, false);
        names(to);
        for (Well well : format.all()) {
            cell(to, well);
        }
        legend(to);
    }

    /** The title as large as it fits; what does not fit at all is cut off and marked so. */
    private void title(Graphics2D g) {
        String run = step.analysis().assay().title();
        String text = step.analyte() + (run.isEmpty() ? "" : " · " + run);
        double room = WIDTH - LEFT - RIGHT;
        float size = (float) Math.max(10, Math.min(15, 15 * room / length(g, text, Ink.bold(15))));
        while (text.length() > 2 && length(g, text, Ink.bold(size)) > room) {
            text = text.substring(0, text.length() - 2).strip() + "…";
        }
        words(g, text, LEFT, 22, size, true);
    }

    private static double length(Graphics2D g, String text, Font face) {
        return face.getStringBounds(text, g.getFontRenderContext()).getWidth();
    }

    /** The common scale in words. */
    String axesInWords() {
        return "All wells on one scale: " + step.absorbance() + ", " + Ink.number(scale.low(), 2) + " to "
                + Ink.number(scale.high(), 2) + "; " + minutes(scale.first()) + " to " + minutes(scale.last())
                + " min from the trigger (dotted)";
    }

    private static String minutes(double value) {
        return Ink.number(value, 1).replaceFirst("[.]0$", "");
    }

    private void names(Graphics2D g) {
        float size = (float) Math.max(4.5, Math.min(10, 0.5 * cellWidth));
        g.setFont(Ink.plain(size));
        g.setPaint(Ink.SOFT);
        for (int column = 0; column < format.columns(); column++) {
            String name = Integer.toString(column + 1);
            double width = g.getFontMetrics().getStringBounds(name, g).getWidth();
            g.drawString(name, (float) (LEFT + (column + 0.5) * cellWidth - width / 2), (float) (TOP - 5));
        }
        float across = (float) Math.max(4.5, Math.min(10, 0.8 * cellHeight));
        g.setFont(Ink.plain(across));
        for (int row = 0; row < format.rows(); row++) {
            String name = Well.rowName(row);
            double width = g.getFontMetrics().getStringBounds(name, g).getWidth();
            g.drawString(name, (float) (LEFT - 6 - width), (float) (TOP + (row + 0.5) * cellHeight + 0.36 * across));
        }
    }

    private void cell(Graphics2D g, Well at) {
        double gap = Math.min(2, 0.05 * cellWidth);
        Rectangle2D cell = new Rectangle2D.Double(
                LEFT + at.column() * cellWidth + gap,
                TOP + at.row() * cellHeight + gap,
                cellWidth - 2 * gap,
                cellHeight - 2 * gap);
        DrawnTrace drawn = wells.get(at);
        if (drawn == null) {
            double r = Math.min(1.5, 0.06 * cellHeight);
            g.setPaint(Ink.LINE);
            g.fill(new Ellipse2D.Double(cell.getCenterX() - r, cell.getCenterY() - r, 2 * r, 2 * r));
            return;
        }
        WellResult well = drawn.result();
        WellFrame.of(well.content().role()).draw(g, cell);
        trace(g, drawn, cell);
        if (hasWords()) {
            words(g, well.content().word(), cell.getX() + 5, cell.getY() + 9, 6.5f, false);
        }
        if (!well.used()) {
            g.setPaint(Ink.TEXT);
            g.setStroke(Ink.pen(1.2));
            g.draw(new Line2D.Double(cell.getMinX() + 3, cell.getMaxY() - 3, cell.getMaxX() - 3, cell.getMinY() + 3));
        }
        double r = Math.min(5, 0.2 * cellHeight);
        Badge.of(StepTraces.flagsOf(well))
                .ifPresent(badge -> badge.draw(g, cell.getMaxX() - r + 1, cell.getMinY() + r - 1, r));
    }

    private boolean hasWords() {
        return cellWidth >= LEAST_WIDTH_FOR_WORDS;
    }

    private void trace(Graphics2D g, DrawnTrace drawn, Rectangle2D cell) {
        double inset = Math.min(4, 0.1 * cellHeight);
        double head = hasWords() ? 7 : 0;
        Rectangle2D field = new Rectangle2D.Double(
                cell.getX() + inset,
                cell.getY() + inset + head,
                cell.getWidth() - 2 * inset,
                cell.getHeight() - 2 * inset - head);
        double thick = Math.min(1, 0.03 * cellHeight);
        Color readings = drawn.result().used() ? Ink.GOOD : Ink.SOFT;
        new SmallTrace(drawn, scale).draw(g, field, thick, ChartColours.PRINT, readings);
    }

    private void legend(Graphics2D g) {
        double top = TOP + format.rows() * cellHeight + 14;
        key(g, new Rectangle2D.Double(LEFT + 26, top, 104, 52));
        double x = LEFT + 164;
        double y = top + 4;
        for (WellFrame frame : frames()) {
            frame.draw(g, new Rectangle2D.Double(x, y - 1, 17, 13));
            x = words(g, frame.words(), x + 22, y + 9, 9, false) + 14;
        }
        x = LEFT + 164;
        y += 21;
        for (Map.Entry<Badge, Integer> badge : badges().entrySet()) {
            String text = badge.getKey().words() + " (" + badge.getValue() + ")";
            g.setFont(Ink.plain(9));
            double width = g.getFontMetrics().getStringBounds(text, g).getWidth();
            if (x > LEFT + 164 && x + 22 + width > WIDTH - RIGHT) {
                x = LEFT + 164;
                y += 17;
            }
            badge.getKey().draw(g, x + 8, y + 5.5, 5);
            x = words(g, text, x + 22, y + 9, 9, false) + 14;
        }
    }

    /** One empty well, large, with its axes. */
    private void key(Graphics2D g, Rectangle2D field) {
        g.setPaint(Ink.LINE);
        g.setStroke(Ink.pen(0.7));
        g.draw(field);
        double trigger = scale.x(field, 0);
        g.setPaint(Ink.SOFT);
        g.setStroke(Ink.dots(0.7));
        g.draw(new Line2D.Double(trigger, field.getMinY(), trigger, field.getMaxY()));
        right(g, Ink.number(scale.high(), 2), field.getMinX() - 3, field.getMinY() + 7);
        right(g, Ink.number(scale.low(), 2), field.getMinX() - 3, field.getMaxY());
        double y = field.getMaxY() + 10;
        if (trigger - field.getMinX() > 12) {
            right(g, minutes(scale.first()), trigger - 5, y);
        }

        words(g, "0", trigger - 2.5, y, 8, false);
        right(g, minutes(scale.last()) + " min", field.getMaxX() + 4, y);
        words(g, "readings", field.getMinX() + 42, field.getMinY() + 22, 8, false);
        g.setPaint(Ink.GOOD);
        g.setStroke(Ink.pen(1));
        g.draw(new Line2D.Double(
                field.getMinX() + 80, field.getMinY() + 19, field.getMaxX() - 4, field.getMinY() + 19));
        words(g, "fitted", field.getMinX() + 42, field.getMinY() + 36, 8, false);
        g.setPaint(Ink.ACCENT);
        g.draw(new Line2D.Double(
                field.getMinX() + 80, field.getMinY() + 33, field.getMaxX() - 4, field.getMinY() + 33));
    }

    private static void right(Graphics2D g, String text, double x, double y) {
        g.setFont(Ink.plain(8));
        g.setPaint(Ink.TEXT);
        double width = g.getFontMetrics().getStringBounds(text, g).getWidth();
        g.drawString(text, (float) (x - width), (float) y);
    }

    /** Draws a text and says where it ends. */
    private static double words(Graphics2D g, String text, double x, double y, float size, boolean bold) {
        g.setFont(bold ? Ink.bold(size) : Ink.plain(size));
        g.setPaint(bold ? Ink.TEXT : size < 8 ? Ink.SOFT : Ink.TEXT);
        g.drawString(text, (float) x, (float) y);
        return x + g.getFontMetrics().getStringBounds(text, g).getWidth();
    }

    private List<WellFrame> frames() {
        return List.of(WellFrame.values()).stream()
                .filter(frame -> wells.values().stream()
                        .anyMatch(well -> WellFrame.of(well.result().content().role()) == frame))
                .toList();
    }

    /** The badges on the plate, with how many wells carry each. */
    Map<Badge, Integer> badges() {
        Map<Badge, Integer> counts = new TreeMap<>();
        for (DrawnTrace well : wells.values()) {
            Optional<Badge> badge = Badge.of(StepTraces.flagsOf(well.result()));
            badge.ifPresent(each -> counts.merge(each, 1, Integer::sum));
        }
        return counts;
    }
}
