package tallywell.gui;

import com.formdev.flatlaf.FlatClientProperties;
import java.awt.Component;
import java.util.Map;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.JTextField;
import javax.swing.SpinnerNumberModel;

/** Labelled fields, each with its name for screen readers. */
final class Fields {
    private Fields() {}

    static JTextField text(JPanel into, String label, String value) {
        JTextField field = new JTextField(value, 10);
        add(into, label, field);
        return field;
    }

    static JSpinner number(JPanel into, String label, int value, int least, int most) {
        JSpinner field = new JSpinner(new SpinnerNumberModel(value, least, most, 1));
        add(into, label, field);
        return field;
    }

    static <T> JComboBox<T> choice(JPanel into, String label, T[] values) {
        JComboBox<T> field = new JComboBox<>(values);
        add(into, label, field);
        return field;
    }

    static void add(JPanel into, String label, Component field) {
        JLabel name = Labels.plain(label);
        name.setLabelFor(field);
        field.getAccessibleContext().setAccessibleName(label);
        into.add(name);
        into.add(field, "growx, wmin 60, wrap");
    }

    static JButton button(String text, Runnable action) {
        JButton button = new JButton(text);
        button.addActionListener(event -> action.run());
        return button;
    }

    static JButton primary(String text, Runnable action) {
        JButton button = new Primary(text);
        button.addActionListener(event -> action.run());
        return button;
    }

    /** The button that goes on. */
    private static final class Primary extends JButton {
        Primary(String text) {
            super(text);
            updateUI();
        }

        @Override
        public void updateUI() {
            super.updateUI();
            setBackground(Palette.now().accent());
            setForeground(Palette.now().onAccent());
            putClientProperty(
                    FlatClientProperties.STYLE,
                    Map.of(
                            "hoverBackground", Palette.now().accent(),
                            "pressedBackground", Palette.now().accent(),
                            "focusedBackground", Palette.now().accent()));
            setFont(javax.swing.UIManager.getFont("Button.font").deriveFont(java.awt.Font.BOLD));
        }
    }

    static int value(JSpinner spinner) {
        return ((Number) spinner.getValue()).intValue();
    }
}
