package tallywell.gui;

import java.awt.CardLayout;
import java.awt.Desktop;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import net.miginfocom.swing.MigLayout;
import tallywell.assess.Check;
import tallywell.desk.CalibrationLook;
import tallywell.desk.Faces;
import tallywell.desk.PlateShow;
import tallywell.desk.ResultRow;
import tallywell.desk.RunDesk;
import tallywell.desk.RunDraft;
import tallywell.desk.RunStore;
import tallywell.desk.Sum;
import tallywell.desk.TraceLook;
import tallywell.desk.ValueFaces;
import tallywell.desk.Worked;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.OutputException;
import tallywell.plate.Well;

/** One run: what goes in, the plate, the traces, the results. */
final class RunPage extends JPanel {
    private final RunDesk desk;
    private final Host host;
    private final RunStore store = new RunStore();
    private final Said said = new Said();
    private final JTextField title = new JTextField(26);
    private final JLabel subtitle = Labels.soft("");
    private final PlateView plate;
    private final Legend legend;
    private final TracePanel trace;
    private final CalibrationPanel calibration;
    private final CardLayout sideCards = new CardLayout();
    private final JPanel side = new JPanel(sideCards);
    private final JLabel sideTitle = Labels.soft("");
    private final JTextArea sideWords = Labels.wrapped("", false);
    private final ResultsTable table;
    private final JLabel sentenceSign = new JLabel(Glyph.missing(20));
    private final JTextArea sentence = Labels.wrappedStrong("");
    private final JButton checks;
    private final JButton undo;
    private final JButton redo;
    private final JButton exclude;
    private final JButton showSum;
    private final JComboBox<String> steps = new JComboBox<>();
    private final RunTrays trays;
    private PlateShow show = PlateShow.CONCENTRATION;
    private boolean titleFollows;

    RunPage(RunDesk desk, Host host) {
        super(new MigLayout(
                "insets 10 20 8 20, fill, hidemode 2, gapy 7",
                "[grow 62, fill][grow 38, fill]",
                "[][][][grow 70, fill][grow 30, fill]"));
        this.desk = desk;
        this.host = host;
        Faces faces = faces();
        plate = new PlateView(desk.selection(), faces);
        legend = new Legend(faces);
        trace = new TracePanel(host.shown(), new Finishing());
        calibration = new CalibrationPanel(host.shown());
        table = new ResultsTable(desk.selection());
        trays = new RunTrays(desk, host, said, this::take);
        undo = new JButton(
                Text.of("undo"),
                new Glyph(Glyph.Form.UNDO, 14, () -> Palette.now().ink()));
        redo = new JButton(
                Text.of("redo"),
                new Glyph(Glyph.Form.REDO, 14, () -> Palette.now().ink()));
        exclude = Fields.button(Text.of("exclude"), this::exclude);
        showSum = Fields.button(Text.of("sum"), this::showSum);
        checks = Fields.button("", this::showChecks);
        undo.addActionListener(event -> desk.history().undo());
        redo.addActionListener(event -> desk.history().redo());
        add(header(), "span 2, growx, wrap");
        add(trays, "span 2, growx, wrap");
        add(said, "span 2, growx, wrap");
        add(plateCard(), "grow, wmin 300, hmin 240");
        add(sideCard(), "grow, wmin 260, wrap");
        add(resultsCard(), "span 2, grow, hmin 184");
        FileDrop drop = new FileDrop(this::take);
        setTransferHandler(drop);
        table.setTransferHandler(drop);
        keys();
        desk.onChange(this::refresh);
        desk.selection().onChange(this::refreshSide);
        refresh();
    }

