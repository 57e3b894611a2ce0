package tallywell.gui;

import java.awt.EventQueue;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import javax.swing.JComponent;
import tallywell.desk.LayoutEdits;
import tallywell.desk.PlateShow;
import tallywell.desk.RoleFaces;
import tallywell.desk.RunDraft;
import tallywell.desk.RunStore;
import tallywell.desk.Selection;
import tallywell.desk.Settings;
import tallywell.desk.Shown;
import tallywell.plate.Content;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;

/** A window whose deeds are timed, each in ms of the clock until its picture is painted. */
public final class WindowSpeed {
    private static final Path RUN = Path.of("samples/cider-malic-kinetic/run.yaml");
    private static final Path TRACE = Path.of("samples/cider-malic-kinetic/trace.csv");
    private static final double MS = 1e6;
    private static final int PATIENCE_S = 60;

    private final MainWindow window;
    private final RunDraft example;
    private int count;

    /** Opens a window with the sample run of 96 wells and 94 times. */
    public WindowSpeed(Path home) throws Exception {
        example = new RunStore().open(RUN);
        MainWindow[] made = new MainWindow[1];
        EventQueue.invokeAndWait(() -> {
            Theme.install(false, Theme.USUAL);
            made[0] = new MainWindow(home, Shown.POINT, new Settings(home.resolve("settings.properties")));
            made[0].setBounds(0, 0, 1366, 768);
            made[0].setVisible(true);
        });
        window = made[0];
        open(example);
    }

    private RunPage page() {
        return window.runPage().orElseThrow();
    }

    private void open(RunDraft draft) throws Exception {
        EventQueue.invokeAndWait(() -> window.openRun(draft));
        await(() -> !page().desk().isBusy());
        EventQueue.invokeAndWait(() -> page().desk().selection().only(List.of(new Well(3, 0), new Well(3, 6))));
    }

    private static void await(BooleanSupplier condition) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        AtomicBoolean met = new AtomicBoolean();
        while (!met.get()) {
            EventQueue.invokeAndWait(() -> met.set(condition.getAsBoolean()));
            if (!met.get() && System.nanoTime() > end) {
                throw new IllegalStateException("it did not come about in " + PATIENCE_S + " s");
            }
            Thread.onSpinWait();
        }
    }

    /** From a deed until what came of it is painted. */
    private double until(Runnable deed, BooleanSupplier done) throws Exception {
        long start = System.nanoTime();
        EventQueue.invokeAndWait(deed);
        await(done);
        EventQueue.invokeAndWait(() -> {
            JComponent content = (JComponent) window.getContentPane();
            content.paintImmediately(0, 0, content.getWidth(), content.getHeight());
        });
        return (System.nanoTime() - start) / MS;
    }

    /** An export is dropped into a run that has everything else. */
    public double drop() throws Exception {
        RunDraft without = RunDraft.EMPTY
                .withMethod(example.method().orElseThrow())
                .withLayout(example.layout().orElseThrow())
                .withSamples(example.samples());
        open(without);
        return until(
                () -> page().take(List.of(TRACE)),
                () -> !page().desk().isBusy()
                        && page().desk().worked().analysis().isPresent());
    }

    private void example() throws Exception {
        if (page().desk().worked().analysis().isEmpty()
                || page().desk().draft().readings().isEmpty()) {
            open(example);
        }
    }

    /** A well is excluded. */
    public double exclude() throws Exception {
        example();
        Well well = new Well(count % 8, 1 + count++ % 5);
        return until(
                () -> {
                    page().desk().selection().only(List.of(well));
                    page().desk().exclude("bubble", "J. Vale");
                },
                () -> !page().desk().isBusy());
    }

    /** The start of a finished part is dragged on by one place. */
    public double dragFinished() throws Exception {
        example();
        AtomicBoolean seen = new AtomicBoolean();
        List<Well> wells = List.of(new Well(3, 0), new Well(3, 6));
        double timeS = 400 + count++ % 20 * 15;
        return until(
                () -> page().desk().live().tryFinished(1, wells, timeS, looks -> {
                    page().trace().preview(looks);
                    seen.set(true);
                }),
                seen::get);
    }

    /** A trigger is dragged on by one second. */
    public double dragTrigger() throws Exception {
        example();
        AtomicBoolean seen = new AtomicBoolean();
        List<Well> wells = List.of(new Well(3, 0), new Well(3, 6));
        double timeS = 225 + count++ % 20;
        return until(
                () -> page().desk().live().tryTrigger(1, wells, timeS, looks -> {
                    page().trace().preview(looks);
                    seen.set(true);
                }),
                seen::get);
    }

    /** The plate with a small trace in each of 96 wells. */
    public double paintTraces() throws Exception {
        example();
        EventQueue.invokeAndWait(() -> page().show(PlateShow.TRACES));
        return painted(page().plate());
    }

    /** A plate of 1536 wells, all in use. */
    public double paintMany() throws Exception {
        PlateView[] plate = new PlateView[1];
        EventQueue.invokeAndWait(() -> {
            PlateFormat format = new PlateFormat(32, 48);
            var layout = LayoutEdits.paint(LayoutEdits.empty("x", format), format.all(), new Content.Sample(1));
            plate[0] = new PlateView(new Selection(format), new RoleFaces(Shown.POINT, Optional.empty()).of(layout));
            plate[0].setSize(1000, 640);
        });
        return painted(plate[0]);
    }

    private static double painted(JComponent component) throws Exception {
        BufferedImage image = new BufferedImage(
                Math.max(1, component.getWidth()), Math.max(1, component.getHeight()), BufferedImage.TYPE_INT_RGB);
        CountDownLatch done = new CountDownLatch(1);
        long[] took = new long[1];
        EventQueue.invokeLater(() -> {
            long start = System.nanoTime();
            component.paint(image.getGraphics());
            took[0] = System.nanoTime() - start;
            done.countDown();
        });
        if (!done.await(PATIENCE_S, TimeUnit.SECONDS)) {
            throw new IllegalStateException("it was not painted in " + PATIENCE_S + " s");
        }
        return took[0] / MS;
    }

    /** Closes the window. */
    public void close() throws Exception {
        EventQueue.invokeAndWait(window::dispose);
    }
}
