package tallywell.gui;

import java.awt.EventQueue;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javax.imageio.ImageIO;
import javax.swing.AbstractButton;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import tallywell.desk.Origin;
import tallywell.desk.PlateShow;
import tallywell.desk.RunPlans;
import tallywell.desk.RunStore;
import tallywell.desk.SampleTable;
import tallywell.desk.Settings;
import tallywell.desk.Shown;
import tallywell.desk.Sum;
import tallywell.plate.Layout;
import tallywell.plate.Well;
import tallywell.plate.WellMap;

/** Draws every screen into a picture, light and dark: {@code Shots FOLDER WIDTH HEIGHT TEXTSIZE}. */
public final class Shots {
    private final Path folder;
    private final int width;
    private final int height;
    private final int size;

    private Shots(Path folder, int width, int height, int size) {
        this.folder = folder;
        this.width = width;
        this.height = height;
        this.size = size;
    }

    public static void main(String[] args) throws Exception {
        Shots shots = new Shots(
                Path.of(args[0]), Integer.parseInt(args[1]), Integer.parseInt(args[2]), Integer.parseInt(args[3]));
        Files.createDirectories(shots.folder);
        for (boolean dark : new boolean[] {false, true}) {
            shots.all(dark, dark ? "-dark" : "");
        }
        System.exit(0);
    }

    private void all(boolean dark, String ending) throws Exception {
        Path home = Path.of("target", "Tallywell" + ending);
        MainWindow[] window = new MainWindow[1];
        EventQueue.invokeAndWait(() -> {
            Settings settings = new Settings(home.resolve("settings.properties"));
            settings.look(dark ? Settings.Look.DARK : Settings.Look.LIGHT);
            Theme.install(dark, size);
            window[0] = new MainWindow(home, Shown.POINT, settings);
            window[0].setSize(width, height);
            window[0].setVisible(true);
        });
        settle();
        picture(window[0], "desktop-start" + ending);
        press(window[0], "start.example");
        await(() -> window[0].runPage().isPresent()
                && window[0].runPage().get().desk().worked().analysis().isPresent());
        settle();
        RunPage page = window[0].runPage().orElseThrow();
        picture(window[0], "desktop-run" + ending);
        EventQueue.invokeAndWait(() -> page.said().clear());
        for (PlateShow show : PlateShow.values()) {
            EventQueue.invokeAndWait(() -> press(window[0], "show-" + show));
            settle();
            picture(window[0], "desktop-run-" + show.name().toLowerCase(java.util.Locale.ROOT) + ending);
        }
        EventQueue.invokeAndWait(() -> press(window[0], "side-calibration"));
        settle();
        picture(window[0], "desktop-calibration" + ending);
        EventQueue.invokeAndWait(() -> press(window[0], "side-trace"));
        doubt(window[0], page, ending);
        dragging(window[0], page, ending);
        panels(page, ending);
        panel(
                new PlanDialog(
                        new RunPlans().plan(page.desk().draft().file().orElseThrow(), Shown.POINT),
                        page.desk(),
                        window[0],
                        page.desk().draft().file().orElseThrow()),
                1100,
                640,
                "desktop-plan" + ending);
        EventQueue.invokeAndWait(() -> {
            page.desk().history().savedAs(page.desk().draft());
            window[0].start();
        });
        settle();
        press(window[0], "start.exports");
        settle();
        EventQueue.invokeAndWait(() -> window[0]
                .runPage()
                .orElseThrow()
                .take(List.of(
                        Path.of("samples/cider-l-malic/after.csv"), Path.of("samples/cider-l-malic/before.csv"))));
        Thread.sleep(1500);
        settle();
        picture(window[0], "desktop-exports" + ending);
        EventQueue.invokeAndWait(() -> window[0].openLayout(Path.of("plate-layouts/thirty-six-with-controls.yaml")));
        await(() -> window[0].layoutPage().isPresent());
        EventQueue.invokeAndWait(
                () -> window[0].layoutPage().orElseThrow().desk().selection().columns(3, 4, false));
        settle();
        picture(window[0], "desktop-layout" + ending);
        EventQueue.invokeAndWait(() -> press(window[0], "role-STANDARD"));
        settle();
        picture(window[0], "desktop-layout-standard" + ending);
        EventQueue.invokeAndWait(() -> window[0].dispose());
    }

