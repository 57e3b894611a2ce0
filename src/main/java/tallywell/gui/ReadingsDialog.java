package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import javax.swing.BorderFactory;
import javax.swing.JDialog;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Faces;
import tallywell.desk.Intake;
import tallywell.desk.ReadingFaces;
import tallywell.desk.RunDesk;
import tallywell.desk.Selection;
import tallywell.desk.Shown;
import tallywell.quantity.Kind;
import tallywell.quantity.Quantity;

/** The exports of a run as small plates: which is before, which after, and what was understood of each. */
final class ReadingsDialog extends JPanel {
    private final RunDesk desk;
    private final Shown shown;

    ReadingsDialog(RunDesk desk, Shown shown) {
        super(new MigLayout("insets 14, fillx, gapy 6", "[grow, fill, sg][grow, fill, sg]", ""));
        this.desk = desk;
        this.shown = shown;
        desk.onChange(this::refresh);
        refresh();
    }

    private void refresh() {
        removeAll();
        if (desk.draft().readings().size() > 1) {
            add(Labels.wrapped(Text.of("readings.about"), false), "span 2, split 2, growx, wmin 200");
            add(Fields.primary(Text.of("readings.swap"), desk::reverseReadings), "growx 0, wrap 8");
        }
        for (int i = 0; i < desk.draft().readings().size(); i++) {
            boolean alone = desk.draft().readings().size() == 1;
            add(card(desk.draft().readings().get(i), i), alone ? "span 2, grow" : i % 2 == 1 ? "grow, wrap" : "grow");
        }
        revalidate();
        repaint();
    }

    private Card card(Intake intake, int index) {
        Card card = new Card(new MigLayout("insets 12, fillx, gapy 4", "[grow, fill][]", ""));
        boolean series = !intake.triggerAtS().isEmpty();
        String when = Text.of(
                series
                        ? "readings.series"
                        : intake.triggerBefore()
                                ? "readings.is.after"
                                : index == 0 ? "readings.is.before" : "readings.is.more");
        card.add(Labels.heading(when));
        card.add(Fields.button(Text.of("readings.remove"), () -> desk.removeReading(index)), "wrap");
        card.add(Labels.strong(intake.name()), "span 2, wrap");
        Faces faces = ReadingFaces.of(intake, shown);
        PlateView plate = new PlateView(new Selection(faces.wells().format()), faces);
        plate.setPreferredSize(new Dimension(380, 220));
        card.add(plate, "span 2, grow, h 240!, wrap");
        Legend legend = new Legend(faces);
        card.add(legend, "span 2, growx, wrap");
        intake.mean()
                .ifPresent(mean ->
                        card.add(Labels.soft(Text.of("readings.mean", shown.fixed(mean, 3))), "span 2, wrap"));
        if (series || desk.draft().readings().size() == 1) {
            trigger(card, intake);
        }
        card.add(Labels.wrapped(intake.explanation(), true), "span 2, growx, wmin 100");
        return card;
    }

    private void trigger(Card card, Intake intake) {
        String at = intake.triggerAtS().isEmpty()
                ? ""
                : shown.plain(intake.triggerAtS().get(0)) + " s";
        JTextField field = new JTextField(at, 8);
        field.setName("trigger-at");
        field.getAccessibleContext().setAccessibleName(Text.of("readings.at"));
        Runnable set = () -> {
            try {
                desk.triggerAt(Quantity.parse(shown.pointed(field.getText()), Kind.TIME)
                        .base());
            } catch (IllegalArgumentException e) {
                field.setToolTipText(e.getMessage());
                field.putClientProperty("JComponent.outline", "error");
            }
        };
        field.addActionListener(event -> set.run());
        card.add(Labels.plain(Text.of("readings.at")), "span 2, split 3");
        card.add(field, "wmin 80");
        card.add(Fields.button(Text.of("readings.set"), set), "growx 0, wrap");
    }

    static void show(Component owner, RunDesk desk, Shown shown) {
        JDialog dialog = new JDialog(
                SwingUtilities.getWindowAncestor(owner), Text.of("readings.title"), JDialog.ModalityType.MODELESS);
        JScrollPane pane = new JScrollPane(new ReadingsDialog(desk, shown));
        pane.setBorder(BorderFactory.createEmptyBorder());
        pane.getVerticalScrollBar().setUnitIncrement(16);
        dialog.setContentPane(pane);
        dialog.setSize(new Dimension(960, 600));
        dialog.setLocationRelativeTo(owner);
        dialog.setVisible(true);
    }
}
