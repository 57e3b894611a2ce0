package tallywell.chart;

import java.awt.Color;

/**
 * The colours of a chart by what they are for.
 *
 * @param card ground
 * @param line edges and grid
 * @param text words and measures
 * @param soft words of second rank, readings before the trigger
 * @param accent what was fitted
 * @param good readings that count, standards
 * @param attention what to look at
 * @param finished ground of the finished part
 */
public record ChartColours(
        Color card, Color line, Color text, Color soft, Color accent, Color good, Color attention, Color finished) {
    /** As pictures and documents have them. */
    static final ChartColours PRINT = new ChartColours(
            Ink.CARD, Ink.LINE, Ink.TEXT, Ink.SOFT, Ink.ACCENT, Ink.GOOD, Ink.ATTENTION, new Color(0xF1EEF6));

    /** The colour of one of several wells; they come again after the fifth. */
    Color ofWell(int index) {
        Color[] colours = {accent, good, attention, text, soft};
        return colours[index % colours.length];
    }

    /** The accent as a ground, which needs no transparency. */
    Color tint() {
        double part = 0.16;
        return new Color(
                mixed(card.getRed(), accent.getRed(), part),
                mixed(card.getGreen(), accent.getGreen(), part),
                mixed(card.getBlue(), accent.getBlue(), part));
    }

    private static int mixed(int ground, int ink, double part) {
        return (int) Math.round(ground + part * (ink - ground));
    }
}
