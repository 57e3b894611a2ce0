package tallywell.gui;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.awt.image.BufferedImage;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JFrame;
import javax.swing.JOptionPane;
import tallywell.desk.Examples;
import tallywell.desk.LayoutDesk;
import tallywell.desk.LayoutEdits;
import tallywell.desk.Recovery;
import tallywell.desk.RunDesk;
import tallywell.desk.RunDraft;
import tallywell.desk.RunStore;
import tallywell.desk.Settings;
import tallywell.desk.Shown;
import tallywell.notice.InputException;
import tallywell.notice.OutputException;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;

/** The one window: holds a page, opens and keeps work, asks before anything is lost. */
final class MainWindow extends JFrame implements Host {
    private final Path home;
    private final Shown shown;
    private final Settings settings;
    private final Recovery recovery;
    private final Examples examples;
    private final RunStore store = new RunStore();
    private final Said startSaid = new Said();
    private final ExecutorService back = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "work");
        thread.setDaemon(true);
        return thread;
    });
    private Optional<RunPage> run = Optional.empty();
    private Optional<LayoutPage> layout = Optional.empty();
    private Optional<RunDesk> waiting = Optional.empty();

    MainWindow(Path home, Shown shown) {
        super(Text.of("app"));
        this.home = home;
        this.shown = shown;
        settings = new Settings(home.resolve("settings.properties"));
        recovery = new Recovery(home.resolve("unsaved"));
        examples = new Examples(home);
        setDefaultCloseOperation(DO_NOTHING_ON_CLOSE);
        addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent event) {
                quit();
            }
        });
        setIconImage(icon());
        setMinimumSize(new Dimension(960, 600));
        Rectangle screen = getGraphicsConfiguration().getBounds();
        setSize(Math.min(1440, screen.width), Math.min(900, screen.height));
        setLocationRelativeTo(null);
        showStart();
    }

    /** Offers what was kept when the program ended without saving. */
    void offerKept() {
        back.execute(() -> {
            try {
                Optional<RunDraft> keptRun = recovery.run();
                Optional<Layout> keptLayout = recovery.layout();
                front().execute(() -> offer(keptRun, keptLayout));
            } catch (InputException e) {
                front().execute(() -> startSaid.problem(e.notices()));
            }
        });
    }

    private void offer(Optional<RunDraft> keptRun, Optional<Layout> keptLayout) {
        keptLayout.ifPresent(kept -> startSaid.offer(Text.of("kept.layout", kept.name()), Text.of("kept.open"), () -> {
            LayoutDesk desk = new LayoutDesk(LayoutEdits.empty(kept.name(), kept.format()), Optional.empty());
            openLayout(desk);
            desk.history().edit(kept, Text.of("kept.edit"));
        }));
        keptRun.ifPresent(kept -> startSaid.offer(
                Text.of("kept.run", kept.title().isEmpty() ? Text.of("run.untitled") : kept.title()),
                Text.of("kept.open"),
                () -> {
                    openRun(RunDraft.EMPTY);
                    run.ifPresent(page -> page.desk().history().edit(kept, Text.of("kept.edit")));
                }));
    }

    private static BufferedImage icon() {
        BufferedImage image = new BufferedImage(64, 64, BufferedImage.TYPE_INT_ARGB);
        var g = image.createGraphics();
        g.setRenderingHint(java.awt.RenderingHints.KEY_ANTIALIASING, java.awt.RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(Palette.LIGHT.accent());
        g.fillRoundRect(2, 2, 60, 60, 20, 20);
        int[] sizes = {6, 10, 14, 10, 14, 18, 14, 18, 22};
        g.setColor(Palette.LIGHT.paper());
        for (int i = 0; i < sizes.length; i++) {
            int x = 14 + i % 3 * 18;
            int y = 14 + i / 3 * 18;
            int size = Math.min(15, sizes[i]);
            g.fillRoundRect(x - size / 2, y - size / 2, size, size, 6, 6);
        }
        g.dispose();
        return image;
    }

    private void page(JComponent page) {
        getContentPane().removeAll();
        getContentPane().add(page, BorderLayout.CENTER);
        getContentPane().revalidate();
        getContentPane().repaint();
        page.requestFocusInWindow();
    }

    private void showStart() {
        run = Optional.empty();
        layout = Optional.empty();
        setTitle(Text.of("app"));
        StartPage page = new StartPage(new Beginnings(), this, startSaid);
        page.setTransferHandler(new FileDrop(files -> {
            openRun(RunDraft.EMPTY);
            run.ifPresent(opened -> opened.take(files));
        }));
        page(page);
    }

    @Override
    public void start() {
        if (layout.isPresent() && waiting.isPresent()) {
            if (mayLeave()) {
                backToRun();
            }
            return;
        }
        if (mayLeave()) {
            startSaid.clear();
            showStart();
        }
    }

    /** From drawing a layout back to the run that it is for. */
    private void backToRun() {
        RunDesk desk = waiting.orElseThrow();
        waiting = Optional.empty();
        layout.ifPresent(page -> page.desk()
                .drawn()
                .ifPresent(drawn -> desk.history().edit(desk.draft().withLayout(drawn), Text.of("edit.layout"))));
        layout = Optional.empty();
        showRun(desk);
    }

    /** Whether the present page may go: nothing unsaved, or saved now, or given up. */
    private boolean mayLeave() {
        boolean unsaved = run.map(page -> page.desk().history().isUnsaved()).orElse(false)
                || layout.map(page -> page.desk().history().isUnsaved()).orElse(false);
        if (!unsaved) {
            return true;
        }
        Object[] answers = {Text.of("leave.save"), Text.of("leave.drop"), Text.of("leave.stay")};
        int answer = JOptionPane.showOptionDialog(
                this,
                Text.of("leave.about"),
                Text.of("leave.title"),
                JOptionPane.YES_NO_CANCEL_OPTION,
                JOptionPane.QUESTION_MESSAGE,
                null,
                answers,
                answers[0]);
        if (answer == 0) {
            return run.map(RunPage::save).orElse(true)
                    && layout.map(LayoutPage::save).orElse(true);
        }
        if (answer == 1) {
            forget();
            return true;
        }
        return false;
    }

    private void forget() {
        back.execute(() -> {
            try {
                recovery.forget();
            } catch (OutputException e) {
                front().execute(() -> startSaid.hint(String.valueOf(e.getMessage())));
            }
        });
    }

    private void quit() {
        if (!mayLeave()) {
            return;
        }
        saveSettings();
        back.shutdown();
        dispose();
    }

    private void saveSettings() {
        try {
            settings.save();
        } catch (OutputException e) {
            startSaid.hint(String.valueOf(e.getMessage()));
        }
    }

    @Override
    public void openRun(RunDraft draft) {
        RunDesk desk = new RunDesk(draft, back, front());
        keepEdits(desk);
        showRun(desk);
    }

    private void showRun(RunDesk desk) {
        RunPage page = new RunPage(desk, this);
        run = Optional.of(page);
        layout = Optional.empty();
        setTitle(Text.of("app") + " – "
                + (desk.draft().title().isEmpty()
                        ? Text.of("run.untitled")
                        : desk.draft().title()));
        page(page);
    }

    /** Every edit is kept at once; what is saved needs no keeping. */
    private void keepEdits(RunDesk desk) {
        desk.history().onChange(() -> {
            RunDraft draft = desk.draft();
            boolean unsaved = desk.history().isUnsaved();
            back.execute(() -> {
                try {
                    if (unsaved) {
                        recovery.keep(draft);
                    } else {
                        recovery.forget();
                    }
                } catch (OutputException e) {
                    front().execute(() -> run.ifPresent(page -> page.said().hint(String.valueOf(e.getMessage()))));
                }
            });
        });
    }

    @Override
    public void openRun(Path file) {
        if (!mayLeave()) {
            return;
        }
        open(file, page -> {});
    }

    private void open(Path file, java.util.function.Consumer<RunPage> then) {
        back.execute(() -> {
            try {
                RunDraft draft = store.open(file);
                front().execute(() -> {
                    settings.opened("run", file);
                    openRun(draft);
                    run.ifPresent(then);
                });
            } catch (InputException e) {
                front().execute(() -> run.map(RunPage::said).orElse(startSaid).problem(e.notices()));
            }
        });
    }

    @Override
    public void openLayout(LayoutDesk desk) {
        waiting = run.map(RunPage::desk);
        LayoutPage page = new LayoutPage(desk, shown, this);
        desk.history().onChange(() -> {
            Layout drawn = desk.layout();
            boolean unsaved = desk.history().isUnsaved();
            back.execute(() -> {
                try {
                    if (unsaved) {
                        recovery.keep(drawn);
                    } else {
                        recovery.forget();
                    }
                } catch (OutputException e) {
                    front().execute(() -> page.said().hint(String.valueOf(e.getMessage())));
                }
            });
        });
        run = Optional.empty();
        layout = Optional.of(page);
        setTitle(Text.of("app") + " – " + desk.layout().name());
        page(page);
    }

    @Override
    public void openLayout(Path file) {
        back.execute(() -> {
            try {
                LayoutDesk desk = LayoutDesk.open(file);
                front().execute(() -> openLayout(desk));
            } catch (InputException e) {
                front().execute(() -> startSaid.problem(e.notices()));
            }
        });
    }

    @Override
    public List<Path> askOpen(String title) {
        JFileChooser chooser = new JFileChooser(lastFolder().toFile());
        chooser.setDialogTitle(title);
        chooser.setMultiSelectionEnabled(true);
        List<Path> files = new ArrayList<>();
        if (chooser.showOpenDialog(this) == JFileChooser.APPROVE_OPTION) {
            for (File file : chooser.getSelectedFiles()) {
                files.add(file.toPath());
            }
        }
        return files;
    }

    private Path lastFolder() {
        return settings.recent("run").stream()
                .map(Path::getParent)
                .filter(java.util.Objects::nonNull)
                .findFirst()
                .orElse(home);
    }

    @Override
    public Optional<Path> askSave(String title, Path suggested) {
        Path start = home.resolve(suggested);
        JFileChooser chooser = new JFileChooser();
        chooser.setDialogTitle(title);
        try {
            Files.createDirectories(start.getParent() == null ? home : start.getParent());
        } catch (java.io.IOException e) {
            startSaid.hint(String.valueOf(e.getMessage()));
        }
        chooser.setSelectedFile(start.toFile());
        if (chooser.showSaveDialog(this) != JFileChooser.APPROVE_OPTION) {
            return Optional.empty();
        }
        Path chosen = chooser.getSelectedFile().toPath();
        boolean replace = !Files.exists(chosen)
                || JOptionPane.showConfirmDialog(
                                this,
                                Text.of("save.replace", chosen.getFileName()),
                                title,
                                JOptionPane.OK_CANCEL_OPTION,
                                JOptionPane.WARNING_MESSAGE)
                        == JOptionPane.OK_OPTION;
        return replace ? Optional.of(chosen) : Optional.empty();
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
        return back;
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

    /** What the start page begins. */
    private final class Beginnings implements StartPage.Begin {
        @Override
        public void example() {
            back.execute(() -> {
                try {
                    Path file = examples.layOut(Examples.FIRST);
                    front().execute(() -> open(file, this::guide));
                } catch (OutputException e) {
                    front().execute(() -> startSaid.hint(String.valueOf(e.getMessage())));
                }
            });
        }

        private void guide(RunPage page) {
            page.said()
                    .offer(
                            Text.of("example.about"),
                            Text.of("example.own"),
                            () -> openRun(page.desk().draft().onlyMethodAndLayout()));
            page.desk()
                    .draft()
                    .layout()
                    .ifPresent(layout -> page.desk()
                            .selection()
                            .only(layout.value().where(content -> content.word().equals("3"))));
        }

        @Override
        public void exports() {
            openRun(RunDraft.EMPTY);
        }

        @Override
        public void draw() {
            openLayout(new LayoutDesk(LayoutEdits.empty(Text.of("layout.new"), PlateFormat.P96), Optional.empty()));
        }

        @Override
        public void earlier() {
            List<Path> files = askOpen(Text.of("start.earlier"));
            if (!files.isEmpty()) {
                openRun(RunDraft.EMPTY);
                run.ifPresent(page -> page.take(files));
            }
        }

        @Override
        public void practice() {
            back.execute(() -> {
                try {
                    Path file = examples.layOut("cider-l-malic");
                    front().execute(() ->
                            startSaid.hint(Text.of("start.practice.at", String.valueOf(file.getParent()))));
                } catch (OutputException e) {
                    front().execute(() -> startSaid.hint(String.valueOf(e.getMessage())));
                }
            });
        }

        @Override
        public void look(Settings.Look look, int size) {
            settings.look(look);
            settings.size(size);
            saveSettings();
            EventQueue.invokeLater(() -> {
                Desktop.theme(settings);
                showStart();
            });
        }
    }
}
