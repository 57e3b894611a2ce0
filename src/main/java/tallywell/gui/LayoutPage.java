package tallywell.gui;

import java.awt.BorderLayout;
import java.awt.Toolkit;
import java.awt.datatransfer.Clipboard;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.StringSelection;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.ScrollPaneConstants;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Finding;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutEdits;
import tallywell.desk.LayoutFindings;
import tallywell.desk.RoleFaces;
import tallywell.desk.Shown;
import tallywell.notice.InputException;
import tallywell.plate.PlateFormat;

/** Draws a layout. */
final class LayoutPage extends JPanel {
    private final LayoutDesk desk;
    private final RoleFaces faces;
    private final Said said = new Said();
    private final PlateView plate;
    private final RolePanel roles;
    private final JTextField name = new JTextField(22);
    private final JLabel where = Labels.soft("");
    private final JLabel selected = Labels.strong("");
    private final FindingsCard findings;
    private final JButton undo;
    private final JButton redo;
    private final Host host;
    private final Shown shown;
    private final Looks looks;
    private final boolean forRun;
    private final LayoutSaving saving;

    /** Draws a layout; for a run that waits for it, or for none yet. */
    LayoutPage(LayoutDesk desk, Shown shown, Host host, boolean forRun) {
        super(new MigLayout(
                "insets 12 20 12 20, fill, hidemode 2", "[288!, fill][grow, fill][232!, fill]", "[][][grow, fill]"));
        this.desk = desk;
        this.host = host;
        this.forRun = forRun;
        looks = new Looks(host, said);
        saving = new LayoutSaving(this, desk, host, said);
        this.shown = shown;
        faces = new RoleFaces(shown, Optional.empty());
        plate = new PlateView(desk.selection(), faces.of(desk.layout()));
        roles = new RolePanel(desk, shown, host.settings(), said);
        undo = UndoButtons.undo(desk.history());
        redo = UndoButtons.redo(desk.history());
        findings = new FindingsCard(desk);
        add(header(), "span 3, growx, wrap");
        add(said, "span 3, growx, wrap");
        add(scrolled(roles), "grow");
        add(plateCard(), "grow, wmin 300");
        add(findings, "grow");
        keys();
        desk.history().onChange(this::refresh);
        desk.selection().onChange(this::refreshSelection);
        refresh();
    }

    private static JScrollPane scrolled(JPanel panel) {
        JPanel wide = new AsWide(new BorderLayout());
        wide.setOpaque(false);
        wide.add(panel);
        JScrollPane pane = new JScrollPane(
                wide, ScrollPaneConstants.VERTICAL_SCROLLBAR_AS_NEEDED, ScrollPaneConstants.HORIZONTAL_SCROLLBAR_NEVER);
        pane.setBorder(BorderFactory.createEmptyBorder());
        pane.getViewport().setOpaque(false);
        pane.setOpaque(false);
        pane.getVerticalScrollBar().setUnitIncrement(16);
        return pane;
    }

    private JPanel header() {
        JPanel header = new JPanel(new MigLayout("insets 0, fillx, gapy 4", "[grow, fill]", "[][]"));
        header.setOpaque(false);
        header.add(what(), "wrap");
        JPanel below = new JPanel(new MigLayout("insets 0, fillx", "[grow, fill][][][][][][][]", ""));
        below.setOpaque(false);
        below.add(where, "wmin 60");
        below.add(looks.button());
        below.add(Fields.button(Text.of(forRun ? "layout.back" : "back"), host::start));
        below.add(undo);
        below.add(redo);
        below.add(Fields.button(Text.of("print"), this::print));
        JButton use = Fields.button(Text.of(forRun ? "layout.use.here" : "layout.use"), this::use);
        use.setName("use");
        below.add(use);
        below.add(Fields.primary(Text.of("layout.save"), this::save));
        header.add(below);
        return header;
    }

    /** What is drawn: its title and its plate. */
    private JPanel what() {
        JPanel row = new JPanel(new MigLayout("insets 0, fillx", "[][grow, fill][][]", ""));
        row.setOpaque(false);
        JLabel heading = Labels.title(Text.of("layout.title"));
        heading.setLabelFor(name);
        row.add(heading);
        name.setName("layout-title");
        name.getAccessibleContext().setAccessibleName(Text.of("layout.name.of"));
        name.putClientProperty("JTextField.placeholderText", Text.of("layout.name.hint"));
        name.addActionListener(event -> {
            rename();
            plate.requestFocusInWindow();
        });
        name.addFocusListener(new FocusAdapter() {
            @Override
            public void focusLost(FocusEvent event) {
                rename();
            }
        });
        row.add(name, "wmin 120");
        JComboBox<PlateFormat> formats = new JComboBox<>(PlateFormat.KNOWN.toArray(new PlateFormat[0]));
        formats.setSelectedItem(desk.layout().format());
        formats.getAccessibleContext().setAccessibleName(Text.of("layout.plate"));
        formats.addActionListener(event -> {
            if (formats.getSelectedItem() instanceof PlateFormat format
                    && !format.equals(desk.layout().format())) {
                desk.format(format, Text.of("edit.plate"));
            }
        });
        desk.history().onChange(() -> formats.setSelectedItem(desk.layout().format()));
        row.add(formats);
        row.add(Fields.button(Text.of("layout.renumber"), this::renumber));
        return row;
    }

