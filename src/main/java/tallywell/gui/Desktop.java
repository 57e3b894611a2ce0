package tallywell.gui;

import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.nio.file.Path;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import tallywell.desk.Settings;
import tallywell.desk.Shown;

/** Starts the desktop program. */
public final class Desktop {
    private Desktop() {}

    /** Whether there is a screen to open a window on. */
    public static boolean isPossible() {
        return !GraphicsEnvironment.isHeadless();
    }

    /**
     * Opens the window and returns; the process ends with the window.
     *
     * @param home folder of the program in the home of the user: settings, unsaved work, examples
     * @param locale whose decimal mark is shown
     */
    public static void open(Path home, Locale locale) {
        Shown shown = new Shown(DecimalFormatSymbols.getInstance(locale).getDecimalSeparator());
        // The caller is no event thread: files and the system are asked before the first window needs the answers.
        Settings settings = new Settings(home.resolve("settings.properties"));
        boolean dark = isDark(settings);
        EventQueue.invokeLater(() -> {
            Theme.install(dark, size(settings));
            MainWindow window = new MainWindow(home, shown, settings);
            Thread.setDefaultUncaughtExceptionHandler(window.faults());
            window.setVisible(true);
            window.offerKept();
        });
    }

    /** Whether windows are to be dark; may ask the system, so not for the event thread. */
    static boolean isDark(Settings settings) {
        return switch (settings.look()) {
            case DARK -> true;
            case LIGHT -> false;
            case SYSTEM -> SystemLook.isDark(System.getProperty("os.name", ""));
        };
    }

    /** Size of text in points. */
    static int size(Settings settings) {
        return settings.size(Theme.USUAL, Theme.SMALLEST, Theme.LARGEST);
    }
}