    private JPanel header() {
        JPanel header =
                new JPanel(new MigLayout("insets 0, fillx, gapy 1, hidemode 3", "[grow, fill][][][][][][][]", "[][]"));
        header.setOpaque(false);
        title.setName("title");
        title.getAccessibleContext().setAccessibleName(Text.of("run.title"));
        title.putClientProperty("JTextField.placeholderText", Text.of("run.untitled"));
        title.putClientProperty("FlatLaf.styleClass", "h3");
        title.getDocument().addDocumentListener(new DocumentListener() {
            @Override
            public void insertUpdate(DocumentEvent event) {
                retitled();
            }

            @Override
            public void removeUpdate(DocumentEvent event) {
                retitled();
            }

            @Override
            public void changedUpdate(DocumentEvent event) {
                retitled();
            }
        });
        title.addActionListener(event -> commitTitle());
        title.addFocusListener(new java.awt.event.FocusAdapter() {
            @Override
            public void focusLost(java.awt.event.FocusEvent event) {
                commitTitle();
            }
        });
        header.add(title, "wmin 120, wmax 620");
        header.add(Fields.button(Text.of("back"), host::start));
        header.add(undo);
        header.add(redo);
        header.add(exclude);
        header.add(showSum);
        header.add(Fields.button(Text.of("run.save"), this::save));
        header.add(Fields.primary(Text.of("run.export"), this::export), "wrap");
        header.add(subtitle, "span");
        return header;
    }

    private void retitled() {
        titleFollows = false;
    }

    private void commitTitle() {
        String typed = title.getText().strip();
        if (!typed.equals(desk.draft().title())) {
            desk.history().edit(desk.draft().withTitle(typed), Text.of("edit.rename"));
        }
    }

    private Card plateCard() {
        Card card = new Card(
                new MigLayout("insets 8 12 8 12, fill, gapy 4, hidemode 3", "[grow, fill]", "[][grow, fill][]"));
        JPanel row = new JPanel(new MigLayout("insets 0, gapx 2, hidemode 3", "", ""));
        row.setOpaque(false);
        row.add(Labels.soft(Text.of("show")), "gapright 4");
        ButtonGroup group = new ButtonGroup();
        for (PlateShow each : PlateShow.values()) {
            Choice choice = new Choice(Text.of("show." + each), null, true);
            choice.setName("show-" + each);
            choice.setSelected(each == show);
            choice.addActionListener(event -> {
                show = each;
                refreshPlate();
            });
            group.add(choice);
            row.add(choice);
        }
        steps.getAccessibleContext().setAccessibleName(Text.of("run.step"));
        steps.addActionListener(event -> refreshStep());
        row.add(steps);
        card.add(row, "wrap");
        card.add(plate, "grow, wrap");
        card.add(legend, "growx");
        return card;
    }

    private Card sideCard() {
        Card card = new Card(new MigLayout("insets 8 12 8 12, fill, gapy 4", "[grow, fill]", "[][grow, fill][]"));
        JPanel row = new JPanel(new MigLayout("insets 0, gapx 2", "", ""));
        row.setOpaque(false);
        ButtonGroup group = new ButtonGroup();
        for (String each : List.of("trace", "calibration")) {
            Choice choice = new Choice(Text.of(each + ".title"), null, true);
            choice.setSelected(each.equals("trace"));
            choice.addActionListener(event -> {
                sideCards.show(side, each);
                refreshSide();
            });
            choice.setName("side-" + each);
            group.add(choice);
            row.add(choice);
        }
        row.add(sideTitle, "gapleft 8, wmax 220");
        side.setOpaque(false);
        side.add(trace, "trace");
        side.add(calibration, "calibration");
        card.add(row, "wrap");
        card.add(side, "grow, wrap, hmin 120");
        card.add(sideWords, "growx, wmin 100");
        return card;
    }

    private Card resultsCard() {
        Card card = new Card(new MigLayout("insets 8 12 6 12, fill, gapy 4", "[][grow, fill][]", "[][grow, fill]"));
        sentence.setName("sentence");
        card.add(sentenceSign);
        card.add(sentence, "wmin 200");
        card.add(checks, "wrap");
        JScrollPane pane = new JScrollPane(table);
        pane.setBorder(null);
        pane.setPreferredSize(new java.awt.Dimension(600, 150));
        card.add(pane, "span 3, grow, hmin 60");
        return card;
    }

