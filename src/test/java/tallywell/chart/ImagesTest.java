package tallywell.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.GraphicsEnvironment;
import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/** Pictures as files. */
class ImagesTest {
    private static Picture trace;

    @BeforeAll
    static void workUp() throws Exception {
        StepTraces step = Drawn.step(Drawn.kinetic());
        trace = TracePicture.of(step, Drawn.well(step, "H2"));
    }

    @Test
    void samePictureGivesTheSameBytes() {
        assertThat(Images.png(trace, 2)).isEqualTo(Images.png(trace, 2));
        assertThat(Images.svg(trace)).isEqualTo(Images.svg(trace));
    }

    @Test
    void pngIsDrawnWithoutAScreenAndHasAPalette() throws Exception {
        assertThat(GraphicsEnvironment.isHeadless()).isTrue();
        assertThat(Images.obstacle()).isEmpty();
        byte[] png = Images.png(trace, 2);
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
        assertThat(image.getWidth()).isEqualTo(1400);
        assertThat(image.getColorModel()).isInstanceOf(IndexColorModel.class);
        assertThat(png.length).isLessThan(100_000);
    }

    @Test
    void svgIsWellFormedAndHoldsItsWordsAsText() throws Exception {
        byte[] svg = Images.svg(trace);
        Element root = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg))
                .getDocumentElement();
        assertThat(root.getTagName()).isEqualTo("svg");
        assertThat(root.getAttribute("viewBox")).isEqualTo("0 0 700 500");
        for (String words : List.of("H2 · Lees 12", "minutes from the trigger", "ΔA 0.")) {
            assertThat(new String(svg, StandardCharsets.UTF_8).contains(words))
                    .as(words)
                    .isTrue();
        }
    }

    /** Against the same picture drawn in true colour: what a palette costs cannot be seen. */
    @Test
    void paletteKeepsColoursSoCloseThatNobodySeesIt() throws Exception {
        BufferedImage shown = ImageIO.read(new ByteArrayInputStream(Images.png(trace, 1)));
        BufferedImage drawn = new BufferedImage(shown.getWidth(), shown.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = drawn.createGraphics();
        Ink.smooth(g);
        trace.draw(g);
        g.dispose();
        assertThat(((IndexColorModel) shown.getColorModel()).getMapSize()).isLessThanOrEqualTo(256);
        int same = 0;
        for (int x = 0; x < drawn.getWidth(); x++) {
            for (int y = 0; y < drawn.getHeight(); y++) {
                Color wanted = new Color(drawn.getRGB(x, y));
                Color found = new Color(shown.getRGB(x, y));
                same += wanted.equals(found) ? 1 : 0;
                assertThat(Math.abs(wanted.getRed() - found.getRed())
                                + Math.abs(wanted.getGreen() - found.getGreen())
                                + Math.abs(wanted.getBlue() - found.getBlue()))
                        .isLessThanOrEqualTo(48);
            }
        }
        assertThat(same).isGreaterThan((int) (0.95 * drawn.getWidth() * drawn.getHeight()));
    }

    @Test
    void scaleMustBePositive() {
        assertThatIllegalArgumentException().isThrownBy(() -> Images.png(trace, Double.NaN));
    }
}
