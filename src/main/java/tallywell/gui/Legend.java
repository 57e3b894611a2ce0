package tallywell.gui;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.EnumSet;
import java.util.Set;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import tallywell.desk.Faces;
import tallywell.desk.WellFace;

/** Under the plate: the scale with its unit, and the signs in words. */
final class Legend extends JComponent {
    private static final int BAR = 190;

    private Faces faces;

    Legend(Faces faces) {
        this.faces = faces;
    }

    void show(Faces other) {
        faces = other;
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
            return faces.lowText() + " – " + faces.highText();
        }
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(300, getFontMetrics(small()).getHeight() * 2 + 2);
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
        for (var well : faces.wells().format().all()) {
            if (faces.wells().get(well).scaled().isPresent()) {
                return faces.hasScale();
            }
        }
        return false;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Palette.now();
        g.setFont(small());
        FontMetrics metrics = g.getFontMetrics();
        int x = 30;
        if (coloured()) {
            scale(g, palette, metrics, x);
            x += Math.max(BAR, metrics.stringWidth(faces.lowText() + "   " + faces.highText())) + 28;
        } else if (!faces.lowText().isEmpty()) {
            g.setColor(palette.soft());
            String range = faces.lowText() + " – " + faces.highText();
            g.drawString(range, x, metrics.getAscent() + 2);
            x += metrics.stringWidth(range) + 28;
        }
        signs(g, palette, metrics, x);
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

    private void signs(Graphics2D g, Palette palette, FontMetrics metrics, int from) {
        Set<WellFace.Badge> used = EnumSet.noneOf(WellFace.Badge.class);
        for (var well : faces.wells().format().all()) {
            used.addAll(faces.wells().get(well).badges());
        }
        WellPainter painter = new WellPainter(palette, faces, small());
        int x = from;
        int y = 1;
        for (WellFace.Badge badge : used) {
            int width = 22 + metrics.stringWidth(badge.text());
            if (x + width > getWidth() && y == 1) {
                x = from;
                y += metrics.getHeight();
            }
            painter.badge(g, badge, x, y, metrics.getHeight() - 3.0);
            g.setColor(palette.soft());
            g.drawString(badge.text(), x + metrics.getHeight() + 1, y + metrics.getAscent() - 1);
            x += width + 12;
        }
    }
}
