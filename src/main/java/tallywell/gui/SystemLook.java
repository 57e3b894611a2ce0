package tallywell.gui;

import java.awt.Toolkit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/** Whether the system shows its windows dark. */
final class SystemLook {
    private static final long PATIENCE_MS = 400;

    private SystemLook() {}

    static boolean isDark(String system) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.contains("windows")) {
            String asked = ask(List.of(
                    "reg",
                    "query",
                    "HKCU\\Software\\Microsoft\\Windows\\CurrentVersion\\Themes\\Personalize",
                    "/v",
                    "AppsUseLightTheme"));
            return asked.strip().endsWith("0x0");
        }
        if (name.contains("mac")) {
            return ask(List.of("defaults", "read", "-g", "AppleInterfaceStyle")).contains("Dark");
        }
        Object theme = Toolkit.getDefaultToolkit().getDesktopProperty("gnome.Net/ThemeName");
        return String.valueOf(theme).toLowerCase(Locale.ROOT).contains("dark");
    }

    private static String ask(List<String> command) {
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            if (!process.waitFor(PATIENCE_MS, TimeUnit.MILLISECONDS)) {
                process.destroy();
                return "";
            }
            return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            // A system that does not answer is shown light.
            return "";
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return "";
        }
    }
}
