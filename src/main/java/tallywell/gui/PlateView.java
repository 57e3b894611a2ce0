package tallywell.gui;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.ActionEvent;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import javax.swing.ToolTipManager;
import javax.swing.UIManager;
import javax.swing.event.MouseInputAdapter;
import org.jspecify.annotations.Nullable;
import tallywell.desk.Faces;
import tallywell.desk.Selection;
import tallywell.desk.WellFace;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/** The plate: every well drawn, selected with mouse or keys. */
final class PlateView extends JComponent {
    private static final int ROW_HEAD = 30;
    private static final int COLUMN_HEAD = 24;

    private final Selection selection;
    private Faces faces;

    PlateView(Selection selection, Faces faces) {
        this.selection = selection;
        this.faces = faces;
        setFocusable(true);
        setOpaque(false);
        setName("plate");
        ToolTipManager.sharedInstance().registerComponent(this);
        MouseInputAdapter mouse = new Mouse();
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
        addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent event) {
                repaint();
            }

            @Override
            public void focusLost(FocusEvent event) {
                repaint();
            }
        });
        keys();
        selection.onChange(this::selectionChanged);
        setPreferredSize(new Dimension(700, 460));
        setMinimumSize(new Dimension(280, 200));
    }

    void show(Faces other) {
        faces = other;
        repaint();
    }

    Faces faces() {
        return faces;
    }

    private void selectionChanged() {
        repaint();
        if (accessibleContext != null) {
            accessibleContext.firePropertyChange(
                    AccessibleContext.ACCESSIBLE_DESCRIPTION_PROPERTY, null, describeCursor());
        }
    }

    private String describeCursor() {
        Well cursor = selection.cursor();
        return format().holds(cursor) ? faces.wells().get(cursor).words() : "";
    }

    private PlateFormat format() {
        return faces.wells().format();
    }

    PlateGeometry geometry() {
        return new PlateGeometry(format(), getWidth(), getHeight(), ROW_HEAD, COLUMN_HEAD);
    }

    @Override
    public @Nullable String getToolTipText(MouseEvent event) {
        return geometry()
                .at(event.getX(), event.getY())
                .map(well -> faces.wells().get(well).words())
                .orElse(null);
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new PlateAccess();
        }
        return accessibleContext;
    }

    /** Tells screen readers what the cursor stands on. */
    private final class PlateAccess extends AccessibleJComponent {
        @Override
        public AccessibleRole getAccessibleRole() {
            return AccessibleRole.TABLE;
        }

        @Override
        public String getAccessibleName() {
            return Text.of("plate.name", format().wells());
        }

        @Override
        public String getAccessibleDescription() {
            return describeCursor();
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        Palette palette = Palette.now();
        PlateGeometry geometry = geometry();
        headings(g, palette, geometry);
        bars(g, palette, geometry);
        WellPainter painter = new WellPainter(palette, faces, font());
        for (Well well : format().all()) {
            Rectangle2D.Double box = geometry.well(well);
            if (g.hitClip((int) box.x - 12, (int) box.y - 12, (int) box.width + 24, (int) box.height + 24)) {
                painter.paint(g, faces.wells().get(well), box);
            }
        }
        selected(g, palette, geometry);
        g.dispose();
    }

    private static Font font() {
        return UIManager.getFont("Label.font");
    }

    private void headings(Graphics2D g, Palette palette, PlateGeometry geometry) {
        g.setFont(font());
        g.setColor(palette.soft());
        int every = geometry.pitchX() < 18 ? 4 : 1;
        for (int column = 0; column < format().columns(); column++) {
            if (column % every == 0) {
                centred(
                        g,
                        Integer.toString(column + 1),
                        geometry.left() + (column + 0.5) * geometry.pitchX(),
                        geometry.top() - COLUMN_HEAD / 2.0);
            }
        }
        every = geometry.pitchY() < 13 ? 4 : 1;
        for (int row = 0; row < format().rows(); row++) {
            if (row % every == 0) {
                centred(
                        g,
                        Well.rowName(row),
                        geometry.left() - ROW_HEAD / 2.0,
                        geometry.top() + (row + 0.5) * geometry.pitchY());
            }
        }
    }

    private static void centred(Graphics2D g, String text, double x, double y) {
        double width = g.getFontMetrics().stringWidth(text);
        g.drawString(
                text, (float) (x - width / 2), (float) (y + g.getFontMetrics().getAscent() * 0.37));
    }

    /** Replicates that stand next to each other are joined. */
    private void bars(Graphics2D g, Palette palette, PlateGeometry geometry) {
        if (geometry.pitchY() < 18) {
            return;
        }
        g.setColor(palette.edge());
        g.setStroke(new BasicStroke(3, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
        for (Well well : format().all()) {
            Rectangle2D.Double box = geometry.well(well);
            Well below = new Well(well.row() + 1, well.column());
            Well beside = new Well(well.row(), well.column() + 1);
            if (joined(well, below)) {
                g.draw(new Line2D.Double(
                        box.getCenterX(), box.getMaxY() - 1, box.getCenterX(), geometry.well(below).y + 1));
            }
            if (joined(well, beside)) {
                g.draw(new Line2D.Double(
                        box.getMaxX() - 1, box.getCenterY(), geometry.well(beside).x + 1, box.getCenterY()));
            }
        }
    }

    private boolean joined(Well one, Well other) {
        if (!format().holds(other)) {
            return false;
        }
        WellFace a = faces.wells().get(one);
        WellFace b = faces.wells().get(other);
        return a.shape() == b.shape()
                && a.label().equals(b.label())
                && !a.label().isEmpty()
                && a.shape() != WellFace.Shape.UNUSED
                && a.shape() != WellFace.Shape.BLANK
                && a.shape() != WellFace.Shape.BLANK_UNTRIGGERED;
    }

    private void selected(Graphics2D g, Palette palette, PlateGeometry geometry) {
        double around = Math.max(1, Math.min(3, geometry.pitchY() * 0.07));
        for (Well well : selection.wells()) {
            Rectangle2D.Double box = geometry.well(well);
            Rectangle2D.Double ring = new Rectangle2D.Double(
                    box.x - around, box.y - around, box.width + 2 * around, box.height + 2 * around);
            g.setColor(palette.accent());
            g.setStroke(new BasicStroke((float) Math.max(1.2, Math.min(2.6, geometry.pitchY() * 0.06))));
            g.draw(WellPainter.outline(faces.wells().get(well).shape(), ring));
        }
        if (isFocusOwner() && format().holds(selection.cursor())) {
            Rectangle2D.Double box = geometry.well(selection.cursor());
            g.setColor(palette.ink());
            g.setStroke(new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {3, 3}, 0));
            g.draw(new Rectangle2D.Double(box.x - 4, box.y - 4, box.width + 8, box.height + 8));
        }
    }

    private void keys() {
        move(KeyEvent.VK_LEFT, 0, -1);
        move(KeyEvent.VK_RIGHT, 0, 1);
        move(KeyEvent.VK_UP, -1, 0);
        move(KeyEvent.VK_DOWN, 1, 0);
        key(KeyStroke.getKeyStroke(KeyEvent.VK_A, InputEvent.CTRL_DOWN_MASK), "all", selection::all);
        key(KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0), "none", selection::none);
        key(
                KeyStroke.getKeyStroke(KeyEvent.VK_SPACE, InputEvent.CTRL_DOWN_MASK),
                "toggle",
                () -> selection.start(selection.cursor(), true));
        key(KeyStroke.getKeyStroke(KeyEvent.VK_SPACE, 0), "only", () -> selection.start(selection.cursor(), false));
    }

    private void move(int code, int rows, int columns) {
        key(KeyStroke.getKeyStroke(code, 0), "move" + code, () -> selection.move(rows, columns, false));
        key(
                KeyStroke.getKeyStroke(code, InputEvent.SHIFT_DOWN_MASK),
                "stretch" + code,
                () -> selection.move(rows, columns, true));
    }

    /** Binds a key while the plate has the focus. */
    void key(KeyStroke stroke, String name, Runnable action) {
        getInputMap(WHEN_FOCUSED).put(stroke, name);
        getActionMap().put(name, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent event) {
                action.run();
            }
        });
    }

    /** Clicks and drags on wells and headings. */
    private final class Mouse extends MouseInputAdapter {
        private static final int NOTHING = -1;

        private boolean dragging;
        private int rowFrom = NOTHING;
        private int columnFrom = NOTHING;

        @Override
        public void mousePressed(MouseEvent event) {
            requestFocusInWindow();
            PlateGeometry geometry = geometry();
            rowFrom = NOTHING;
            columnFrom = NOTHING;
            dragging = false;
            Optional<Well> hit = geometry.at(event.getX(), event.getY());
            boolean add = event.isControlDown() || event.isMetaDown();
            if (hit.isPresent()) {
                if (event.isShiftDown()) {
                    selection.extend(hit.get());
                } else {
                    selection.start(hit.get(), add);
                }
                dragging = true;
                return;
            }
            heading(event, geometry, add);
        }

        private void heading(MouseEvent event, PlateGeometry geometry, boolean add) {
            double right = geometry.left() + geometry.pitchX() * format().columns();
            double bottom = geometry.top() + geometry.pitchY() * format().rows();
            Well near = geometry.nearest(event.getX(), event.getY());
            boolean inRows = event.getY() >= geometry.top() && event.getY() < bottom;
            boolean inColumns = event.getX() >= geometry.left() && event.getX() < right;
            if (event.getX() < geometry.left() && inRows) {
                rowFrom = event.isShiftDown() ? selection.cursor().row() : near.row();
                selection.rows(rowFrom, near.row(), add);
            } else if (event.getY() < geometry.top() && inColumns) {
                columnFrom = event.isShiftDown() ? selection.cursor().column() : near.column();
                selection.columns(columnFrom, near.column(), add);
            } else if (!add && !event.isShiftDown()) {
                selection.none();
            }
        }

        @Override
        public void mouseDragged(MouseEvent event) {
            Well near = geometry().nearest(event.getX(), event.getY());
            if (dragging) {
                selection.extend(near);
            } else if (rowFrom != NOTHING) {
                selection.rows(rowFrom, near.row(), event.isControlDown());
            } else if (columnFrom != NOTHING) {
                selection.columns(columnFrom, near.column(), event.isControlDown());
            }
        }
    }
}
