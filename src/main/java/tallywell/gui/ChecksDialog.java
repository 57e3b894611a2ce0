package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.util.List;
import javax.swing.JDialog;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import tallywell.assess.Assessment;
import tallywell.assess.Check;

/** The checks of a batch one by one: limit, what was found, how it went. */
final class ChecksDialog {
    private ChecksDialog() {}

    static JPanel panel(Assessment assessment) {
        JPanel panel = new JPanel(new MigLayout("insets 16, fillx, gapy 6", "[][grow, fill][grow, fill][]", ""));
        section(panel, Text.of("checks.accept"), assessment.checks());
        section(panel, Text.of("checks.look"), assessment.observations());
        return panel;
    }

    private static void section(JPanel panel, String title, List<Check> checks) {
        if (checks.isEmpty()) {
            return;
        }
        panel.add(Labels.heading(title), "span 4, gaptop 8, wrap");
        for (Check check : checks) {
            JLabel sign = new JLabel(
                    switch (check.state()) {
                        case PASSED -> Glyph.good(18);
                        case FAILED -> Glyph.look(18);
                        case NOT_ASSESSED -> Glyph.missing(18);
                    });
            panel.add(sign);
            panel.add(Labels.wrapped(check.name(), false), "wmin 120");
            String limit = check.limit().isEmpty() ? "" : "; " + check.limit();
            panel.add(Labels.wrapped(check.found() + limit, true), "wmin 160");
            panel.add(Labels.strong(check.state().words()), "wrap");
        }
    }

    static void show(Component owner, Assessment assessment) {
        JDialog dialog = new JDialog(
                SwingUtilities.getWindowAncestor(owner), Text.of("checks.title"), JDialog.ModalityType.MODELESS);
        JScrollPane pane = new JScrollPane(panel(assessment));
        pane.setBorder(null);
        pane.getVerticalScrollBar().setUnitIncrement(16);
        dialog.setContentPane(pane);
        dialog.setSize(new Dimension(900, 520));
        dialog.setLocationRelativeTo(owner);
        dialog.setVisible(true);
    }
}
