package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Toolkit;
import java.awt.datatransfer.StringSelection;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;

/** A text that can be read and copied. */
final class TextDialog {
    private TextDialog() {}

    static JPanel panel(String text, Runnable close) {
        JPanel panel = new JPanel(new MigLayout("insets 16, fill", "[grow, fill][]", "[grow, fill][]"));
        JTextArea area = new JTextArea(text);
        area.setEditable(false);
        area.setLineWrap(true);
        area.setWrapStyleWord(true);
        area.setFont(area.getFont().deriveFont(Font.PLAIN, area.getFont().getSize2D() * 1.05f));
        area.setCaretPosition(0);
        area.setBackground(Palette.now().card());
        JScrollPane pane = new JScrollPane(area);
        panel.add(pane, "span 2, grow, wrap");
        panel.add(new JPanel(), "growx");
        panel.add(
                Fields.button(
                        Text.of("copy"),
                        () -> Toolkit.getDefaultToolkit()
                                .getSystemClipboard()
                                .setContents(new StringSelection(text), null)),
                "split 2");
        panel.add(Fields.primary(Text.of("said.close"), close));
        return panel;
    }

    static void show(Component owner, String title, String text) {
        Reader.show(owner, title, new Dimension(860, 620), close -> panel(text, close));
    }
}
