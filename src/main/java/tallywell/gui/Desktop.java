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
        EventQueue.invokeLater(() -> {
            theme(new Settings(home.resolve("settings.properties")));
            MainWindow window = new MainWindow(home, shown);
            window.setVisible(true);
            window.offerKept();
        });
    }

    static void theme(Settings settings) {
        boolean dark = switch (settings.look()) {
            case DARK -> true;
            case LIGHT -> false;
            case SYSTEM -> SystemLook.isDark(System.getProperty("os.name", ""));
        };
        Theme.install(dark, settings.size(Theme.USUAL, Theme.SMALLEST, Theme.LARGEST));
    }
}
