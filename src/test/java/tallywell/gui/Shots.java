package tallywell.gui;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import tallywell.desk.LayoutDesk;
import tallywell.desk.Shown;

/** Draws the screens into pictures. */
final class Shots {
    private Shots() {}

    static void shot(JComponent page, int width, int height, String file) throws IOException {
        JFrame frame = new JFrame();
        frame.setUndecorated(true);
        frame.setContentPane(page);
        frame.setSize(new Dimension(width, height));
        frame.setVisible(true);
        frame.validate();
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        ((Component) page).paint(g);
        g.dispose();
        ImageIO.write(image, "png", new File(file));
        frame.dispose();
    }

    public static void main(String[] args) throws Exception {
        SwingUtilities.invokeAndWait(() -> {
            try {
                for (boolean dark : new boolean[] {false, true}) {
                    Theme.install(dark, Theme.USUAL);
                    LayoutDesk desk = LayoutDesk.open(Path.of("plate-layouts/thirty-six-with-controls.yaml"));
                    Host host = new Host() {
                        @Override
                        public void start() {}

                        @Override
                        public Optional<Path> askSave(String title, Path suggested) {
                            return Optional.empty();
                        }

                        @Override
                        public void savedLayout(Path file) {}
                    };
                    desk.selection().columns(3, 4, false);
                    shot(
                            new LayoutPage(desk, Shown.POINT, host),
                            1366,
                            740,
                            "/tmp/shots/layout" + (dark ? "-dark" : "") + ".png");
                }
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        System.exit(0);
    }
}
