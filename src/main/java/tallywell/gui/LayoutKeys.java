package tallywell.gui;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import javax.swing.JComponent;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import tallywell.desk.LayoutDesk;
import tallywell.desk.Selection;
import tallywell.desk.WellFace;
import tallywell.plate.Content;

/** The keys of the layout page, so that all of it can be done without a mouse. */
final class LayoutKeys {
    private static final int CONTROL = InputEvent.CTRL_DOWN_MASK;
    private static final int FAR = 1536;

    private final LayoutDesk desk;
    private final PlateView plate;
    private final RolePanel roles;
    private final JTextField title;

    LayoutKeys(LayoutDesk desk, PlateView plate, RolePanel roles, JTextField title) {
        this.desk = desk;
        this.plate = plate;
        this.roles = roles;
        this.title = title;
    }

    void bind(JComponent page) {
        letters();
        lines();
        Keys.bind(page, KeyStroke.getKeyStroke(KeyEvent.VK_F2, 0), "title", () -> {
            title.requestFocusInWindow();
            title.selectAll();
        });
        Keys.bind(page, KeyStroke.getKeyStroke(KeyEvent.VK_F6, 0), "details", this::change);
        Keys.bind(page, KeyStroke.getKeyStroke(KeyEvent.VK_L, CONTROL), "series", roles::series);
        Keys.bind(page, KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, CONTROL), "apply", roles::apply);
        plate.key(KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, 0), "apply", roles::apply);
        plate.key(
                KeyStroke.getKeyStroke(KeyEvent.VK_DELETE, 0),
                "clear",
                () -> desk.paint(new Content.Unused(), Text.of("edit.clear")));
    }

    /** From the plate to the details of the chosen role, and back. */
    private void change() {
        if (plate.isFocusOwner()) {
            roles.focusDetails();
        } else {
            plate.requestFocusInWindow();
        }
    }

    private void letters() {
        letter('S', WellFace.Shape.SAMPLE);
        letter('B', WellFace.Shape.BLANK);
        letter('D', WellFace.Shape.STANDARD);
        letter('K', WellFace.Shape.CONTROL);
        letter('N', WellFace.Shape.SAMPLE_BLANK);
        letter('P', WellFace.Shape.SPIKE);
        letter('U', WellFace.Shape.UNUSED);
    }

    /** A letter fills; with Shift it only chooses, so that the details can be set first. */
    private void letter(char key, WellFace.Shape shape) {
        plate.key(KeyStroke.getKeyStroke(key, 0), "paint" + key, () -> {
            roles.choose(shape);
            roles.apply();
        });
        plate.key(KeyStroke.getKeyStroke(key, InputEvent.SHIFT_DOWN_MASK), "choose" + key, () -> roles.choose(shape));
    }

    private void lines() {
        Selection selection = desk.selection();
        plate.key(KeyStroke.getKeyStroke('R', 0), "rows", selection::wholeRows);
        plate.key(KeyStroke.getKeyStroke('C', 0), "columns", selection::wholeColumns);
        jump(KeyEvent.VK_HOME, 0, -FAR);
        jump(KeyEvent.VK_END, 0, FAR);
        jump(KeyEvent.VK_PAGE_UP, -FAR, 0);
        jump(KeyEvent.VK_PAGE_DOWN, FAR, 0);
        go(KeyEvent.VK_LEFT, 0, -1);
        go(KeyEvent.VK_RIGHT, 0, 1);
        go(KeyEvent.VK_UP, -1, 0);
        go(KeyEvent.VK_DOWN, 1, 0);
    }

    private void jump(int code, int rows, int columns) {
        Selection selection = desk.selection();
        plate.key(KeyStroke.getKeyStroke(code, 0), "jump" + code, () -> selection.move(rows, columns, false));
        plate.key(
                KeyStroke.getKeyStroke(code, InputEvent.SHIFT_DOWN_MASK),
                "stretch far" + code,
                () -> selection.move(rows, columns, true));
    }

    private void go(int code, int rows, int columns) {
        plate.key(
                KeyStroke.getKeyStroke(code, CONTROL),
                "go" + code,
                () -> desk.selection().go(rows, columns));
    }
}
