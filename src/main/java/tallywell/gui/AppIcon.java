package tallywell.gui;

import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/** The picture of the program in title bars and lists of windows: nine wells that fill up. */
final class AppIcon {
    private static final int[] SIZES = {16, 24, 32, 48, 64, 128, 256};
    private static final double[] FILLED = {0.10, 0.16, 0.22, 0.16, 0.22, 0.25, 0.22, 0.25, 0.25};

    private AppIcon() {}

    /** The picture in the sizes that systems ask for. */
    static List<Image> images() {
        List<Image> images = new ArrayList<>();
        for (int size : SIZES) {
            images.add(image(size));
        }
        return images;
    }

    private static BufferedImage image(int size) {
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.setColor(Palette.LIGHT.accent());
        int edge = size / 32;
        g.fillRoundRect(edge, edge, size - 2 * edge, size - 2 * edge, size * 5 / 16, size * 5 / 16);
        g.setColor(Palette.LIGHT.paper());
        for (int i = 0; i < FILLED.length; i++) {
            int row = i / 3;
            double x = size * (0.22 + i % 3 * 0.28);
            double y = size * (0.22 + row * 0.28);
            double side = size * FILLED[i];
            double round = side * 0.4;
            g.fill(new java.awt.geom.RoundRectangle2D.Double(x - side / 2, y - side / 2, side, side, round, round));
        }
        g.dispose();
        return image;
    }
}