    private void keys() {
        int control = InputEvent.CTRL_DOWN_MASK;
        Keys.bind(
                this,
                KeyStroke.getKeyStroke(KeyEvent.VK_Z, control),
                "undo",
                () -> desk.history().undo());
        Keys.bind(
                this,
                KeyStroke.getKeyStroke(KeyEvent.VK_Y, control),
                "redo",
                () -> desk.history().redo());
        Keys.bind(this, KeyStroke.getKeyStroke(KeyEvent.VK_S, control), "save", this::save);
        Keys.bind(this, KeyStroke.getKeyStroke(KeyEvent.VK_E, control), "export", this::export);
        plate.key(KeyStroke.getKeyStroke(KeyEvent.VK_DELETE, 0), "exclude", this::exclude);
    }

    /** Takes in files that were dropped or chosen. */
    void take(List<Path> files) {
        if (files.isEmpty()) {
            return;
        }
        desk.drop(files, this::taken);
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
            said.offer(trays.guess(), Text.of("readings.swap"), desk::reverseReadings);
        } else if (drop.guessed()) {
            said.offer(trays.guess(), Text.of("readings.look"), trays::showReadings);
        } else if (!drop.said().isEmpty()) {
            said.hint(String.join("\n", drop.said()));
        }
    }

    private int step() {
        return Math.max(1, steps.getSelectedIndex() + 1);
    }

    private Faces faces() {
        Worked worked = desk.worked();
        Worked fitting = worked.draft().layout().equals(desk.draft().layout())
                ? worked
                : new Worked(desk.draft(), Optional.empty(), Optional.empty(), List.of());
        PlateShow possible = fitting.analysis().isPresent() || show == PlateShow.ROLE ? show : PlateShow.ROLE;
        return ValueFaces.of(possible, fitting, step(), host.shown());
    }

    private void refresh() {
        RunDraft draft = desk.draft();
        if (!title.getText().strip().equals(draft.title()) && !title.isFocusOwner() || titleFollows) {
            title.setText(draft.title());
        }
        refreshSteps();
        trays.refresh();
        UndoButtons.refresh(desk.history(), undo, redo);
        String method = draft.method().map(each -> each.value().title()).orElse(Text.of("run.nomethod"));
        String state =
                desk.isBusy() ? Text.of("run.busy") : Text.of(desk.history().isUnsaved() ? "changed" : "saved");
        subtitle.setText(
                method + " · " + draft.file().map(Path::toString).orElse(Text.of("run.nofile")) + " · " + state);
        refreshStep();
    }

    private void refreshSteps() {
        List<String> names = desk.worked()
                .analysis()
                .map(analysis -> analysis.steps().stream()
                        .map(each -> each.step().analyte().name())
                        .toList())
                .orElse(List.of());
        steps.setVisible(names.size() > 1);
        if (steps.getItemCount() != names.size()) {
            steps.removeAllItems();
            names.forEach(steps::addItem);
        }
    }

    private void refreshStep() {
        refreshPlate();
        refreshSide();
        refreshResults();
    }

    private void refreshPlate() {
        Faces faces = faces();
        plate.show(faces);
        legend.show(faces);
    }

    private void refreshSide() {
        boolean excluded = desk.selectionIsExcluded();
        exclude.setText(Text.of(excluded ? "putback" : "exclude"));
        exclude.setEnabled(!desk.selection().wells().isEmpty());
        Optional<tallywell.workup.Analysis> analysis = desk.worked().analysis();
        List<TraceLook> looks = analysis.map(
                        each -> TraceLook.of(each, step(), desk.selection().wells()))
                .orElse(List.of());
        trace.show(looks.size() > 24 ? looks.subList(0, 24) : looks);
        Optional<CalibrationLook> look = analysis.flatMap(
                each -> CalibrationLook.of(each, step(), desk.selection().wells(), host.shown()));
        calibration.show(look);
        sideTitle.setText(desk.selection().words());
        sideWords.setText(
                calibration.isVisible()
                        ? look.map(CalibrationLook::formula).orElse(Text.of("calibration.none"))
                        : words(looks));
        showSum.setEnabled(table.selected().isPresent());
    }

    private String words(List<TraceLook> looks) {
        if (looks.isEmpty()) {
            return Text.of(desk.worked().analysis().isPresent() ? "trace.select" : "trace.nothing");
        }
        List<String> words = new ArrayList<>();
        for (TraceLook look : looks.subList(0, Math.min(3, looks.size()))) {
            String creep = look.creep().isPresent()
                    ? ", "
                            + Text.of(
                                    "trace.creep",
                                    host.shown().fixed(look.creep().getAsDouble(), 2))
                            + (look.uCreep().isPresent()
                                    ? " ± " + host.shown().fixed(look.uCreep().getAsDouble(), 2)
                                    : "")
                    : "";
            words.add(look.well() + ": ΔA " + host.shown().fixed(look.deltaA(), 4) + creep);
        }
        String more = looks.size() > 3 ? " …" : "";
        boolean timed = looks.get(0).finishedFromMin().isPresent();
        return String.join(" · ", words) + more + (timed ? "\n" + Text.of("trace.drag") : "");
    }

    private void refreshResults() {
        Worked worked = desk.worked();
        boolean shows = worked.analysis().isPresent();
        List<ResultRow> rows = shows
                ? ResultRow.of(worked.analysis().get(), worked.assessment().orElseThrow(), host.shown())
                : List.of();
        table.show(
                rows,
                desk.draft()
                        .method()
                        .map(each -> each.value().steps().size() == 1
                                ? each.value().steps().get(0).analyte().name()
                                : Text.of("results.value"))
                        .orElse(Text.of("results.value")));
        checks.setVisible(shows);
        if (shows) {
            boolean passed = worked.assessment().get().passed();
            sentenceSign.setIcon(passed ? Glyph.good(20) : Glyph.look(20));
            sentence.setText(worked.assessment().get().sentence() + " " + verdicts(worked));
            checks.setText(Text.of(
                    "checks.button",
                    worked.assessment().get().count(Check.State.PASSED),
                    worked.assessment().get().checks().size()));
        } else if (!worked.problems().isEmpty() && worked.draft().equals(desk.draft())) {
            sentenceSign.setIcon(Glyph.look(20));
            sentence.setText(String.join(
                    "\n", worked.problems().stream().map(Notice::text).limit(4).toList()));
        } else {
            sentenceSign.setIcon(Glyph.missing(20));
            sentence.setText(desk.isBusy() ? Text.of("run.busy") : needs());
        }
        if (!worked.problems().isEmpty()
                && worked.problems().get(0).text().contains("probably swapped")
                && worked.draft().equals(desk.draft())) {
            said.offer(Text.of("readings.swapped"), Text.of("readings.swap"), desk::reverseReadings);
        }
    }

    private static String verdicts(Worked worked) {
        var assessment = worked.assessment().orElseThrow();
        return Text.of(
                "run.verdicts",
                assessment.count(tallywell.assess.Verdict.REPORT),
                assessment.count(tallywell.assess.Verdict.CHECK),
                assessment.count(tallywell.assess.Verdict.REPEAT));
    }

    private String needs() {
        List<RunDraft.Need> needs = desk.draft().needs();
        return needs.isEmpty() ? "" : Text.of("need." + needs.get(0)) + " " + Text.of("need.drop");
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

    private void showSum() {
        Optional<ResultRow> row = table.selected();
        if (row.isPresent() && desk.worked().analysis().isPresent()) {
            TextDialog.show(
                    this,
                    Text.of("sum.title"),
                    String.join(
                            "\n",
                            Sum.of(desk.worked().analysis().get(), row.get().result(), host.shown())));
        }
    }

    private void showChecks() {
        desk.worked().assessment().ifPresent(assessment -> ChecksDialog.show(this, assessment));
    }

    /** Saves where the run is, else into a folder of its own. */
    boolean save() {
        commitTitle();
        RunDraft draft = desk.draft();
        if (!draft.isComplete()) {
            said.hint(Text.of("run.incomplete") + " " + needs());
            return false;
        }
        try {
            RunDraft saved;
            if (draft.file().isPresent()) {
                saved = store.save(draft, draft.file().get());
            } else {
                Optional<Path> folder = host.askSave(Text.of("run.folder"), Path.of("runs", folderName(draft)));
                if (folder.isEmpty()) {
                    return false;
                }
                saved = store.saveInFolder(draft, folder.get());
            }
            desk.history().savedAs(saved);
            saved.file().ifPresent(host::savedRun);
            return true;
        } catch (OutputException e) {
            said.hint(String.valueOf(e.getMessage()));
            return false;
        }
    }

    private static String folderName(RunDraft draft) {
        String name = draft.title().isEmpty()
                ? draft.method().map(each -> each.value().id()).orElse("run")
                : draft.title();
        return name.toLowerCase(java.util.Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", "-")
                .replaceAll("^-|-$", "");
    }

    private void export() {
        if (!save()) {
            return;
        }
        Path run = desk.draft().file().orElseThrow();
        Path summary = run.resolveSibling(String.valueOf(run.getFileName()).replaceFirst("[.][^.]*$", "") + ".xlsx");
        Optional<Path> tables = Optional.of(run.resolveSibling("tables"));
        Optional<Path> charts = Optional.of(run.resolveSibling("charts"));
        said.hint(Text.of("export.busy"));
        host.back().execute(() -> {
            try {
                List<Path> written = store.export(run, summary, tables, charts, Instant.now(), ZoneId.systemDefault());
                String folder = String.valueOf(summary.toAbsolutePath().getParent());
                String words = Text.of("export.done", summary.getFileName(), written.size() - 1, folder);
                host.front().execute(() -> said.offer(words, Text.of("export.open"), () -> openFolder(summary)));
            } catch (InputException e) {
                host.front().execute(() -> said.problem(e.notices()));
            } catch (OutputException e) {
                host.front().execute(() -> said.hint(String.valueOf(e.getMessage()) + ". " + Text.of("export.locked")));
            }
        });
    }

    private void openFolder(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        boolean can = Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.OPEN);
        if (!can || folder == null) {
            said.hint(Text.of("export.where", String.valueOf(folder)));
            return;
        }
        host.back().execute(() -> {
            try {
                Desktop.getDesktop().open(folder.toFile());
            } catch (IOException e) {
                host.front().execute(() -> said.hint(Text.of("export.where", folder.toString())));
            }
        });
    }

    /** The finished part being dragged in the trace. */
    private final class Finishing implements TracePanel.Finish {
        private List<Well> wells() {
            return trace.traces().stream().map(TraceLook::well).toList();
        }

        @Override
        public void dragging(double fromMin) {
            sideWords.setText(Text.of("trace.dragging", host.shown().fixed(fromMin, 1)));
        }

        @Override
        public void dropped(double fromMin) {
            double timeS = Math.round(fromMin * 60);
            desk.preview(desk.draft().finishFrom(wells(), timeS, "preview", ""));
            Optional<Reason> reason = Reason.ask(
                    RunPage.this,
                    Text.of("finish.title"),
                    Text.of(
                            "finish.about",
                            host.shown().fixed(timeS / 60, 1),
                            desk.selection().words()),
                    host.settings(),
                    Text.of("finish.usual").split("\\|"));
            if (reason.isPresent()) {
                desk.finishFrom(wells(), timeS, reason.get().why(), reason.get().who());
            } else {
                desk.preview(desk.draft());
            }
        }
    }

    RunDesk desk() {
        return desk;
    }

    PlateView plate() {
        return plate;
    }

    ResultsTable results() {
        return table;
    }

    TracePanel trace() {
        return trace;
    }

    Said said() {
        return said;
    }

    String sentence() {
        return sentence.getText();
    }

    RunTrays trays() {
        return trays;
    }

    void show(PlateShow other) {
        show = other;
        refreshPlate();
    }
}
