package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javax.swing.JOptionPane;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTabbedPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Origin;
import tallywell.desk.RoleFaces;
import tallywell.desk.RunDraft;
import tallywell.desk.TypedPlate;
import tallywell.plate.Well;

/** Readings without an export: pasted from anywhere, or typed well by well from a photometer. */
final class TypedReadings extends JPanel {
    private final JTextField name;
    private final JTextArea pasted = new JTextArea();
    private final JTabbedPane tabs = new JTabbedPane();
    private final List<Well> wells;
    private final Grid grid;
    private final Host host;

    TypedReadings(RunDraft draft, Host host) {
        super(new MigLayout("insets 4, fill", "[][grow, fill]", "[][grow, fill]"));
        this.host = host;
        String usual = Text.of(draft.readings().isEmpty() ? "typed.before" : "typed.after");
        name = Fields.text(this, Text.of("typed.name"), usual);
        wells = TypedPlate.wells(draft.layout().map(Origin::value), draft.format());
        List<List<String>> rows = new ArrayList<>();
        RoleFaces faces = new RoleFaces(host.shown(), Optional.of(draft.sampleList()));
        for (Well well : wells) {
            String words = draft.layout()
                    .map(each -> faces.of(each.value()).wells().get(well).words())
                    .orElse(well.toString());
            rows.add(new ArrayList<>(List.of(words, "")));
        }
        grid = new Grid(rows, List.of(Text.of("typed.well"), Text.of("typed.absorbance")), 1, Set.of());
        grid.setName("typed");
        pasted.setName("pasted");
        tabs.addTab(Text.of("typed.tab.type"), new JScrollPane(grid));
        tabs.addTab(Text.of("typed.tab.paste"), new JScrollPane(pasted));
        tabs.setPreferredSize(new Dimension(620, 420));
        add(tabs, "span 2, grow");
    }

    /** Asks for readings and puts them into a file; what was typed stays there until it can be read. */
    static void ask(Component owner, RunDraft draft, Host host, Said said, Consumer<Path> taker) {
        new TypedReadings(draft, host).ask(owner, said, taker);
    }

    private void ask(Component owner, Said said, Consumer<Path> taker) {
        int answer = JOptionPane.showConfirmDialog(
                owner, this, Text.of("typed.title"), JOptionPane.OK_CANCEL_OPTION, JOptionPane.PLAIN_MESSAGE);
        if (answer == JOptionPane.OK_OPTION) {
            Path folder = host.home().resolve("readings");
            String called = name.getText();
            grid.stop();
            boolean list = tabs.getSelectedIndex() == 0;
            List<String> typed =
                    grid.cells().rows().stream().map(row -> row.get(1)).toList();
            String other = pasted.getText();
            host.jobs()
                    .run(
                            said,
                            Text.of("typed.saving"),
                            Jobs.Cancel.NEVER,
                            progress -> TypedPlate.file(
                                    folder, called, list ? TypedPlate.csv(wells, typed, host.shown()) : other),
                            taker,
                            e -> said.hint(OutputWords.of(e)),
                            e -> {
                                JOptionPane.showMessageDialog(
                                        owner,
                                        String.valueOf(e.getMessage()),
                                        Text.of("typed.title"),
                                        JOptionPane.WARNING_MESSAGE);
                                ask(owner, said, taker);
                            });
        }
    }
}
