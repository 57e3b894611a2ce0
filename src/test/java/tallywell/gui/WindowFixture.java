package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Container;
import java.awt.EventQueue;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.Toolkit;
import java.awt.event.InputEvent;
import java.awt.geom.Rectangle2D;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import javax.imageio.ImageIO;
import javax.swing.AbstractButton;
import javax.swing.JDialog;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import tallywell.desk.Settings;
import tallywell.desk.Shown;
import tallywell.plate.Well;

/** A real window with a mouse and a keyboard for each test. */
abstract class WindowFixture {
    private static final int PATIENCE_S = 60;

    @TempDir
    Path home;

    MainWindow window;
    Robot robot;

    @BeforeEach
    void open() throws Exception {
        robot = new Robot();
        robot.setAutoDelay(8);
        EventQueue.invokeAndWait(() -> Theme.install(false, Theme.USUAL));
        window = start();
    }

    MainWindow start() throws Exception {
        MainWindow opened = on(() -> {
            MainWindow made = new MainWindow(home, new Shown(','), new Settings(home.resolve("settings.properties")));
            made.setBounds(0, 0, 1366, 768);
            made.setVisible(true);
            made.offerKept();
            return made;
        });
        // The screen has to have mapped the window before a click can land in it.
        await("the window", () -> opened.isShowing() && opened.getLocationOnScreen().x == 0);
        robot.waitForIdle();
        Thread.sleep(250);
        return opened;
    }

    @AfterEach
    void close() throws Exception {
        EventQueue.invokeAndWait(() -> {
            for (java.awt.Window each : java.awt.Window.getWindows()) {
                each.dispose();
            }
        });
        // What is still being kept would be written into a folder that is being deleted.
        assertThat(window.rest()).isTrue();
    }

    static <T> T on(Callable<T> call) throws Exception {
        AtomicReference<T> result = new AtomicReference<>();
        AtomicReference<Exception> failed = new AtomicReference<>();
        EventQueue.invokeAndWait(() -> {
            try {
                result.set(call.call());
            } catch (Exception e) {
                failed.set(e);
            }
        });
        if (failed.get() != null) {
            throw failed.get();
        }
        return result.get();
    }

    static void await(String what, BooleanSupplier condition) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        while (System.nanoTime() < end) {
            if (on(condition::getAsBoolean)) {
                return;
            }
            Thread.sleep(15);
        }
        Path picture = Path.of("target", "windows-failed.png");
        Rectangle screen = new Rectangle(Toolkit.getDefaultToolkit().getScreenSize());
        ImageIO.write(new Robot().createScreenCapture(screen), "png", picture.toFile());
        throw new AssertionError(what + " did not come about in " + PATIENCE_S + " s; the screen is in " + picture);
    }

    void press(String name) throws Exception {
        // What has just changed the page may not have laid it out yet.
        robot.waitForIdle();
        AbstractButton button = (AbstractButton) on(() -> Windows.find(window, name));
        await(name, () -> button.isShowing() && button.getWidth() > 0);
        Point at = on(() -> {
            Point point = new Point(button.getWidth() / 2, button.getHeight() / 2);
            SwingUtilities.convertPointToScreen(point, button);
            return point;
        });
        click(at);
    }

    void click(Point at) {
        robot.mouseMove(at.x, at.y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
    }

    static Point at(PlateView plate, String well) throws Exception {
        return on(() -> {
            Rectangle2D box = plate.geometry().well(Well.parse(well).orElseThrow());
            Point point = new Point((int) box.getCenterX(), (int) box.getCenterY());
            SwingUtilities.convertPointToScreen(point, plate);
            return point;
        });
    }

    void drag(Point from, Point to) {
        robot.mouseMove(from.x, from.y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        for (int i = 1; i <= 6; i++) {
            robot.mouseMove(from.x + (to.x - from.x) * i / 6, from.y + (to.y - from.y) * i / 6);
        }
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
    }

    RunPage example() throws Exception {
        press("start.example");
        await(
                "the example",
                () -> window.runPage()
                        .map(page -> page.desk().worked().analysis().isPresent()
                                && !page.desk().isBusy())
                        .orElse(false));
        robot.waitForIdle();
        return window.runPage().orElseThrow();
    }

    static JDialog dialog() {
        for (java.awt.Window each : java.awt.Window.getWindows()) {
            if (each instanceof JDialog dialog && dialog.isShowing() && dialog.isModal()) {
                return dialog;
            }
        }
        return null;
    }

    /** Presses keys one after the other. */
    void keys(int... codes) {
        for (int code : codes) {
            robot.keyPress(code);
            robot.keyRelease(code);
        }
        robot.waitForIdle();
    }

    /** Presses keys while others are held. */
    void with(int held, int... codes) {
        robot.keyPress(held);
        keys(codes);
        robot.keyRelease(held);
        robot.waitForIdle();
    }

    /** Presses a button that opens a modal dialog, which would hold up a click that waits. */
    static void pressLater(Container in, String name) {
        EventQueue.invokeLater(() -> ((AbstractButton) Windows.find(in, name)).doClick(0));
    }
}
