package tallywell.gui;

import java.awt.Color;
import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.RoundRectangle2D;
import javax.swing.Icon;
import javax.swing.JToggleButton;
import org.jspecify.annotations.Nullable;

/** One of several things to choose from: an icon, a word, a line of detail; large enough for gloves. */
final class Choice extends JToggleButton {
    private String detail = "";
    private final boolean pill;

    Choice(String text, @Nullable Icon icon, boolean pill) {
        super(text, icon);
        this.pill = pill;
        setContentAreaFilled(false);
        setBorderPainted(false);
        setOpaque(false);
        setRolloverEnabled(true);
        setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
        getAccessibleContext().setAccessibleName(text);
    }

    void detail(String text) {
        detail = text;
        getAccessibleContext().setAccessibleDescription(text);
        repaint();
    }

    private Font plain() {
        return getFont().deriveFont(Font.PLAIN);
    }

    private Font strong() {
        return getFont().deriveFont(Font.BOLD);
    }

    @Override
    public Dimension getPreferredSize() {
        FontMetrics metrics = getFontMetrics(strong());
        int height = metrics.getHeight();
        if (pill) {
            return new Dimension(metrics.stringWidth(getText()) + 24, height + 12);
        }
        return new Dimension(200, 2 * height + 10);
    }

    @Override
    public Dimension getMinimumSize() {
        return pill ? getPreferredSize() : new Dimension(120, getPreferredSize().height);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Palette.now();
        double round = pill ? getHeight() : 16;
        RoundRectangle2D shape = new RoundRectangle2D.Double(1, 1, getWidth() - 3.0, getHeight() - 3.0, round, round);
        if (isSelected()) {
            g.setColor(pill ? palette.accent() : palette.tint());
            g.fill(shape);
        } else if (getModel().isRollover()) {
            g.setColor(palette.tint());
            g.fill(shape);
        }
        if (isSelected() && !pill || isFocusOwner()) {
            g.setColor(isFocusOwner() && pill && isSelected() ? palette.ink() : palette.accent());
            g.draw(shape);
        }
        words(g, palette);
        g.dispose();
    }

    private void words(Graphics2D g, Palette palette) {
        Color ink = !isEnabled() ? palette.edge() : pill && isSelected() ? palette.onAccent() : palette.ink();
        Font main = isSelected() ? strong() : plain();
        FontMetrics metrics = g.getFontMetrics(main);
        g.setColor(ink);
        g.setFont(main);
        if (pill) {
            int x = (getWidth() - metrics.stringWidth(getText())) / 2;
            g.drawString(getText(), x, (getHeight() - metrics.getHeight()) / 2 + metrics.getAscent());
            return;
        }
        int x = 12;
        Icon icon = getIcon();
        if (icon != null) {
            icon.paintIcon(this, g, x, (getHeight() - icon.getIconHeight()) / 2);
            x += icon.getIconWidth() + 12;
        }
        int block = detail.isEmpty() ? metrics.getHeight() : (int) (metrics.getHeight() * 1.95);
        int y = (getHeight() - block) / 2 + metrics.getAscent();
        g.setColor(ink);
        g.drawString(getText(), x, y);
        if (!detail.isEmpty()) {
            g.setColor(palette.soft());
            g.setFont(plain().deriveFont(getFont().getSize2D() * 0.88f));
            g.drawString(detail, x, y + (int) (metrics.getHeight() * 0.98));
        }
    }
}
