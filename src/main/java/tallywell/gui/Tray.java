package tallywell.gui;

import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.RoundRectangle2D;
import javax.swing.Icon;
import javax.swing.JButton;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;

/** A place for one thing that goes in: what is there, or what is missing; pressing it says what can be done. */
final class Tray extends JButton {
    private final String title;
    private final JPopupMenu menu = new JPopupMenu();
    private String main = "";
    private String detail = "";
    private String beside = "";
    private State state = State.MISSING;

    /** How far a tray is filled. */
    enum State {
        GOOD,
        LOOK,
        MISSING
    }

    Tray(String title) {
        this.title = title;
        setContentAreaFilled(false);
        setBorderPainted(false);
        setFocusPainted(false);
        setOpaque(false);
        setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
        addActionListener(event -> menu.show(this, 8, getHeight() - 4));
        getAccessibleContext().setAccessibleName(title);
    }

    Tray action(String text, Runnable action) {
        JMenuItem item = new JMenuItem(text);
        item.addActionListener(event -> action.run());
        menu.add(item);
        return this;
    }

    /** Puts something that can be done at a place in the menu. */
    JMenuItem action(int at, String text, Runnable action) {
        JMenuItem item = new JMenuItem(text);
        item.addActionListener(event -> action.run());
        menu.insert(item, at);
        return item;
    }

    /** Puts a line at a place in the menu. */
    void separator(int at) {
        menu.insert(new JPopupMenu.Separator(), at);
    }

    JPopupMenu menu() {
        return menu;
    }

    /** More words, behind the title; they are the first to be cut where there is no room. */
    void beside(String words) {
        beside = words;
    }

    private String titled() {
        return beside.isEmpty() ? title : title + " · " + beside;
    }

    void show(String mainText, String detailText, State how) {
        main = mainText;
        detail = detailText;
        state = how;
        getAccessibleContext().setAccessibleDescription(titled() + ", " + mainText + ", " + detailText);
        setToolTipText(detailText);
        repaint();
    }

    String words() {
        return main + " · " + detail;
    }

    @Override
    public void updateUI() {
        super.updateUI();
        if (menu != null) {
            javax.swing.SwingUtilities.updateComponentTreeUI(menu);
        }
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(240, (int) (getFontMetrics(getFont()).getHeight() * 3.2) + 8);
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(150, getPreferredSize().height);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette palette = Palette.now();
        RoundRectangle2D shape = new RoundRectangle2D.Double(1, 1, getWidth() - 3.0, getHeight() - 3.0, 20, 20);
        g.setColor(getModel().isRollover() ? palette.tint() : palette.card());
        g.fill(shape);
        g.setColor(isFocusOwner() ? palette.accent() : state == State.LOOK ? palette.attention() : palette.line());
        g.draw(shape);
        Icon icon = switch (state) {
            case GOOD -> Glyph.good(20);
            case LOOK -> Glyph.look(20);
            case MISSING -> Glyph.missing(20);
        };
        icon.paintIcon(this, g, getWidth() - 34, (getHeight() - 20) / 2);
        words(g, palette);
        g.dispose();
    }

    private void words(Graphics2D g, Palette palette) {
        Font font = getFont().deriveFont(Font.PLAIN);
        Font small = font.deriveFont(font.getSize2D() * 0.9f);
        int line = getFontMetrics(font).getHeight();
        int y = (getHeight() - 3 * line) / 2 + getFontMetrics(font).getAscent();
        // The sign stands beside the line in the middle only.
        int wide = getWidth() - 2 * 14;
        int room = wide - 28;
        g.setColor(palette.soft());
        draw(g, titled(), small.deriveFont(Font.BOLD), y, wide);
        g.setColor(palette.ink());
        draw(g, main, font.deriveFont(Font.BOLD, font.getSize2D() * 1.04f), y + line, room);
        g.setColor(palette.soft());
        draw(g, detail, small, y + 2 * line, wide);
    }

    private static void draw(Graphics2D g, String text, Font font, int y, int room) {
        FontMetrics metrics = g.getFontMetrics(font);
        String shown = text;
        while (shown.length() > 2 && metrics.stringWidth(shown) > room) {
            shown = shown.substring(0, shown.length() - (shown.endsWith("…") ? 2 : 1)) + "…";
        }
        g.setFont(font);
        g.drawString(shown, 14, y);
    }
}
