package tallywell.gui;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JComboBox;
import javax.swing.JComponent;
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
    private static final int WIDTH = 940;
    private static final int HEIGHT = 520;
    private static final int UNIT = 16;

    private final JPanel fields = new AsWide(
            new MigLayout("insets 8 12 8 12, fillx, gapy 4", "[190::, fill][220::280, fill][grow, fill]", ""));
    private final Map<String, Supplier<String>> values = new LinkedHashMap<>();
    private final MethodForm form;
    private final JComponent first;
    private final String text;

    MethodDialog(AssayMethod method, String text, Shown shown) {
        super(new BorderLayout());
        this.text = text;
        form = new MethodForm(method, shown);
        String section = "";
        for (Map.Entry<String, String> each : form.fields().entrySet()) {
            String key = each.getKey();
            String plain = key.replaceFirst("^\\d+[.]", "");
            String of = key.equals(plain) ? "" : key.substring(0, key.indexOf('.'));
            if (!of.equals(section)) {
                section = of;
                fields.add(Labels.heading(Text.of("method.step", of)), "span 3, gaptop 10, wrap");
            }
            field(key, plain, each.getValue());
        }
        first = (JComponent) fields.getComponent(1);
        JScrollPane pane = new JScrollPane(fields);
        pane.setPreferredSize(new Dimension(WIDTH, HEIGHT));
        pane.getVerticalScrollBar().setUnitIncrement(UNIT);
        add(pane);
    }

    private void field(String key, String plain, String value) {
        JLabel label = Labels.plain(Text.of("method." + plain));
        List<String> choices = MethodForm.choices(key);
        Component field;
        if (choices.isEmpty()) {
            JTextField typed = new JTextField(value);
            typed.setCaretPosition(0);
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
        fields.add(label);
        boolean title = plain.equals("title");
        // Titles are long: the field has the whole width, and what it is stands below.
        fields.add(field, title ? "growx, span 2, wmin 100, wrap" : "growx, wmin 100");
        fields.add(
                Labels.wrapped(Text.of("method." + plain + ".is"), true),
                title ? "skip 1, span 2, growx, wmin 160, wrap" : "growx, wmin 160, wrap");
    }

    Origin<AssayMethod> method() throws InputException {
        Map<String, String> filled = new LinkedHashMap<>();
        values.forEach((key, value) -> filled.put(key, value.get()));
        return form.method(text, filled);
    }

    static Optional<Origin<AssayMethod>> ask(Component owner, AssayMethod method, String text, Shown shown) {
        MethodDialog panel = new MethodDialog(method, text, shown);
        while (Asking.ask(owner, Text.of("method.dialog"), panel, panel.first)) {
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
