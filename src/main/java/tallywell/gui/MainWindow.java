package tallywell.gui;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JOptionPane;
import tallywell.desk.Examples;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutShelf;
import tallywell.desk.Origin;
import tallywell.desk.Recovery;
import tallywell.desk.RunDesk;
import tallywell.desk.RunDraft;
import tallywell.desk.RunStore;
import tallywell.desk.SafeFile;
import tallywell.desk.SameRun;
import tallywell.desk.Settings;
import tallywell.desk.Shown;
import tallywell.plate.Layout;

/** The one window: holds a page, opens and keeps work, asks before anything is lost. */
final class MainWindow extends JFrame implements Host {
    private static final String LAYOUTS = "plate-layouts";

    private final Path home;
    private final Shown shown;
    private final Settings settings;
    private final RunStore store = new RunStore();
    private final Said startSaid = new Said();
    private final Workers workers = new Workers();
    private final Jobs jobs = new Jobs(workers.files(), front());
    private final Keeping keeping;
    private final Faults faults;
    private final FileChoice choice;
    private Optional<RunPage> run = Optional.empty();
    private Optional<LayoutPage> layout = Optional.empty();
    private Optional<RunPage> waiting = Optional.empty();
    private Optional<RunPage> behind = Optional.empty();

    /** A window with settings that have been read already. */
    MainWindow(Path home, Shown shown, Settings settings) {
        super(Text.of("app"));
        this.home = home;
        this.shown = shown;
        this.settings = settings;
        Path unsaved = home.resolve("unsaved");
        keeping = new Keeping(new Recovery(unsaved), workers.work(), front());
        faults = new Faults(home, unsaved, front(), this::failed);
        choice = new FileChoice(this, settings, home);
        setDefaultCloseOperation(DO_NOTHING_ON_CLOSE);
        addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent event) {
                quit();
            }
        });
        setIconImages(AppIcon.images());
        setMinimumSize(new Dimension(960, 600));
        Rectangle screen = getGraphicsConfiguration().getBounds();
        setSize(Math.min(1440, screen.width), Math.min(900, screen.height));
        setLocationRelativeTo(null);
        makeFolders();
        showStart();
    }

    /** Dialogs suggest these folders, so they have to be there. */
    private void makeFolders() {
        jobs.aside(
                startSaid,
                progress -> {
                    SafeFile.folder(home.resolve("runs"));
                    if (!Files.isDirectory(home.resolve(LAYOUTS))) {
                        new Examples(home).layOutLayouts();
                    }
                    return home;
                },
                made -> {});
    }

    /** Offers what was kept when the program ended without saving. */
    void offerKept() {
        keeping.offer(startSaid, new Keeping.Opening() {
            @Override
            public void layout(LayoutDesk desk) {
                openLayout(desk);
            }

            @Override
            public RunDesk emptyRun() {
                openRun(RunDraft.EMPTY);
                return run.orElseThrow().desk();
            }
        });
    }

    /** Hears of faults of the program. */
    Faults faults() {
        return faults;
    }

    /** What is unsaved is kept, also where it waits behind a layout that is being drawn. */
    private void failed(Throwable fault) {
        Optional<RunDraft> unsavedRun = run.or(() -> waiting)
                .map(RunPage::desk)
                .filter(desk -> desk.history().isUnsaved())
                .map(RunDesk::draft);
        Optional<Layout> unsavedLayout = layout.map(LayoutPage::desk)
                .filter(desk -> desk.history().isUnsaved())
                .map(LayoutDesk::layout);
        Said said =
                run.map(RunPage::said).or(() -> layout.map(LayoutPage::said)).orElse(startSaid);
        jobs.aside(said, progress -> faults.keep(fault, unsavedRun, unsavedLayout), said::hint);
    }

    private void page(JComponent page) {
        getContentPane().removeAll();
        getContentPane().add(Fitting.of(page), BorderLayout.CENTER);
        getContentPane().revalidate();
        getContentPane().repaint();
        page.requestFocusInWindow();
    }

    void showStart() {
        // Opened again unchanged, a run has its undo history still.
        behind = run.filter(page -> !page.desk().history().isUnsaved());
        run = Optional.empty();
        layout = Optional.empty();
        setTitle(Text.of("app"));
        StartPage page = new StartPage(new Beginnings(this), this, startSaid);
        page.setTransferHandler(new FileDrop(dropped -> {
            openRun(RunDraft.EMPTY);
            run.ifPresent(opened -> opened.take(dropped));
        }));
        page(page);
    }

    @Override
    public void start() {
        leave(() -> {
            if (layout.isPresent() && waiting.isPresent()) {
                backToRun();
            } else {
                startSaid.clear();
                showStart();
            }
        });
    }

    /** From drawing a layout back to the run that it is for. */
    private void backToRun() {
        RunPage back = waiting.orElseThrow();
        RunDesk desk = back.desk();
        layout.map(LayoutPage::desk)
                .filter(drawing -> !drawing.history().isUnsaved())
                .map(LayoutDesk::drawn)
                .filter(drawn -> drawn.file().isPresent())
                .ifPresent(drawn -> desk.history().edit(desk.draft().withLayout(drawn), Text.of("edit.layout")));
        showRun(back);
    }

    @Override
    public void useLayout(Origin<Layout> drawn) {
        // What is drawn is kept with the run from now on.
        keeping.forget(startSaid);
        waiting.ifPresentOrElse(this::showRun, () -> openRun(RunDraft.EMPTY));
        RunDesk desk = run.orElseThrow().desk();
        desk.history().edit(desk.draft().withLayout(drawn), Text.of("edit.layout"));
    }

    /** Goes on once the present page may go: nothing unsaved, or saved now, or given up. */
    private void leave(Runnable then) {
        boolean unsaved = run.map(page -> page.desk().history().isUnsaved()).orElse(false)
                || layout.map(page -> page.desk().history().isUnsaved()).orElse(false);
        if (!unsaved) {
            then.run();
            return;
        }
        Object[] answers = {Text.of("leave.save"), Text.of("leave.drop"), Text.of("leave.stay")};
        int answer = JOptionPane.showOptionDialog(
                this,
                run.map(page -> Unsaved.words(page.desk()))
                        .orElseGet(() -> Unsaved.words(layout.orElseThrow().desk())),
                Text.of("leave.title"),
                JOptionPane.YES_NO_CANCEL_OPTION,
                JOptionPane.QUESTION_MESSAGE,
                null,
                answers,
                answers[0]);
        if (answer == 0) {
            run.ifPresent(page -> page.save(then));
            layout.ifPresent(page -> page.save(then));
        } else if (answer == 1) {
            keeping.forget(startSaid);
            then.run();
        }
    }

    private void quit() {
        leave(() -> jobs.run(
                startSaid,
                Text.of("start.closing"),
                Jobs.Cancel.NEVER,
                progress -> {
                    settings.save();
                    return home;
                },
                saved -> end(),
                e -> end()));
    }

    private void end() {
        dispose();
        workers.end();
    }

    /** Takes no more work and waits until what goes on is done; true if it did not take too long. */
    boolean rest() throws InterruptedException {
        return workers.rest();
    }

    void saveSettings() {
        jobs.aside(
                startSaid,
                progress -> {
                    settings.save();
                    return home;
                },
                saved -> {});
    }

    @Override
    public LayoutShelf shelf() {
        List<Path> folders = settings.known("layout").stream()
                .map(Path::getParent)
                .filter(java.util.Objects::nonNull)
                .distinct()
                .toList();
        List<Path> shelf = new java.util.ArrayList<>(List.of(home.resolve(LAYOUTS)));
        shelf.addAll(folders);
        return new LayoutShelf(shelf);
    }

    @Override
    public void openRun(RunDraft draft) {
        RunPage page = new RunPage(new RunDesk(draft, workers.work(), front(), shelf()), this);
        keeping.keep(page.desk(), page.said());
        showRun(page);
    }

    @Override
    public void openRun(RunDraft draft, String hint) {
        openRun(draft);
        run.orElseThrow().said().hint(hint);
    }

    private void showRun(RunPage page) {
        RunDesk desk = page.desk();
        run = Optional.of(page);
        layout = Optional.empty();
        waiting = Optional.empty();
        setTitle(Text.of("app") + " – "
                + (desk.draft().title().isEmpty()
                        ? Text.of("run.untitled")
                        : desk.draft().title()));
        page(page);
    }

    @Override
    public void openRun(Path file) {
        leave(() -> open(file, page -> {}));
    }

    void open(Path file, Consumer<RunPage> then) {
        jobs.run(
                run.map(RunPage::said).orElse(startSaid),
                Text.of("run.opening"),
                progress -> store.open(file),
                draft -> {
                    settings.opened("run", file);
                    behind.filter(page -> SameRun.says(page.desk().draft(), draft))
                            .ifPresentOrElse(this::showRun, () -> openRun(draft));
                    run.ifPresent(then);
                });
    }

    @Override
    public void openLayout(LayoutDesk desk) {
        waiting = run;
        LayoutPage page = new LayoutPage(desk, shown, this, waiting.isPresent());
        keeping.keep(desk, page.said());
        run = Optional.empty();
        layout = Optional.of(page);
        setTitle(Text.of("app") + " – " + desk.layout().name());
        page(page);
    }

    @Override
    public void openLayout(Path file) {
        jobs.run(
                run.map(RunPage::said).orElse(startSaid),
                Text.of("layout.opening"),
                progress -> LayoutDesk.open(file),
                this::openLayout);
    }

    @Override
    public List<Path> askOpen(String title) {
        return choice.open(title);
    }

    @Override
    public Optional<Path> askSave(String title, Path suggested) {
        return choice.save(title, "", suggested);
    }

    @Override
    public Optional<Path> askFolder(String title, String about, Path suggested) {
        return choice.save(title, about, suggested);
    }

    @Override
    public void savedLayout(Path file) {
        settings.opened("layout", file);
        saveSettings();
    }

    @Override
    public void savedRun(Path file) {
        settings.opened("run", file);
        saveSettings();
    }

    @Override
    public Executor back() {
        return workers.work();
    }

    @Override
    public Jobs jobs() {
        return jobs;
    }

    @Override
    public Executor front() {
        return EventQueue::invokeLater;
    }

    @Override
    public Shown shown() {
        return shown;
    }

    @Override
    public Path home() {
        return home;
    }

    @Override
    public Settings settings() {
        return settings;
    }

    Optional<RunPage> runPage() {
        return run;
    }

    Optional<LayoutPage> layoutPage() {
        return layout;
    }

    Said startSaid() {
        return startSaid;
    }
}
