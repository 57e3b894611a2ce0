package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Origin;
import tallywell.desk.RunDraft;
import tallywell.desk.SampleRows;
import tallywell.desk.Shown;
import tallywell.method.SampleList;
import tallywell.notice.InputException;

/** The samples in a table: typed, or pasted from a spreadsheet. */
final class SampleDialog extends JPanel {
    private final Grid grid;
    private final List<List<String>> rows;
    private final Shown shown;

    SampleDialog(RunDraft draft, Shown shown) {
        super(new MigLayout("insets 4, fill", "[grow, fill]", "[][grow, fill]"));
        this.shown = shown;
        rows = SampleRows.of(draft.layout().map(Origin::value).orElseThrow().slots(), draft.sampleList(), shown);
        List<String> headings = new ArrayList<>();
        for (String column : SampleRows.COLUMNS) {
            headings.add(Text.of("samples." + column));
        }
        grid = new Grid(rows, headings, 1);
        grid.setName("samples");
        grid.getColumnModel().getColumn(0).setPreferredWidth(60);
        grid.getColumnModel().getColumn(1).setPreferredWidth(210);
        grid.getAccessibleContext().setAccessibleName(Text.of("samples.title"));
        add(Labels.wrapped(Text.of("samples.about"), true), "wmin 300, wrap");
        JScrollPane pane = new JScrollPane(grid);
        pane.setPreferredSize(new Dimension(940, 460));
        add(pane, "grow");
    }

    SampleList samples() throws InputException {
        grid.stop();
        return SampleRows.list(rows, shown);
    }

    static Optional<SampleList> ask(Component owner, RunDraft draft, Shown shown) {
        SampleDialog panel = new SampleDialog(draft, shown);
        while (JOptionPane.showConfirmDialog(
                        owner, panel, Text.of("samples.title"), JOptionPane.OK_CANCEL_OPTION, JOptionPane.PLAIN_MESSAGE)
                == JOptionPane.OK_OPTION) {
            try {
                return Optional.of(panel.samples());
            } catch (InputException e) {
                JOptionPane.showMessageDialog(
                        owner, e.notices().get(0).toString(), Text.of("samples.title"), JOptionPane.WARNING_MESSAGE);
            }
        }
        return Optional.empty();
    }
}
