package tallywell.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;

/** Colours, strokes and letters that all pictures share. */
final class Tokens {
    static final Color PAPER = new Color(0xFBF9F5);
    static final Color CARD = new Color(0xFFFFFF);
    static final Color LINE = new Color(0xD9D4CB);
    static final Color INK = new Color(0x22303C);
    static final Color SOFT_INK = new Color(0x5B6B78);
    static final Color ACCENT = new Color(0x8C2F5B);
    static final Color GOOD = new Color(0x1F6F5C);
    static final Color ATTENTION = new Color(0xB7791F);
    static final Color FINISHED = new Color(0xF1EEF6);

    static final BasicStroke FINE = new BasicStroke(0.6f);
    static final BasicStroke HAIR = new BasicStroke(1f);
    static final BasicStroke FIRM = new BasicStroke(1.6f);
    static final BasicStroke DOTTED =
            new BasicStroke(1.3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10f, new float[] {2f, 3f}, 0f);
    static final BasicStroke DASHED =
            new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10f, new float[] {6f, 4f}, 0f);

    static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
    static final Font SMALL = TEXT.deriveFont(11f);
    static final Font STRONG = TEXT.deriveFont(Font.BOLD, 13f);
    static final Font TITLE = TEXT.deriveFont(Font.BOLD, 16f);

    private Tokens() {}
}
