package tallywell.chart;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Brings a drawing down to 256 colours, which a drawing of lines and letters hardly has more of, so that its file stays
 * small. Colours are told apart to 5 bits a channel; the most frequent 256 stay (of equals the darker one), the others go
 * to the nearest.
 */
final class Palette {
    private static final int MOST = 256;
    private static final int COARSE = 0xF8F8F8;

    private final int[] colours;
    private final Map<Integer, Integer> places = new HashMap<>();

    private Palette(int[] colours) {
        this.colours = colours;
    }

    /** The same image with a palette. */
    static BufferedImage indexed(BufferedImage image) {
        int width = image.getWidth();
        int height = image.getHeight();
        int[] pixels = image.getRGB(0, 0, width, height, null, 0, width);
        Palette palette = new Palette(frequent(pixels));
        IndexColorModel model = new IndexColorModel(8, palette.colours.length, palette.colours, 0, false, -1, 0);
        BufferedImage indexed = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_INDEXED, model);
        byte[] places = new byte[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            // Most pixels are like the one before.
            places[i] = i > 0 && pixels[i] == pixels[i - 1] ? places[i - 1] : (byte) palette.place(pixels[i]);
        }

        indexed.getRaster().setDataElements(0, 0, width, height, places);
        return indexed;
    }

    /** For each coarse colour the first exact one stands, so that large areas keep their colour. */
    private static int[] frequent(int[] pixels) {
        Map<Integer, int[]> counts = new HashMap<>();
        int[] count = new int[1];
        for (int i = 0; i < pixels.length; i++) {
            if (i == 0 || pixels[i] != pixels[i - 1]) {
                count = counts.computeIfAbsent(pixels[i] & 0xFFFFFF, any -> new int[1]);
            }
            count[0]++;
        }

        List<Map.Entry<Integer, int[]>> exact = counts.entrySet().stream()
                .sorted(Comparator.comparingInt((Map.Entry<Integer, int[]> each) -> -each.getValue()[0])
                        .thenComparing(Map.Entry::getKey))
                .toList();
        Map<Integer, Integer> kept = new HashMap<>();
        int[] colours = new int[Math.min(MOST, exact.size())];
        int n = 0;
        for (Map.Entry<Integer, int[]> each : exact) {
            if (n < colours.length && kept.putIfAbsent(each.getKey() & COARSE, n) == null) {
                colours[n++] = 0xFF000000 | each.getKey();
            }
        }
        return Arrays.copyOf(colours, n);
    }

    private int place(int pixel) {
        return places.computeIfAbsent(pixel & 0xFFFFFF, this::nearest);
    }

    private int nearest(int colour) {
        int best = 0;
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < colours.length; i++) {
            int red = (colours[i] >> 16 & 0xFF) - (colour >> 16 & 0xFF);
            int green = (colours[i] >> 8 & 0xFF) - (colour >> 8 & 0xFF);
            int blue = (colours[i] & 0xFF) - (colour & 0xFF);
            int distance = red * red + green * green + blue * blue;
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }
}
