package tallywell.gui;

import java.awt.Toolkit;
import java.awt.datatransfer.Clipboard;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.StringSelection;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.ScrollPaneConstants;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.FileNames;
import tallywell.desk.Finding;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutEdits;
import tallywell.desk.LayoutFindings;
import tallywell.desk.RoleFaces;
import tallywell.desk.Shown;
import tallywell.desk.WellFace;
import tallywell.notice.InputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
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

    LayoutPage(LayoutDesk desk, Shown shown, Host host) {
        super(new MigLayout(
                "insets 12 20 12 20, fill, hidemode 2", "[244!, fill][grow, fill][244!, fill]", "[][][grow, fill]"));
        this.desk = desk;
        this.host = host;
        this.shown = shown;
        faces = new RoleFaces(shown, Optional.empty());
        plate = new PlateView(desk.selection(), faces.of(desk.layout()));
        roles = new RolePanel(desk, shown, said);
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
        JScrollPane pane = new JScrollPane(
                panel,
                ScrollPaneConstants.VERTICAL_SCROLLBAR_AS_NEEDED,
                ScrollPaneConstants.HORIZONTAL_SCROLLBAR_NEVER);
        pane.setBorder(null);
        pane.getViewport().setOpaque(false);
        pane.setOpaque(false);
        pane.getVerticalScrollBar().setUnitIncrement(16);
        return pane;
    }

    private JPanel header() {
        JPanel header = new JPanel(new MigLayout("insets 0, fillx, gapy 0", "[][][][]push[][][][][]", "[][]"));
        header.setOpaque(false);
        header.add(Labels.title(Text.of("layout.title")));
        name.getAccessibleContext().setAccessibleName(Text.of("layout.name.of"));
        name.setText(desk.layout().name());
        name.addActionListener(event -> rename());
        name.addFocusListener(new java.awt.event.FocusAdapter() {
            @Override
            public void focusLost(java.awt.event.FocusEvent event) {
                rename();
            }
        });
        header.add(name, "wmin 120");
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
        header.add(formats);
        header.add(Fields.button(
                Text.of("layout.renumber"), () -> desk.edit(LayoutEdits::renumber, Text.of("edit.renumber"))));
        header.add(Fields.button(Text.of("back"), host::start));
        header.add(undo);
        header.add(redo);
        header.add(Fields.button(Text.of("print"), this::print));
        header.add(Fields.primary(Text.of("layout.save"), this::save), "wrap");
        header.add(where, "span, gaptop 2");
        return header;
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
            name.setText(desk.layout().name());
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
        plate.key(
                KeyStroke.getKeyStroke(KeyEvent.VK_DELETE, 0),
                "clear",
                () -> desk.paint(new Content.Unused(), Text.of("edit.clear")));
        letter('S', WellFace.Shape.SAMPLE);
        letter('B', WellFace.Shape.BLANK);
        letter('D', WellFace.Shape.STANDARD);
        letter('K', WellFace.Shape.CONTROL);
    }

    private void letter(char key, WellFace.Shape shape) {
        plate.key(KeyStroke.getKeyStroke(key, 0), "paint" + key, () -> {
            roles.choose(shape);
            roles.apply();
        });
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
        desk.file().or(() -> host.askSave(Text.of("layout.save"), suggested())).ifPresent(target -> save(target, then));
    }

    private Path suggested() {
        String plain = FileNames.of(desk.layout().name());
        return Path.of("plate-layouts", (plain.isEmpty() ? "layout" : plain) + ".yaml");
    }

    private void save(Path target, Runnable then) {
        Layout layout = desk.layout();
        host.jobs()
                .run(
                        said,
                        Text.of("layout.saving"),
                        Jobs.Cancel.NEVER,
                        progress -> {
                            LayoutDesk.write(layout, target);
                            return target;
                        },
                        written -> {
                            desk.saved(layout, target);
                            host.savedLayout(target);
                            said.clear();
                            then.run();
                        },
                        e -> said.offer(
                                OutputWords.of(e),
                                List.of(
                                        new Said.Offer(Text.of("again"), () -> save(target, then)),
                                        new Said.Offer(
                                                Text.of("layout.elsewhere"),
                                                () -> host.askSave(Text.of("layout.save"), suggested())
                                                        .ifPresent(other -> save(other, then))))));
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
