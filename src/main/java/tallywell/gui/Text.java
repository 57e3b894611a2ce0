package tallywell.gui;

import java.util.Locale;
import java.util.ResourceBundle;

/** The words of the windows, all from one bundle. */
final class Text {
    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("tallywell.gui.text", Locale.ROOT);

    private Text() {}

    /** The text of a key, with {@code {0}}, {@code {1}} … replaced. */
    static String of(String key, Object... parts) {
        String text = BUNDLE.getString(key);
        for (int i = 0; i < parts.length; i++) {
            text = text.replace("{" + i + "}", String.valueOf(parts[i]));
        }
        return text;
    }

    /** Whether there is a text for a key. */
    static boolean has(String key) {
        return BUNDLE.containsKey(key);
    }
}
