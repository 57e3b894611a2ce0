package tallywell.gui;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import com.formdev.flatlaf.fonts.inter.FlatInterFont;
import java.awt.Color;
import java.awt.Font;
import java.awt.Insets;
import javax.swing.UIManager;
import javax.swing.plaf.ColorUIResource;
import javax.swing.plaf.FontUIResource;

/** Puts on the light or dark set of colours, the typeface and its size. */
final class Theme {
    /** Sizes of text that can be chosen, in points. */
    static final int SMALLEST = 10;

    static final int USUAL = 13;
    static final int LARGEST = 22;

    private static final int ROW = 26;

    private Theme() {}

    static void install(boolean dark, int size) {
        FlatInterFont.installLazy();
        FlatLaf.setPreferredFontFamily(FlatInterFont.FAMILY);
        FlatLaf.setPreferredSemiboldFontFamily(FlatInterFont.FAMILY_SEMIBOLD);
        if (dark) {
            FlatDarkLaf.setup();
        } else {
            FlatLightLaf.setup();
        }
        Palette palette = dark ? Palette.DARK : Palette.LIGHT;
        UIManager.put("defaultFont", new FontUIResource(FlatInterFont.FAMILY, Font.PLAIN, size));
        grounds(palette);
        controls(palette);
        FlatLaf.updateUI();
    }

    private static void grounds(Palette palette) {
        put(
                palette.paper(),
                "Panel.background",
                "RootPane.background",
                "OptionPane.background",
                "TabbedPane.background");
        put(
                palette.paper(),
                "Viewport.background",
                "ScrollPane.background",
                "CheckBox.background",
                "MenuBar.background");
        put(palette.card(), "Table.background", "TextField.background", "TextArea.background", "ComboBox.background");
        put(palette.card(), "List.background", "Spinner.background", "PopupMenu.background", "TableHeader.background");
        put(palette.ink(), "Label.foreground", "Panel.foreground", "Table.foreground", "TextField.foreground");
        put(palette.ink(), "TextArea.foreground", "Button.foreground", "ComboBox.foreground", "CheckBox.foreground");
        put(palette.soft(), "TableHeader.foreground");
        put(palette.line(), "Component.borderColor", "Table.gridColor", "Separator.foreground");
        put(palette.line(), "TableHeader.bottomSeparatorColor");
        put(
                palette.tint(),
                "Table.selectionBackground",
                "Table.selectionInactiveBackground",
                "List.selectionBackground",
                "ComboBox.selectionBackground",
                "MenuItem.selectionBackground",
                "Menu.selectionBackground");
        put(
                palette.ink(),
                "Table.selectionForeground",
                "Table.selectionInactiveForeground",
                "List.selectionForeground",
                "ComboBox.selectionForeground",
                "MenuItem.selectionForeground",
                "Menu.selectionForeground");
        put(palette.card(), "ToolTip.background");
        put(palette.ink(), "ToolTip.foreground");
    }

    private static void controls(Palette palette) {
        put(palette.accent(), "Component.focusColor", "Component.focusedBorderColor", "Button.focusedBorderColor");
        put(palette.accent(), "Button.default.background", "ProgressBar.foreground", "CheckBox.icon.checkmarkColor");
        put(
                palette.accent(),
                "TabbedPane.underlineColor",
                "TabbedPane.inactiveUnderlineColor",
                "Button.default.borderColor",
                "TextField.selectionBackground");
        put(
                palette.accent(),
                "Button.default.focusedBackground",
                "Button.default.hoverBackground",
                "Button.default.pressedBackground");
        put(palette.ink(), "Button.default.focusedBorderColor", "Button.default.focusColor");
        put(palette.onAccent(), "Button.default.foreground", "TextField.selectionForeground");
        put(palette.card(), "Button.background", "Button.focusedBackground", "TableHeader.separatorColor");
        put(palette.tint(), "Button.hoverBackground", "Button.pressedBackground");
        UIManager.put("Component.focusWidth", 1);
        UIManager.put("Component.arc", 10);
        UIManager.put("Button.arc", 10);
        UIManager.put("TextComponent.arc", 8);
        UIManager.put("Button.margin", new Insets(5, 14, 5, 14));
        UIManager.put("Button.default.boldText", true);
        // The look and feel makes it larger with the text.
        UIManager.put("Table.rowHeight", ROW);
        UIManager.put("Table.showHorizontalLines", false);
        UIManager.put("ScrollBar.width", 12);
        UIManager.put("ScrollBar.thumbArc", 999);
        UIManager.put("TitlePane.unifiedBackground", true);
    }

    private static void put(Color colour, String... keys) {
        for (String key : keys) {
            UIManager.put(key, new ColorUIResource(colour));
        }
    }
}
