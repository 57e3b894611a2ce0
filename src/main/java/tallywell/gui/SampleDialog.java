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
import tallywell.desk.SampleRows;
import tallywell.desk.SampleTable;
import tallywell.desk.Shown;
import tallywell.method.SampleList;
import tallywell.notice.InputException;

/** The samples in a table: typed, or pasted from a spreadsheet. */
final class SampleDialog extends JPanel {
    private static final int[] WIDTHS = {50, 190, 70, 96, 70, 96, 110, 70, 80, 90, 86, 96};

    private final Grid grid;
    private final List<List<String>> rows;
    private final Shown shown;

    SampleDialog(List<List<String>> rows, Shown shown) {
        super(new MigLayout("insets 4, fill", "[grow, fill]", "[][grow, fill]"));
        this.shown = shown;
        this.rows = rows;
        List<String> headings = new ArrayList<>();
        for (String column : SampleRows.COLUMNS) {
            headings.add(Text.of("samples." + column));
        }
        grid = new Grid(rows, headings, 1);
        grid.setName("samples");
        for (int i = 0; i < WIDTHS.length; i++) {
            grid.getColumnModel().getColumn(i).setPreferredWidth(WIDTHS[i]);
        }
        grid.getAccessibleContext().setAccessibleName(Text.of("samples.title"));
        add(Labels.wrapped(Text.of("samples.about"), true), "wmin 300, wrap");
        JScrollPane pane = new JScrollPane(grid);
        pane.setPreferredSize(new Dimension(1120, 440));
        add(pane, "grow");
    }

    Origin<SampleList> samples() throws InputException {
        grid.stop();
        return SampleTable.list(Text.of("samples.typed"), rows, shown);
    }

    static Optional<Origin<SampleList>> ask(Component owner, List<List<String>> rows, Shown shown) {
        SampleDialog panel = new SampleDialog(rows, shown);
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
