package tallywell.gui;

import java.util.List;
import java.util.Locale;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Finding;
import tallywell.desk.LayoutDesk;

/** What is to be said of a layout while it is drawn; what is about wells selects them. */
final class FindingsCard extends Card {
    private static final int SIGN = 18;

    private final LayoutDesk desk;
    private final JPanel findings =
            new JPanel(new MigLayout("insets 0, fillx, gapy 2, hidemode 3", "[][grow, fill]", ""));

    FindingsCard(LayoutDesk desk) {
        super(new MigLayout("insets 14, fillx", "[grow, fill]", "[][]"));
        this.desk = desk;
        add(Labels.heading(Text.of("layout.checks")), "wrap 6");
        findings.setOpaque(false);
        add(findings, "growx, wmin 60");
    }

    void show(List<Finding> found) {
        findings.removeAll();
        found.forEach(this::add);
        findings.revalidate();
        findings.repaint();
    }

    private void add(Finding finding) {
        JLabel sign = new JLabel(
                switch (finding.tone()) {
                    case GOOD -> Glyph.good(SIGN);
                    case NOTE -> Glyph.missing(SIGN);
                    case LOOK -> Glyph.look(SIGN);
                });
        sign.getAccessibleContext()
                .setAccessibleName(Text.of(finding.tone().name().toLowerCase(Locale.ROOT)));
        findings.add(sign, "top, gaptop 6");
        findings.add(Labels.wrapped(finding.title(), false), "growx, wmin 60, gaptop 6, wrap");
        if (!finding.text().isEmpty()) {
            findings.add(Labels.wrapped(finding.text(), true), "skip 1, growx, wmin 60, wrap");
        }
        if (finding.needsLook() && !finding.wells().isEmpty()) {
            JButton show = Fields.button(
                    Text.of("layout.show", finding.wells().size()),
                    () -> desk.selection().only(finding.wells()));
            findings.add(show, "skip 1, wrap");
        }
    }
}
