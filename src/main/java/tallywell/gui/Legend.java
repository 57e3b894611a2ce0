package tallywell.gui;

import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.RenderingHints;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import tallywell.desk.Faces;
import tallywell.desk.WellFace;

/** Under the plate: the scale with its unit, and the signs in words. */
final class Legend extends JComponent {
    private static final int BAR = 190;
    private static final int LEFT = 30;
    private static final int GAP = 28;
    private static final int BETWEEN = 12;
    private static final int LEAST_BESIDE = 220;

    private Faces faces;
    private String none = "";

    Legend(Faces faces) {
        this.faces = faces;
    }

    /**
     * Shows the legend of other wells.
     *
     * @param without what is said where the wells could have values and none has
     */
    void show(Faces other, String without) {
        faces = other;
        none = without;
        revalidate();
        repaint();
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new LegendAccess();
        }
        return accessibleContext;
    }

    /** Reads the ends of the scale out. */
    private final class LegendAccess extends AccessibleJComponent {
        @Override
        public AccessibleRole getAccessibleRole() {
            return AccessibleRole.LABEL;
        }

        @Override
        public String getAccessibleName() {
            return range();
        }
    }

    @Override
    public Dimension getPreferredSize() {
        FontMetrics metrics = getFontMetrics(small());
        int lines = Math.max(2, places(metrics).lines());
        return new Dimension(300, metrics.getHeight() * lines + 2);
    }

    /** How many lines it takes follows from the width, which is known only when the place has been given. */
    @Override
    public void setBounds(int x, int y, int width, int height) {
        boolean isOther = width != getWidth();
        super.setBounds(x, y, width, height);
        if (isOther && height != getPreferredSize().height) {
            // The layout that is under way would take this for done.
            EventQueue.invokeLater(this::revalidate);
        }
    }

    /**
     * Where the signs stand.
     *
     * @param at upper left corners in the order of the signs
     * @param lines how many lines of text are taken
     */
    private record Places(List<Point> at, int lines) {}

    /** Beside the scale where there is room, else below it; as many lines as it takes. */
    private Places places(FontMetrics metrics) {
        int width = getWidth() == 0 ? Integer.MAX_VALUE : getWidth();
        int scale = LEFT + scaleWidth(metrics) + GAP;
        boolean beside = width - scale >= LEAST_BESIDE;
        int from = beside ? scale : LEFT;
        int line = beside || scale == LEFT + GAP ? 0 : 2;
        int x = from;
        List<Point> at = new ArrayList<>();
        for (WellFace.Badge badge : badges()) {
            int wide = metrics.getHeight() + 1 + metrics.stringWidth(badge.text());
            if (x + wide > width && x > from) {
                x = from;
                line++;
            }
            at.add(new Point(x, 1 + line * metrics.getHeight()));
            x += wide + BETWEEN;
        }
        return new Places(at, line + 1);
    }

    private int scaleWidth(FontMetrics metrics) {
        if (coloured()) {
            return Math.max(BAR, metrics.stringWidth(faces.lowText() + "   " + faces.highText()));
        }
        return metrics.stringWidth(range());
    }

    /** The ends of the scale in words; where there is no scale, that there are no values. */
    private String range() {
        if (faces.hasScale()) {
            return faces.lowText() + " – " + faces.highText();
        }
        // Wells that are all alike have their value in them.
        return faces.lowText().isEmpty() || anyValue() ? "" : none;
    }

    private boolean anyValue() {
        return faces.wells().format().all().stream()
                .anyMatch(well -> faces.wells().get(well).scaled().isPresent());
    }

    private Set<WellFace.Badge> badges() {
        Set<WellFace.Badge> used = EnumSet.noneOf(WellFace.Badge.class);
        for (var well : faces.wells().format().all()) {
            used.addAll(faces.wells().get(well).badges());
        }
        return used;
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(100, getPreferredSize().height);
    }

    private Font small() {
        return javax.swing.UIManager.getFont("Label.font")
                .deriveFont(
                        Font.PLAIN,
                        0.9f * javax.swing.UIManager.getFont("Label.font").getSize2D());
    }

    private boolean coloured() {
        return faces.hasScale() && anyValue();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Palette.now();
        g.setFont(small());
        FontMetrics metrics = g.getFontMetrics();
        if (coloured()) {
            scale(g, palette, metrics, LEFT);
        } else {
            g.setColor(palette.soft());
            g.drawString(range(), LEFT, metrics.getAscent() + 2);
        }
        signs(g, palette, metrics);
        g.dispose();
    }

    private void scale(Graphics2D g, Palette palette, FontMetrics metrics, int x) {
        ValueScale scale = new ValueScale();
        for (int i = 0; i < BAR; i++) {
            g.setColor(scale.at(i / (BAR - 1.0)));
            g.fillRect(x + i, 2, 1, metrics.getHeight() - 5);
        }
        g.setColor(palette.soft());
        int y = metrics.getHeight() + metrics.getAscent() - 1;
        g.drawString(faces.lowText().replaceAll("[ ].*", ""), x, y);
        int width = metrics.stringWidth(faces.highText());
        g.drawString(
                faces.highText(),
                Math.max(
                        x + BAR - width, x + metrics.stringWidth(faces.lowText().replaceAll("[ ].*", "")) + 12),
                y);
    }

    private void signs(Graphics2D g, Palette palette, FontMetrics metrics) {
        WellPainter painter = new WellPainter(palette, faces, small());
        List<Point> at = places(metrics).at();
        int i = 0;
        for (WellFace.Badge badge : badges()) {
            Point point = at.get(i++);
            painter.badge(g, badge, point.x, point.y, metrics.getHeight() - 3.0);
            g.setColor(palette.soft());
            g.drawString(badge.text(), point.x + metrics.getHeight() + 1, point.y + metrics.getAscent() - 1);
        }
    }
}
