package tallywell.gui;

import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import javax.swing.Icon;
import tallywell.desk.RoleFaces;
import tallywell.desk.WellFace;
import tallywell.plate.Layout;
import tallywell.plate.Well;

/** A layout as a small picture of its plate. */
final class LayoutGlyph implements Icon {
    private static final int WIDTH = 36;
    private static final int HEIGHT = 24;

    private final Layout layout;

    LayoutGlyph(Layout layout) {
        this.layout = layout;
    }

    @Override
    public void paintIcon(Component component, Graphics graphics, int x, int y) {
        Graphics2D g = (Graphics2D) graphics.create();
        Palette palette = Palette.now();
        int rows = layout.format().rows();
        int columns = layout.format().columns();
        int pitch = Math.max(1, Math.min(WIDTH / columns, HEIGHT / rows));
        int dot = Math.max(1, pitch - 1);
        for (Well well : layout.format().all()) {
            g.setColor(colour(palette, RoleFaces.shape(layout.at(well)).ofRole()));
            g.fillRect(x + well.column() * pitch, y + well.row() * pitch, dot, dot);
        }
        g.dispose();
    }

    /** Stronger than the grounds of wells, since there is no room for shapes. */
    private static Color colour(Palette palette, WellFace.Shape shape) {
        return switch (shape) {
            case SAMPLE, SAMPLE_BLANK, SPIKE -> palette.good();
            case STANDARD -> palette.attention();
            case CONTROL -> palette.accent();
            case BLANK, BLANK_UNTRIGGERED -> palette.edge();
            default -> palette.line();
        };
    }

    @Override
    public int getIconWidth() {
        return WIDTH;
    }

    @Override
    public int getIconHeight() {
        return HEIGHT;
    }
}