    private void renumber() {
        desk.edit(LayoutEdits::renumber, Text.of("edit.renumber"));
    }

    private void rename() {
        String typed = name.getText().strip();
        if (!typed.isEmpty() && !typed.equals(desk.layout().name())) {
            desk.edit(layout -> LayoutEdits.rename(layout, typed), Text.of("edit.rename"));
        }
    }

    private Card plateCard() {
        Card card = new Card(new MigLayout("insets 14, fill", "[grow, fill]", "[grow, fill][][]"));
        card.add(plate, "grow, wrap");
        card.add(selected, "gapleft 30, wrap");
        card.add(Labels.wrapped(Text.of("layout.hint"), true), "gapleft 30, growx, wmin 100");
        return card;
    }

    private void refresh() {
        List<Finding> found = LayoutFindings.of(desk.layout());
        plate.show(faces.of(desk.layout(), found));
        if (!name.isFocusOwner()) {
            name.setText(LayoutSaving.title(desk.layout()));
            name.setCaretPosition(0);
        }
        UndoButtons.refresh(desk.history(), undo, redo);
        String file = desk.file().map(Path::toString).orElse(Text.of("layout.unsaved"));
        where.setText(file + " · " + desk.layout().format().wells() + " " + Text.of("wells") + state());
        findings.show(found);
        refreshSelection();
    }

    /** Nothing is said of a layout that nobody has begun. */
    private String state() {
        boolean begun = desk.file().isPresent() || desk.history().isUnsaved();
        return begun ? " · " + Text.of(desk.history().isUnsaved() ? "changed" : "saved") : "";
    }

    private void refreshSelection() {
        String words = desk.selection().words();
        selected.setText(words.isEmpty() ? Text.of("layout.select") : Text.of("layout.selected", words));
    }

    private void keys() {
        int control = InputEvent.CTRL_DOWN_MASK;
        global(
                KeyStroke.getKeyStroke(KeyEvent.VK_Z, control),
                "undo",
                () -> desk.history().undo());
        global(
                KeyStroke.getKeyStroke(KeyEvent.VK_Y, control),
                "redo",
                () -> desk.history().redo());
        global(KeyStroke.getKeyStroke(KeyEvent.VK_S, control), "save", this::save);
        plate.key(KeyStroke.getKeyStroke(KeyEvent.VK_C, control), "copy", this::copy);
        plate.key(KeyStroke.getKeyStroke(KeyEvent.VK_V, control), "paste", this::paste);
        new LayoutKeys(desk, plate, roles, name).bind(this);
        looks.keys(this);
    }

    /** The keyboard begins on the plate. */
    @Override
    public boolean requestFocusInWindow() {
        return plate.requestFocusInWindow();
    }

    private void global(KeyStroke stroke, String key, Runnable action) {
        Keys.bind(this, stroke, key, action);
    }

    private void copy() {
        clipboard().setContents(new StringSelection(desk.copy()), null);
    }

    private void paste() {
        try {
            if (clipboard().getData(DataFlavor.stringFlavor) instanceof String text) {
                desk.paste(text, Text.of("edit.paste"));
                said.clear();
            }
        } catch (InputException e) {
            said.problem(e.notices());
        } catch (UnsupportedFlavorException | IOException e) {
            said.hint(Text.of("paste.nothing"));
        }
    }

    private static Clipboard clipboard() {
        return Toolkit.getDefaultToolkit().getSystemClipboard();
    }

    private void save() {
        save(() -> {});
    }

    /** Saves under the known name, else asks for one, then goes on. */
    void save(Runnable then) {
        rename();
        saving.save(then);
    }

    /** Goes on to a run with this layout; what is not saved yet can be saved first. */
    void use() {
        rename();
        saving.use();
    }

    private void print() {
        LayoutPrint.print(desk.layout(), shown, host, said);
    }

    LayoutDesk desk() {
        return desk;
    }

    PlateView plate() {
        return plate;
    }

    RolePanel roles() {
        return roles;
    }

    Said said() {
        return said;
    }
}
