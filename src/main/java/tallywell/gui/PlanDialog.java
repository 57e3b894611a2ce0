package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTabbedPane;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Origin;
import tallywell.desk.PlanLook;
import tallywell.desk.RoleFaces;
import tallywell.desk.RunDesk;
import tallywell.desk.RunPlans;
import tallywell.desk.Selection;
import tallywell.method.SampleList;

/** A run planned: plate, dilutions, mixes and steps, to look at, to take over, and to write as a sheet for the bench. */
final class PlanDialog extends JPanel {
    private final RunDesk desk;
    private final Host host;
    private final Path run;
    private final Said said = new Said();
    private final RunPlans plans = new RunPlans();

    PlanDialog(PlanLook plan, RunDesk desk, Host host, Path run) {
        super(new MigLayout("insets 14, fill, hidemode 3", "[grow 55, fill][grow 45, fill]", "[][][grow, fill][]"));
        this.desk = desk;
        this.host = host;
        this.run = run;
        add(Labels.heading(Text.of("plan.title", plan.planned().bySlot().size(), plan.wells())), "span 2, wrap");
        add(said, "span 2, growx, wrap");
        add(plate(plan), "grow, wmin 280");
        add(tabs(plan), "grow, wmin 320, wrap");
        add(buttons(plan), "span 2, growx");
    }

    private Card plate(PlanLook plan) {
        Card card = new Card(new MigLayout("insets 12, fill", "[grow, fill]", "[grow, fill][]"));
        RoleFaces faces = new RoleFaces(host.shown(), Optional.of(plan.planned()));
        PlateView view = new PlateView(new Selection(plan.layout().format()), faces.of(plan.layout()));
        card.add(view, "grow, wrap");
        String notices = String.join("\n", plan.notices());
        if (!notices.isEmpty()) {
            JScrollPane pane = new JScrollPane(Labels.wrapped(notices, true));
            pane.setBorder(BorderFactory.createEmptyBorder());
            pane.getViewport().setOpaque(false);
            pane.setOpaque(false);
            card.add(pane, "growx, hmax 90, wmin 100");
        }
        return card;
    }

    private JTabbedPane tabs(PlanLook plan) {
        JTabbedPane tabs = new JTabbedPane();
        tabs.addTab(Text.of("plan.samples"), sections(plan.samples()));
        tabs.addTab(Text.of("plan.mixes"), sections(plan.mixes()));
        tabs.addTab(Text.of("plan.steps"), sections(plan.steps()));
        return tabs;
    }

    private static JComponent sections(List<PlanLook.Section> sections) {
        JPanel panel = new AsWide(new MigLayout("insets 8, fillx, gapy 3", "[90::, fill][grow, fill]", ""));
        for (PlanLook.Section section : sections) {
            panel.add(Labels.heading(section.title()), "span 2, gaptop 6, wrap");
            for (PlanLook.Line line : section.lines()) {
                panel.add(Labels.wrapped(line.name(), false), "top, wmin 60, wmax 190");
                panel.add(Labels.wrapped(line.text(), false), "wmin 120, wrap");
                if (!line.note().isEmpty()) {
                    panel.add(Labels.wrapped(line.note(), true), "skip 1, wmin 120, wrap");
                }
            }
        }
        JScrollPane pane = new JScrollPane(panel);
        pane.setBorder(BorderFactory.createEmptyBorder());
        return pane;
    }

    private JPanel buttons(PlanLook plan) {
        JPanel row = new JPanel(new MigLayout("insets 0", "push[][]", ""));
        row.setOpaque(false);
        row.add(Fields.button(Text.of("plan.take"), () -> take(plan)));
        var write = Fields.primary(Text.of("plan.write"), this::write);
        write.setName("plan-write");
        row.add(write);
        return row;
    }

    private void take(PlanLook plan) {
        Origin<SampleList> planned = Origin.unsaved(Text.of("plan.taken"), plan.planned());
        desk.history().edit(desk.draft().withSamples(Optional.of(planned)), Text.of("plan.edit"));
        said.hint(Text.of("plan.taken.is"));
    }

    private void write() {
        host.jobs()
                .run(
                        said,
                        Text.of("plan.writing"),
                        Jobs.Cancel.NEVER,
                        progress -> plans.write(run, Instant.now(), ZoneId.systemDefault()),
                        outcome -> said.done(
                                Text.of(
                                        "plan.written",
                                        outcome.written().stream()
                                                .map(each -> String.valueOf(each.getFileName()))
                                                .collect(Collectors.joining(", ")),
                                        String.valueOf(run.toAbsolutePath().getParent())),
                                List.of()),
                        e -> said.offer(OutputWords.of(e), Text.of("again"), this::write));
    }

    /** Saves the run, plans it and shows the plan; what stands in the way is said in the window. */
    static void show(Component owner, RunDesk desk, Host host, Said said, RunSaving saving) {
        if (desk.draft().method().isEmpty() || desk.draft().layout().isEmpty()) {
            said.hint(Text.of("plan.needs") + " " + ResultsCard.needs(desk.draft()));
            return;
        }
        saving.save(() -> saving.file()
                .ifPresent(run -> host.jobs()
                        .run(
                                said,
                                Text.of("plan.busy"),
                                progress -> new RunPlans().plan(run, host.shown()),
                                plan -> open(owner, new PlanDialog(plan, desk, host, run)))));
    }

    private static void open(Component owner, PlanDialog panel) {
        JDialog dialog = new JDialog(
                SwingUtilities.getWindowAncestor(owner), Text.of("plan.button"), JDialog.ModalityType.MODELESS);
        dialog.setContentPane(panel);
        dialog.setSize(new Dimension(1100, 640));
        dialog.setLocationRelativeTo(owner);
        dialog.setVisible(true);
    }
}
