package tallywell.gui;

import java.awt.Component;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.JComboBox;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.LayoutEdits;
import tallywell.desk.Shown;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** Asks for a dilution series of standards: the highest level, how many, and how they go down. */
final class SeriesDialog {
    private static final double[] FACTORS = {1, 2, 10, 3};

    private SeriesDialog() {}

    /** The levels in one line, or nothing if given up. */
    static Optional<String> ask(Component owner, Shown shown) {
        JPanel panel = new JPanel(new MigLayout("insets 4, gapy 8", "[][grow, fill]", ""));
        JTextField highest = Fields.text(panel, Text.of("series.highest"), shown.plain(0.4) + " g/L");
        JSpinner count = Fields.number(panel, Text.of("series.count"), 6, 1, 24);
        JComboBox<String> steps = Fields.choice(panel, Text.of("series.steps"), new String[] {
            Text.of("series.even"), Text.of("series.half"), Text.of("series.tenth"), Text.of("series.third")
        });
        while (JOptionPane.showConfirmDialog(
                        owner, panel, Text.of("series.title"), JOptionPane.OK_CANCEL_OPTION, JOptionPane.PLAIN_MESSAGE)
                == JOptionPane.OK_OPTION) {
            try {
                Quantity top = Quantity.parse(
                        shown.pointed(highest.getText()), Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT);
                List<Quantity> levels = LayoutEdits.series(top, Fields.value(count), FACTORS[steps.getSelectedIndex()]);
                return Optional.of(
                        levels.stream().map(level -> shown.plain(level.value())).collect(Collectors.joining("  ")) + " "
                                + top.unit());
            } catch (IllegalArgumentException e) {
                panel.add(Labels.wrapped(String.valueOf(e.getMessage()), false), "span 2, growx, wmin 200, wrap");
            }
        }
        return Optional.empty();
    }
}
