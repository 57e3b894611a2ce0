package tallywell.gui;

import java.awt.Color;

/**
 * Colours from pale straw to deep blue, even in lightness: the two ends and a grey in between are joined in CIE L*a*b*
 * (CIE 15, D65), where equal steps look equal. Yellow against blue stays apart for the colour-blind.
 */
final class ValueScale {
    private static final double[][] STOPS = {{90, 0, 33}, {53, -2, 6}, {17, 6, -33}};
    private static final int STEPS = 256;

    private final Color[] colours = new Color[STEPS];

    ValueScale() {
        for (int i = 0; i < STEPS; i++) {
            colours[i] = colour(i / (STEPS - 1.0));
        }
    }

    /** The colour at a part of the scale; parts outside 0 to 1 take the ends. */
    Color at(double part) {
        return colours[(int) Math.round(Math.max(0, Math.min(1, part)) * (STEPS - 1))];
    }

    /** Ink or paper, whichever stands out more on a colour. */
    static Color textOn(Color ground) {
        return contrast(ground, Palette.LIGHT.ink()) >= contrast(ground, Color.WHITE)
                ? Palette.LIGHT.ink()
                : Color.WHITE;
    }

    /** Contrast as WCAG 2.2 defines it: 1 to 21. */
    static double contrast(Color one, Color other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(Color colour) {
        return 0.2126 * linear(colour.getRed())
                + 0.7152 * linear(colour.getGreen())
                + 0.0722 * linear(colour.getBlue());
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static Color colour(double part) {
        double[] from = part < 0.5 ? STOPS[0] : STOPS[1];
        double[] to = part < 0.5 ? STOPS[1] : STOPS[2];
        double t = part < 0.5 ? 2 * part : 2 * part - 1;
        return ofLab(from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1]), from[2] + t * (to[2] - from[2]));
    }

    /** CIE 15 formulas and the sRGB matrix of IEC 61966-2-1, white D65. */
    private static Color ofLab(double lightness, double a, double b) {
        double fy = (lightness + 16) / 116;
        double x = 0.95047 * cubed(fy + a / 500);
        double y = cubed(fy);
        double z = 1.08883 * cubed(fy - b / 200);
        return new Color(
                channel(3.2406 * x - 1.5372 * y - 0.4986 * z),
                channel(-0.9689 * x + 1.8758 * y + 0.0415 * z),
                channel(0.0557 * x - 0.2040 * y + 1.0570 * z));
    }

    private static double cubed(double f) {
        return f > 6.0 / 29 ? f * f * f : 3 * (6.0 / 29) * (6.0 / 29) * (f - 4.0 / 29);
    }

    private static int channel(double linear) {
        double c = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
        return (int) Math.round(255 * Math.max(0, Math.min(1, c)));
    }
}
