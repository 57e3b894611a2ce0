package tallywell.gui;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JPanel;
import javax.swing.JSplitPane;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import tallywell.desk.Doubt;
import tallywell.desk.PlateShow;
import tallywell.desk.RunDesk;
import tallywell.desk.RunDraft;
import tallywell.notice.InputException;

/** One run: what goes in, the plate, the traces, the results. */
final class RunPage extends JPanel {
    private static final double PLATE_PART = 0.6;
    private static final double ABOVE_PART = 0.66;

    private final RunDesk desk;
    private final Host host;
    private final Said said = new Said();
    private final RunHeader header;
    private final RunTrays trays;
    private final PlateCard plate;
    private final SideCard side;
    private final ResultsCard results;
    private final RunSaving saving;
    private List<Doubt> doubts = List.of();

    RunPage(RunDesk desk, Host host) {
        super(new MigLayout("insets 10 20 8 20, fill, hidemode 2, gapy 7", "[grow, fill]", "[][][][grow, fill]"));
        this.desk = desk;
        this.host = host;
        FileDrop drop = new FileDrop(this::take);
        saving = new RunSaving(desk, host, said);
        header = new RunHeader(desk, new Actions());
        trays = new RunTrays(desk, host, said, this::take);
        plate = new PlateCard(desk, host.shown(), this::refreshStep);
        side = new SideCard(desk, host, said, plate::step);
        results = new ResultsCard(desk, host.shown(), drop, this::repeat);
        add(header, "growx, wrap");
        add(trays, "growx, wrap");
        add(said, "growx, wrap");
        Divided above = new Divided(JSplitPane.HORIZONTAL_SPLIT, plate, side, PLATE_PART);
        above.setName("plate-and-trace");
        Divided all = new Divided(JSplitPane.VERTICAL_SPLIT, above, results, ABOVE_PART);
        all.setName("above-and-results");
        add(all, "grow, wmin 500");
        setTransferHandler(drop);
        keys();
        desk.onChange(this::refresh);
        desk.selection().onChange(this::refreshSelection);
        refresh();
    }

    private void keys() {
        control(KeyEvent.VK_Z, "undo", () -> desk.history().undo());
        control(KeyEvent.VK_Y, "redo", () -> desk.history().redo());
        control(KeyEvent.VK_S, "save", this::save);
        control(KeyEvent.VK_E, "export", saving::export);
        control(KeyEvent.VK_P, "plan", this::plan);
        plate.plate().key(KeyStroke.getKeyStroke(KeyEvent.VK_DELETE, 0), "exclude", this::exclude);
        FocusRound round = new FocusRound(plate.plate(), side.trace(), results.table());
        Keys.bind(this, KeyStroke.getKeyStroke(KeyEvent.VK_F6, 0), "next part", round::goOn);
    }

    private void control(int code, String name, Runnable action) {
        Keys.bind(this, KeyStroke.getKeyStroke(code, InputEvent.CTRL_DOWN_MASK), name, action);
    }

    /** What the buttons at the top do. */
    private final class Actions implements RunHeader.Actions {
        @Override
        public void start() {
            host.start();
        }

        @Override
        public void exclude() {
            RunPage.this.exclude();
        }

        @Override
        public void sum() {
            results.showSum();
        }

        @Override
        public void plan() {
            RunPage.this.plan();
        }

        @Override
        public void save() {
            RunPage.this.save();
        }

        @Override
        public void export() {
            saving.export();
        }
    }

    /** Takes in files that were dropped or chosen. */
    void take(List<Path> files) {
        if (!files.isEmpty()) {
            desk.drop(files, this::taken);
        }
    }

    private void taken(RunDesk.Drop drop) {
        drop.run().ifPresent(host::openRun);
        if (!drop.ask().isEmpty()) {
            BlockDialog.ask(this, drop.ask().get(0))
                    .ifPresent(block -> desk.choose(drop.ask().get(0), block));
        }
        if (!drop.notices().isEmpty()) {
            said.problem(drop.notices());
        } else if (drop.guessed() && desk.draft().readings().size() > 1) {
            said.offer(
                    trays.guess(),
                    List.of(
                            new Said.Offer(Text.of("readings.swap"), desk::reverseReadings),
                            new Said.Offer(Text.of("readings.look"), trays::showReadings)));
        } else if (drop.guessed()) {
            said.offer(trays.guess(), Text.of("readings.look"), trays::showReadings);
        } else if (!drop.said().isEmpty()) {
            said.done(String.join("\n", drop.said()), List.of());
        }
    }

    private void refresh() {
        plate.refreshSteps();
        trays.refresh();
        header.refresh(saving.isSummaryOlder());
        saving.refresh();
        refreshStep();
        showDoubts();
    }

    private void refreshStep() {
        plate.refresh();
        refreshSelection();
        results.refresh();
    }

    private void refreshSelection() {
        side.refresh();
        header.refreshSelection(results.table().selected().isPresent());
    }

    /** Asks about what looks wrong, once for each finding. */
    private void showDoubts() {
        if (desk.doubts().equals(doubts)) {
            return;
        }
        boolean asking = !doubts.isEmpty() && said.words().equals(doubts.get(0).text());
        doubts = desk.doubts();
        if (!doubts.isEmpty()) {
            ask(doubts.get(0));
        } else if (asking) {
            said.clear();
        }
    }

    private void ask(Doubt doubt) {
        List<Said.Offer> offers = new ArrayList<>();
        for (Doubt.Cure cure : doubt.cures()) {
            Runnable action = cure instanceof Doubt.Edit edit ? () -> desk.cure(edit) : trays::changeMethod;
            offers.add(new Said.Offer(cure.words(), action));
        }
        said.offer(doubt.text(), offers);
    }

    private void exclude() {
        if (desk.selection().wells().isEmpty()) {
            said.hint(Text.of("exclude.select"));
        } else if (desk.selectionIsExcluded()) {
            desk.putBack();
        } else {
            Reason.ask(
                            this,
                            Text.of("exclude.title"),
                            Text.of("exclude.about", desk.selection().words()),
                            host.settings(),
                            Text.of("exclude.usual").split("\\|"))
                    .ifPresent(reason -> desk.exclude(reason.why(), reason.who()));
        }
    }

    private void plan() {
        header.commitTitle();
        PlanDialog.show(this, desk, host, said, saving);
    }

    /** Goes on to the plate that repeats what this one leaves; what is unsaved is saved first, since its page goes. */
    private void repeat() {
        header.commitTitle();
        String title = desk.draft().title();
        try {
            RunDraft next = desk.worked()
                    .repeats(title.isEmpty() ? "" : Text.of("repeats.title", title), Text.of("repeats.list"));
            Runnable open = () -> host.openRun(next, Text.of("repeats.about"));
            if (desk.history().isUnsaved()) {
                saving.save(open);
            } else {
                open.run();
            }
        } catch (InputException e) {
            said.problem(e.notices());
        }
    }

    private void save() {
        save(() -> {});
    }

    /** Saves, then goes on. */
    void save(Runnable then) {
        header.commitTitle();
        saving.save(then);
    }

    RunDesk desk() {
        return desk;
    }

    PlateView plate() {
        return plate.plate();
    }

    ResultsTable results() {
        return results.table();
    }

    TracePanel trace() {
        return side.trace();
    }

    Said said() {
        return said;
    }

    String sentence() {
        return results.sentence();
    }

    RunTrays trays() {
        return trays;
    }

    void show(PlateShow other) {
        plate.show(other);
    }
}
