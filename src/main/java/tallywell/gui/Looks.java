package tallywell.gui;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import javax.swing.JRadioButtonMenuItem;
import javax.swing.KeyStroke;
import tallywell.desk.Settings;

/** Light or dark and the size of text, to be chosen from every page. */
final class Looks {
    private final Host host;
    private final Said said;
    private Runnable changed = () -> {};

    Looks(Host host, Said said) {
        this.host = host;
        this.said = said;
    }

    /** Calls back when another look is chosen. */
    void onChange(Runnable listener) {
        changed = listener;
    }

    /** Puts a look on and remembers it. */
    void choose(Settings.Look look, int size) {
        Settings settings = host.settings();
        int points = Math.max(Theme.SMALLEST, Math.min(Theme.LARGEST, size));
        if (settings.look() == look && now() == points) {
            return;
        }
        settings.look(look);
        settings.size(points);
        changed.run();
        host.jobs().aside(said, progress -> Desktop.isDark(settings), dark -> {
            // A later choice may have overtaken this one while the system was asked.
            if (settings.look() == look && Desktop.size(settings) == points) {
                Theme.install(dark, points);
            }
        });
        host.jobs()
                .aside(
                        said,
                        progress -> {
                            settings.save();
                            return points;
                        },
                        saved -> {});
    }

    private void size(int points) {
        choose(host.settings().look(), points);
    }

    /** A button with a menu of the looks and sizes. */
    JButton button() {
        JButton button = new JButton(Text.of("look.title"));
        button.setName("look");
        button.addActionListener(event -> menu().show(button, 0, button.getHeight()));
        return button;
    }

    private JPopupMenu menu() {
        JPopupMenu menu = new JPopupMenu();
        ButtonGroup group = new ButtonGroup();
        for (Settings.Look each : Settings.Look.values()) {
            JMenuItem item = new JRadioButtonMenuItem(
                    words(each), each == host.settings().look());
            item.addActionListener(event -> choose(each, now()));
            group.add(item);
            menu.add(item);
        }
        menu.addSeparator();
        menu.add(item("look.larger", () -> size(now() + 1)));
        menu.add(item("look.smaller", () -> size(now() - 1)));
        menu.add(item("look.usual", () -> size(Theme.USUAL)));
        return menu;
    }

    private static JMenuItem item(String key, Runnable action) {
        JMenuItem item = new JMenuItem(Text.of(key));
        item.addActionListener(event -> action.run());
        return item;
    }

    /** A look in words. */
    static String words(Settings.Look look) {
        return switch (look) {
            case SYSTEM -> Text.of("look.system");
            case LIGHT -> Text.of("look.light");
            case DARK -> Text.of("look.dark");
        };
    }

    private int now() {
        return Desktop.size(host.settings());
    }

    /** Binds the keys for the size of text on a page: Ctrl and plus, minus, 0. */
    void keys(JComponent page) {
        for (int plus : new int[] {KeyEvent.VK_PLUS, KeyEvent.VK_EQUALS, KeyEvent.VK_ADD}) {
            control(page, plus, "larger", () -> size(now() + 1));
            // Where plus stands above the equals sign, Shift is held for it.
            KeyStroke shifted = KeyStroke.getKeyStroke(plus, InputEvent.CTRL_DOWN_MASK | InputEvent.SHIFT_DOWN_MASK);
            Keys.bind(page, shifted, "look larger", () -> size(now() + 1));
        }
        control(page, KeyEvent.VK_MINUS, "smaller", () -> size(now() - 1));
        control(page, KeyEvent.VK_SUBTRACT, "smaller", () -> size(now() - 1));
        control(page, KeyEvent.VK_0, "usual", () -> size(Theme.USUAL));
    }

    private static void control(JComponent page, int code, String name, Runnable action) {
        Keys.bind(page, KeyStroke.getKeyStroke(code, InputEvent.CTRL_DOWN_MASK), "look " + name, action);
    }
}