    private void doubt(MainWindow window, RunPage page, String ending) throws Exception {
        EventQueue.invokeAndWait(() -> {
            Layout layout = page.desk().draft().layout().orElseThrow().value();
            Layout turned = new Layout(
                    layout.name(),
                    WellMap.of(layout.format(), well -> layout.at(new Well(7 - well.row(), 11 - well.column()))));
            page.desk().history().edit(page.desk().draft().withLayout(Origin.unsaved("layout", turned)), "turn");
        });
        await(() -> !page.desk().doubts().isEmpty());
        settle();
        picture(window, "desktop-doubt" + ending);
        EventQueue.invokeAndWait(() -> page.desk().history().undo());
        await(() -> page.desk().doubts().isEmpty() && !page.desk().isBusy());
    }

    private void dragging(MainWindow window, RunPage page, String ending) throws Exception {
        EventQueue.invokeAndWait(() -> page.desk()
                .live()
                .tryTrigger(
                        1,
                        List.copyOf(page.desk().selection().wells()),
                        270,
                        looks -> page.trace().preview(looks)));
        Thread.sleep(400);
        settle();
        picture(window, "desktop-dragging" + ending);
    }

    private void panels(RunPage page, String ending) throws Exception {
        RunStore store = new RunStore();
        panel(
                new MethodDialog(
                        page.desk().draft().method().orElseThrow().value(),
                        store.text(page.desk().draft().method().orElseThrow()),
                        Shown.POINT),
                960,
                700,
                "desktop-method" + ending);
        panel(
                new SampleDialog(SampleTable.of(page.desk().draft(), Shown.POINT), Shown.POINT),
                1160,
                520,
                "desktop-samples" + ending);
        panel(ChecksDialog.panel(page.desk().worked().assessment().orElseThrow()), 900, 560, "desktop-checks" + ending);
        var analysis = page.desk().worked().analysis().orElseThrow();
        var result = analysis.results().get(2);
        panel(
                TextDialog.panel(String.join("\n", Sum.of(page.desk().worked(), result, Shown.POINT)), () -> {}),
                860,
                520,
                "desktop-sum" + ending);
        panel(new ReadingsDialog(page.desk(), Shown.POINT), 960, 600, "desktop-readings" + ending);
    }

    private void panel(JPanel panel, int w, int h, String name) throws Exception {
        JDialog[] dialog = new JDialog[1];
        EventQueue.invokeAndWait(() -> {
            dialog[0] = new JDialog();
            dialog[0].setContentPane(panel);
            dialog[0].setSize(w, h);
            dialog[0].setVisible(true);
        });
        settle();
        EventQueue.invokeAndWait(() -> {
            paint(panel, name);
            dialog[0].dispose();
        });
    }

    private void picture(MainWindow window, String name) throws Exception {
        EventQueue.invokeAndWait(() -> paint((JComponent) window.getContentPane(), name));
    }

    private void paint(JComponent component, String name) {
        BufferedImage image =
                new BufferedImage(component.getWidth(), component.getHeight(), BufferedImage.TYPE_INT_RGB);
        var g = image.createGraphics();
        g.setColor(Palette.now().paper());
        g.fillRect(0, 0, image.getWidth(), image.getHeight());
        component.paint(g);
        g.dispose();
        try {
            ImageIO.write(image, "png", folder.resolve(name + ".png").toFile());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static void press(MainWindow window, String name) {
        AbstractButton button = (AbstractButton) Windows.find(window, name);
        if (SwingUtilities.isEventDispatchThread()) {
            button.doClick(0);
        } else {
            SwingUtilities.invokeLater(() -> button.doClick(0));
        }
    }

    private static void settle() throws Exception {
        for (int i = 0; i < 4; i++) {
            EventQueue.invokeAndWait(() -> {});
            Thread.sleep(60);
        }
    }

    private static void await(BooleanSupplier condition) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
        while (System.nanoTime() < end) {
            boolean[] met = new boolean[1];
            EventQueue.invokeAndWait(() -> met[0] = condition.getAsBoolean());
            if (met[0]) {
                return;
            }
            Thread.sleep(20);
        }
        throw new AssertionError("it did not come about in 20 s");
    }
}
