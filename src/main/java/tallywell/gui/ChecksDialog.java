package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import tallywell.assess.Assessment;
import tallywell.assess.Check;

/** The checks of a batch one by one: limit, what was found, how it went. */
final class ChecksDialog {
    private static final int SIGN = 18;
    private static final int UNIT = 16;

    private ChecksDialog() {}

    static JPanel panel(Assessment assessment) {
        JPanel panel = new AsWide(
                new MigLayout("insets 16, fillx, gapy 6", "[][grow 30, fill][grow 40, fill][grow 30, fill][]", ""));
        section(panel, Text.of("checks.accept"), assessment.checks(), Check.State.NOT_ASSESSED.words());
        section(panel, Text.of("checks.look"), assessment.observations(), Text.of("checks.for.information"));
        return panel;
    }

    private static void section(JPanel panel, String title, List<Check> checks, String open) {
        if (checks.isEmpty()) {
            return;
        }
        panel.add(Labels.heading(title), "span 5, gaptop 8, wrap");
        panel.add(Labels.softStrong(Text.of("checks.what")), "skip 1");
        panel.add(Labels.softStrong(Text.of("checks.found")));
        panel.add(Labels.softStrong(Text.of("checks.limit")), "wrap");
        for (Check check : checks) {
            JLabel sign = new JLabel(
                    switch (check.state()) {
                        case PASSED -> Glyph.good(SIGN);
                        case FAILED -> Glyph.look(SIGN);
                        case NOT_ASSESSED -> Glyph.missing(SIGN);
                    });
            panel.add(sign, "top");
            panel.add(Labels.wrapped(name(check, checks), false), "top, wmin 120");
            panel.add(Labels.wrapped(check.found(), false), "top, wmin 140");
            panel.add(Labels.wrapped(limit(check), true), "top, wmin 140");
            boolean informs = check.state() == Check.State.NOT_ASSESSED && hasNumbers(check.found());
            panel.add(Labels.strong(informs ? open : check.state().words()), "top, wrap");
        }
    }

    /** What was found is a number, or why there is none. */
    private static boolean hasNumbers(String found) {
        return found.chars().anyMatch(Character::isDigit);
    }

    /** The name; where several checks have it, with the rule or limit that tells them apart. */
    private static String name(Check check, List<Check> checks) {
        long alike =
                checks.stream().filter(each -> each.name().equals(check.name())).count();
        String rule = check.source().isEmpty() ? check.limit() : check.source();
        return alike == 1 || rule.isEmpty() ? check.name() : check.name() + "\n" + rule;
    }

    /** The limit; where there is none, what is missing for it. */
    private static String limit(Check check) {
        if (!check.limit().isEmpty()) {
            return check.limit();
        }
        return check.source().startsWith("no ") ? check.source() : "–";
    }

    static void show(Component owner, Assessment assessment) {
        JScrollPane pane = new JScrollPane(panel(assessment));
        pane.setBorder(BorderFactory.createEmptyBorder());
        pane.getVerticalScrollBar().setUnitIncrement(UNIT);
        Reader.show(owner, Text.of("checks.title"), new Dimension(980, 600), close -> {
            JPanel all = new JPanel(new MigLayout("insets 0 0 16 16, fill, gapy 8", "[grow][]", "[grow, fill][]"));
            all.add(pane, "span 2, grow, wrap");
            JButton button = Fields.primary(Text.of("said.close"), close);
            button.setName("checks-close");
            all.add(button, "skip 1");
            return all;
        });
    }
}
