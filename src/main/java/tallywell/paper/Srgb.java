package tallywell.paper;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * The colour space sRGB as a profile, so that the colours of a document mean the same everywhere.
 *
 * <p>Source: primaries and transfer function of IEC 61966-2-1, adapted to D50 as ICC profiles want them; form of
 * ICC.1:2010 (profile version 4.3), 7.2 header, 7.3 tag table, 9.2 tags, 10.13 multiLocalizedUnicode, 10.16 parametric
 * curve type 3. The adapted primaries are those in common use (from memory); their sum is checked against the D50 white of
 * ICC.1, 7.2.16.
 */
final class Srgb {
    private static final int HEADER = 128;
    private static final double[] WHITE = {0.9642, 1.0, 0.8249};
    private static final double[] RED = {0.43607, 0.22249, 0.01392};
    private static final double[] GREEN = {0.38515, 0.71687, 0.09708};
    private static final double[] BLUE = {0.14307, 0.06061, 0.71410};
    private static final double[] CURVE = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
    private static final double ONE = 65536;

    private Srgb() {}

    /** The bytes of the profile. */
    static byte[] profile() {
        String[] names = {"desc", "cprt", "wtpt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC"};
        byte[] curve = curve();
        byte[][] values = {
            text("sRGB"),
            text("no copyright, use freely"),
            xyz(WHITE),
            xyz(RED),
            xyz(GREEN),
            xyz(BLUE),
            curve,
            curve,
            curve
        };
        int offset = HEADER + 4 + 12 * names.length;
        int size = offset;
        for (byte[] value : values) {
            size += value.length;
        }
        ByteBuffer out = ByteBuffer.allocate(size);
        header(out, size);
        out.position(HEADER).putInt(names.length);
        for (int i = 0; i < names.length; i++) {
            out.put(ascii(names[i])).putInt(offset).putInt(values[i].length);
            offset += values[i].length;
        }
        for (byte[] value : values) {
            out.put(value);
        }
        return out.array();
    }

    private static void header(ByteBuffer out, int size) {
        out.putInt(size).putInt(0).putInt(0x04300000);
        out.put(ascii("mntrRGB XYZ "));
        // 1 January 2026, since a profile has a date; then the signature of every profile.
        out.putShort((short) 2026).putShort((short) 1).putShort((short) 1);
        out.putShort((short) 0).putShort((short) 0).putShort((short) 0);
        out.put(ascii("acsp"));
        out.position(68);
        for (double each : WHITE) {
            out.putInt(fixed(each));
        }
    }

    private static byte[] xyz(double[] value) {
        ByteBuffer out = ByteBuffer.allocate(20).put(ascii("XYZ ")).putInt(0);
        for (double each : value) {
            out.putInt(fixed(each));
        }
        return out.array();
    }

    private static byte[] curve() {
        ByteBuffer out = ByteBuffer.allocate(32).put(ascii("para")).putInt(0).putShort((short) 3);
        out.putShort((short) 0);
        for (double each : CURVE) {
            out.putInt(fixed(each));
        }
        return out.array();
    }

    private static byte[] text(String text) {
        byte[] letters = text.getBytes(StandardCharsets.UTF_16BE);
        // Tags begin at multiples of four bytes.
        ByteBuffer out = ByteBuffer.allocate((28 + letters.length + 3) / 4 * 4);
        out.put(ascii("mluc")).putInt(0).putInt(1).putInt(12);
        out.put(ascii("enUS")).putInt(letters.length).putInt(28).put(letters);
        return out.array();
    }

    private static int fixed(double value) {
        return (int) Math.round(value * ONE);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
