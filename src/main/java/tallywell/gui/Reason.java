package tallywell.gui;

import java.awt.Component;
import java.util.Optional;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Settings;

/**
 * Why a person decides something, and who.
 *
 * @param why not empty
 * @param who may be empty
 */
record Reason(String why, String who) {
    /** Asks for a reason and a name; the name is remembered. Empty if given up. */
    static Optional<Reason> ask(Component owner, String title, String about, Settings settings, String... usual) {
        JPanel panel = new JPanel(new MigLayout("insets 4, gapy 8", "[][grow, fill, 260:]", ""));
        panel.add(Labels.wrapped(about, false), "span 2, growx, wmin 200, wrap");
        JComboBox<String> why = new JComboBox<>(usual);
        why.setEditable(true);
        why.setSelectedItem("");
        why.setName("reason");
        Fields.add(panel, Text.of("reason.why"), why);
        JTextField who = Fields.text(panel, Text.of("reason.who"), settings.person());
        who.setName("person");
        // The room is kept from the start, since the dialog does not grow.
        JLabel missing = Labels.strong(" ");
        missing.setName("reason-missing");
        panel.add(missing, "skip 1, growx, wrap");
        while (Asking.ask(owner, title, panel, (JComponent) why.getEditor().getEditorComponent())) {
            String said = String.valueOf(why.getEditor().getItem()).strip();
            if (!said.isEmpty()) {
                settings.person(who.getText().strip());
                return Optional.of(new Reason(said, who.getText().strip()));
            }
            missing.setText(Text.of("reason.missing"));
            missing.setForeground(Palette.now().attention());
        }
        return Optional.empty();
    }
}
