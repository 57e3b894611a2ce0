package tallywell.chart;

import java.awt.Font;

/**
 * What may differ between a chart in a window, in a picture and in a document.
 *
 * @param colours by what they are for
 * @param font of the words; signs and larger words grow with it
 * @param mark the decimal mark
 */
public record ChartStyle(ChartColours colours, Font font, char mark) {
    private static final float PRINT_SIZE = 10.5f;

    /** The style of pictures and documents: on white, with a decimal point. */
    static ChartStyle print() {
        return new ChartStyle(ChartColours.PRINT, Ink.plain(PRINT_SIZE), '.');
    }

    /** How much larger than in print everything is. */
    double scale() {
        return font.getSize2D() / PRINT_SIZE;
    }

    /** The face of small words: numbers of axes, legends, marks. */
    Font small() {
        return font.deriveFont(0.95f * font.getSize2D());
    }

    /** A bold face, larger than the words by a factor. */
    Font bold(double factor) {
        return font.deriveFont(Font.BOLD, (float) (factor * font.getSize2D()));
    }

    /** A number with some decimals. */
    String number(double value, int decimals) {
        return Ink.number(value, decimals).replace('.', mark);
    }
}
