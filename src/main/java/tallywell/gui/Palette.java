package tallywell.gui;

import com.formdev.flatlaf.FlatLaf;
import java.awt.Color;
import tallywell.chart.ChartColours;

/**
 * Colours by what they are for. Text on its ground has a contrast of at least 4.5 : 1 (WCAG 2.2, 1.4.3) in both sets.
 *
 * @param paper ground of windows
 * @param card ground of panels
 * @param line edges
 * @param ink text
 * @param soft text of second rank
 * @param accent what can be pressed, what is selected
 * @param onAccent text on the accent
 * @param tint ground of what is selected
 * @param good all is well
 * @param attention look here
 * @param onAttention sign on a badge
 * @param finished the finished part of a trace
 * @param sample ground of sample wells
 * @param standard ground of standard wells
 * @param control ground of control wells
 * @param edge outline of wells
 */
record Palette(
        Color paper,
        Color card,
        Color line,
        Color ink,
        Color soft,
        Color accent,
        Color onAccent,
        Color tint,
        Color good,
        Color attention,
        Color onAttention,
        Color finished,
        Color sample,
        Color standard,
        Color control,
        Color edge) {
    static final Palette LIGHT = new Palette(
            new Color(0xFBF9F5),
            new Color(0xFFFFFF),
            new Color(0xD9D4CB),
            new Color(0x22303C),
            new Color(0x55646F),
            new Color(0x8C2F5B),
            new Color(0xFFFFFF),
            new Color(0xF6E8EF),
            new Color(0x1F6F5C),
            new Color(0x95600F),
            new Color(0xFFFFFF),
            new Color(0xF1EEF6),
            new Color(0xDCE6E1),
            new Color(0xEBDDB8),
            new Color(0xE9D3DE),
            new Color(0x97A2AB));
    static final Palette DARK = new Palette(
            new Color(0x171C20),
            new Color(0x20272D),
            new Color(0x3B454D),
            new Color(0xE9E6E0),
            new Color(0xA9B4BC),
            new Color(0xE58DB3),
            new Color(0x2B0E1C),
            new Color(0x41283A),
            new Color(0x6CC7AF),
            new Color(0xE2AC57),
            new Color(0x241A08),
            new Color(0x2F2C3D),
            new Color(0x2F4740),
            new Color(0x4E4630),
            new Color(0x55364A),
            new Color(0x74818B));

    /** The colours of charts. */
    ChartColours ofCharts() {
        return new ChartColours(card, line, ink, soft, accent, good, attention, finished);
    }

    /** The set of the look that is on. */
    static Palette now() {
        return FlatLaf.isLafDark() ? DARK : LIGHT;
    }
}
