package tallywell.gui;

import java.awt.Color;
import java.awt.Font;
import java.util.function.Supplier;
import javax.swing.JLabel;
import javax.swing.JTextArea;

/** Labels in the ranks of our type. */
final class Labels {
    private Labels() {}

    static JLabel title(String text) {
        return new Ranked(text, Font.BOLD, 1.55f, () -> Palette.now().ink());
    }

    static JLabel heading(String text) {
        return new Ranked(text, Font.BOLD, 1.08f, () -> Palette.now().ink());
    }

    static JLabel strong(String text) {
        return new Ranked(text, Font.BOLD, 1f, () -> Palette.now().ink());
    }

    static JLabel plain(String text) {
        return new Ranked(text, Font.PLAIN, 1f, () -> Palette.now().ink());
    }

    static JLabel soft(String text) {
        return new Ranked(text, Font.PLAIN, 0.92f, () -> Palette.now().soft());
    }

    static JLabel softStrong(String text) {
        return new Ranked(text, Font.BOLD, 0.92f, () -> Palette.now().soft());
    }

    /** Text that wraps. */
    static JTextArea wrapped(String text, boolean soft) {
        JTextArea area = new Wrapped(text, soft);
        area.setLineWrap(true);
        area.setWrapStyleWord(true);
        area.setEditable(false);
        area.setFocusable(false);
        area.setOpaque(false);
        area.setBorder(null);
        return area;
    }

    /** Text that wraps, in bold. */
    static JTextArea wrappedStrong(String text) {
        JTextArea area = wrapped(text, false);
        ((Wrapped) area).style = Font.BOLD;
        area.updateUI();
        return area;
    }

    /** Follows a change of typeface size and of colours. */
    private static final class Ranked extends JLabel {
        private final int style;
        private final float scale;
        private final Supplier<Color> colour;

        Ranked(String text, int style, float scale, Supplier<Color> colour) {
            super(text);
            this.style = style;
            this.scale = scale;
            this.colour = colour;
            updateUI();
        }

        @Override
        public void updateUI() {
            super.updateUI();
            // The constructor of the superclass calls this before the fields are set.
            if (colour != null) {
                Font font = javax.swing.UIManager.getFont("Label.font");
                setFont(font.deriveFont(style, font.getSize2D() * scale));
                setForeground(colour.get());
            }
        }
    }

    private static final class Wrapped extends JTextArea {
        private final boolean soft;
        private int style = Font.PLAIN;

        Wrapped(String text, boolean soft) {
            super(text);
            this.soft = soft;
            updateUI();
        }

        @Override
        public void updateUI() {
            super.updateUI();
            Font font = javax.swing.UIManager.getFont("Label.font");
            setFont(soft ? font.deriveFont(font.getSize2D() * 0.92f) : font.deriveFont(style));
            setForeground(soft ? Palette.now().soft() : Palette.now().ink());
            setOpaque(false);
            setBorder(null);
        }
    }
}
