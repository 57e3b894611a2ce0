package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.MethodForm;
import tallywell.desk.Origin;
import tallywell.desk.Shown;
import tallywell.method.AssayMethod;
import tallywell.notice.InputException;

/** A method as a form: each field with a sentence that says what it is. */
final class MethodDialog extends JPanel {
    private final Map<String, Supplier<String>> values = new LinkedHashMap<>();
    private final MethodForm form;
    private final String text;

    MethodDialog(AssayMethod method, String text, Shown shown) {
        super(new MigLayout("insets 8 12 8 12, fillx, gapy 4", "[190:][220!][grow, fill]", ""));
        this.text = text;
        form = new MethodForm(method, shown);
        String section = "";
        for (Map.Entry<String, String> each : form.fields().entrySet()) {
            String key = each.getKey();
            String plain = key.replaceFirst("^\\d+[.]", "");
            String of = key.equals(plain) ? "" : key.substring(0, key.indexOf('.'));
            if (!of.equals(section)) {
                section = of;
                add(Labels.heading(Text.of("method.step", of)), "span 3, gaptop 10, wrap");
            }
            field(key, plain, each.getValue());
        }
    }

    private void field(String key, String plain, String value) {
        JLabel label = Labels.plain(Text.of("method." + plain));
        List<String> choices = MethodForm.choices(key);
        Component field;
        if (choices.isEmpty()) {
            JTextField typed = new JTextField(value);
            values.put(key, typed::getText);
            field = typed;
        } else {
            JComboBox<String> box = new JComboBox<>(choices.toArray(new String[0]));
            box.setSelectedItem(value);
            values.put(key, () -> String.valueOf(box.getSelectedItem()));
            field = box;
        }
        field.getAccessibleContext().setAccessibleName(label.getText());
        field.setName("method-" + key);
        label.setLabelFor(field);
        add(label);
        add(field, "growx");
        add(Labels.wrapped(Text.of("method." + plain + ".is"), true), "growx, wmin 200, wrap");
    }

    Origin<AssayMethod> method() throws InputException {
        Map<String, String> filled = new LinkedHashMap<>();
        values.forEach((key, value) -> filled.put(key, value.get()));
        return form.method(text, filled);
    }

    static Optional<Origin<AssayMethod>> ask(Component owner, AssayMethod method, String text, Shown shown) {
        MethodDialog panel = new MethodDialog(method, text, shown);
        JScrollPane pane = new JScrollPane(panel);
        pane.setPreferredSize(new Dimension(940, 520));
        pane.getVerticalScrollBar().setUnitIncrement(16);
        while (JOptionPane.showConfirmDialog(
                        owner, pane, Text.of("method.dialog"), JOptionPane.OK_CANCEL_OPTION, JOptionPane.PLAIN_MESSAGE)
                == JOptionPane.OK_OPTION) {
            try {
                return Optional.of(panel.method());
            } catch (InputException e) {
                JOptionPane.showMessageDialog(owner, said(e), Text.of("method.dialog"), JOptionPane.WARNING_MESSAGE);
            }
        }
        return Optional.empty();
    }

    private static String said(InputException e) {
        var notice = e.notices().get(0);
        String field = notice.place().text().replaceFirst("^\\d+[.]", "");
        return Text.has("method." + field) ? Text.of("method." + field) + ": " + notice.text() : notice.text();
    }
}
