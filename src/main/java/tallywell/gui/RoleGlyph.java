package tallywell.gui;

import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.Icon;
import tallywell.desk.Faces;
import tallywell.desk.WellFace;
import tallywell.plate.PlateFormat;
import tallywell.plate.WellMap;

/** The shape of a role as an icon. */
final class RoleGlyph implements Icon {
    private final WellFace face;
    private final int size;

    RoleGlyph(WellFace.Shape shape, int size) {
        this.face = new WellFace(shape, "", "", OptionalDouble.empty(), List.of(), false, Optional.empty(), "");
        this.size = size;
    }

    @Override
    public void paintIcon(Component component, Graphics graphics, int x, int y) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        Faces none = new Faces(WellMap.of(new PlateFormat(1, 1), well -> face), 0, 0, "", "");
        new WellPainter(Palette.now(), none, component.getFont())
                .paint(g, face, new Rectangle2D.Double(x + 1, y + 1, size - 2.0, size - 2.0));
        g.dispose();
    }

    @Override
    public int getIconWidth() {
        return size;
    }

    @Override
    public int getIconHeight() {
        return size;
    }
}
