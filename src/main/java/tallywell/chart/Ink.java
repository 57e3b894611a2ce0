package tallywell.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.math.BigDecimal;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.TickUnits;
import tallywell.quantity.Numbers;

/** The colours, faces and lines that all pictures share. */
final class Ink {
    static final Color CARD = new Color(0xFFFFFF);
    static final Color PAPER = new Color(0xFBF9F5);
    static final Color LINE = new Color(0xD9D4CB);
    static final Color TEXT = new Color(0x22303C);
    static final Color SOFT = new Color(0x5B6B78);
    static final Color ACCENT = new Color(0x8C2F5B);
    static final Color GOOD = new Color(0x1F6F5C);
    static final Color ATTENTION = new Color(0xB7791F);

    private Ink() {}

    /** The face of the system without serifs, which every Java has. */
    static Font plain(float size) {
        return new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont(size);
    }

    static Font bold(float size) {
        return new Font(Font.SANS_SERIF, Font.BOLD, 1).deriveFont(size);
    }

    static BasicStroke pen(double width) {
        return new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    }

    static BasicStroke dots(double width) {
        float[] pattern = {(float) width, (float) (2.2 * width)};
        return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, pattern, 0);
    }

    static BasicStroke dashes(double width) {
        float[] pattern = {(float) (5 * width), (float) (3 * width)};
        return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, pattern, 0);
    }

    /**
     * Steps of 1, 2 and 5 times the powers of ten, each with as many decimals as it needs, the same in every language.
     *
     * @param mark the decimal mark
     */
    static TickUnits axisSteps(char mark) {
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setDecimalSeparator(mark);
        symbols.setMinusSign('−');
        TickUnits units = new TickUnits();
        for (int decimals = 5; decimals >= -4; decimals--) {
            String pattern = decimals > 0 ? "0." + "0".repeat(decimals) : "0";
            for (int first : new int[] {1, 2, 5}) {
                double size = new BigDecimal(first).scaleByPowerOfTen(-decimals).doubleValue();
                units.add(new NumberTickUnit(size, new DecimalFormat(pattern, symbols)));
            }
        }
        return units;
    }

    /** A number with some decimals and a proper minus. */
    static String number(double value, int decimals) {
        return Numbers.fixed(value, decimals).replace('-', '−');
    }

    /** Asks for smooth lines and for text whose widths do not depend on the resolution. */
    static void smooth(Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }
}
