package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.swing.JButton;
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

/** The samples in a table: typed, filled down, or pasted from a spreadsheet. */
final class SampleDialog extends JPanel {
    private static final int[] WIDTHS = {50, 190, 70, 96, 70, 96, 110, 70, 80, 90, 86, 96};
    private static final String USUAL_DILUTION = "1+9";

    private final Grid grid;
    private final Shown shown;

    SampleDialog(List<List<String>> rows, Shown shown) {
        super(new MigLayout("insets 4, fill", "[grow, fill]", "[][][grow, fill]"));
        this.shown = shown;
        List<String> headings = new ArrayList<>();
        for (String column : SampleRows.COLUMNS) {
            headings.add(Text.of("samples." + column));
        }
        grid = new Grid(rows, headings, 1, Set.of(SampleRows.NAME));
        grid.setName("samples");
        double larger = (double) grid.getFont().getSize() / Theme.USUAL;
        for (int i = 0; i < WIDTHS.length; i++) {
            grid.getColumnModel().getColumn(i).setPreferredWidth((int) (WIDTHS[i] * larger));
        }
        if (larger > 1) {
            // Narrower columns would cut their headings.
            grid.setAutoResizeMode(Grid.AUTO_RESIZE_OFF);
        }
        grid.getAccessibleContext().setAccessibleName(Text.of("samples.title"));
        add(Labels.wrapped(Text.of("samples.about"), true), "wmin 300, wrap");
        add(buttons(), "wrap");
        JScrollPane pane = new JScrollPane(grid);
        pane.setPreferredSize(new Dimension(1120, 400));
        add(pane, "grow, hmin 120");
    }

    private JPanel buttons() {
        JPanel row = new WrapRow(6);
        row.add(named("same-dilution", Fields.button(Text.of("samples.same"), this::askDilution)));
        row.add(named("fill-down", Fields.button(Text.of("samples.fill"), () -> {
            grid.stop();
            grid.fillDown();
        })));
        JButton undo = UndoButtons.undo(grid.cells().history());
        JButton redo = UndoButtons.redo(grid.cells().history());
        Runnable refresh = () -> {
            undo.setEnabled(grid.cells().history().undoable().isPresent());
            redo.setEnabled(grid.cells().history().redoable().isPresent());
        };
        grid.cells().history().onChange(refresh);
        refresh.run();
        row.add(undo);
        row.add(redo);
        return row;
    }

    private static JButton named(String name, JButton button) {
        button.setName(name);
        return button;
    }

    private void askDilution() {
        grid.stop();
        String typed = USUAL_DILUTION;
        while (true) {
            Object answer = JOptionPane.showInputDialog(
                    this,
                    Text.of("samples.same.about"),
                    Text.of("samples.dilution"),
                    JOptionPane.PLAIN_MESSAGE,
                    null,
                    null,
                    typed);
            if (answer == null) {
                return;
            }
            try {
                typed = String.valueOf(answer);
                SampleRows.dilution(typed, shown);
                Optional<Boolean> everywhere = everywhere();
                if (everywhere.isPresent()) {
                    dilution(typed, everywhere.get());
                }
                return;
            } catch (InputException e) {
                warn(this, e);
            }
        }
    }

    /**
     * Gives samples the same dilution.
     *
     * @param everywhere in all rows; else in those that hold anything
     */
    void dilution(String typed, boolean everywhere) throws InputException {
        grid.cells().same(SampleRows.DILUTION, SampleRows.dilution(typed, shown), everywhere);
    }

    /** Whether all rows are meant; asked where only some of them hold anything yet. Empty if given up. */
    private Optional<Boolean> everywhere() {
        int held = grid.cells().held();
        int all = grid.cells().rows().size();
        if (held == 0 || held == all) {
            return Optional.of(true);
        }
        Object[] answers = {Text.of("samples.same.every", all), Text.of("samples.same.held", held)};
        int answer = JOptionPane.showOptionDialog(
                this,
                Text.of("samples.same.which", held, all),
                Text.of("samples.dilution"),
                JOptionPane.DEFAULT_OPTION,
                JOptionPane.QUESTION_MESSAGE,
                null,
                answers,
                answers[0]);
        return answer == JOptionPane.CLOSED_OPTION ? Optional.empty() : Optional.of(answer == 0);
    }

    private static void warn(Component owner, InputException e) {
        JOptionPane.showMessageDialog(
                owner, e.notices().get(0).toString(), Text.of("samples.title"), JOptionPane.WARNING_MESSAGE);
    }

    Grid grid() {
        return grid;
    }

    Origin<SampleList> samples() throws InputException {
        grid.stop();
        return SampleTable.list(Text.of("samples.typed"), grid.cells().rows(), shown);
    }

    static Optional<Origin<SampleList>> ask(Component owner, List<List<String>> rows, Shown shown) {
        SampleDialog panel = new SampleDialog(rows, shown);
        while (Asking.ask(owner, Text.of("samples.title"), panel, panel.grid)) {
            try {
                return Optional.of(panel.samples());
            } catch (InputException e) {
                warn(owner, e);
            }
        }
        return Optional.empty();
    }
}
