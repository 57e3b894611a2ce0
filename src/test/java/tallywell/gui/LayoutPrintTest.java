package tallywell.gui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.awt.print.PageFormat;
import java.awt.print.Paper;
import java.awt.print.Printable;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import javax.print.DocFlavor;
import javax.print.SimpleDoc;
import javax.print.StreamPrintServiceFactory;
import javax.print.attribute.HashPrintRequestAttributeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tallywell.desk.Shown;
import tallywell.files.LayoutReader;
import tallywell.notice.InputException;
import tallywell.plate.Layout;

/** A layout on paper: ISO 216 A4 is 210 × 297 mm, and a point is 1/72 inch. */
class LayoutPrintTest {
    private static final double A4_SHORT = 210 / 25.4 * 72;
    private static final double A4_LONG = 297 / 25.4 * 72;
    private static final int MARGIN = 36;

    private static Layout layout(String name) throws InputException {
        return new LayoutReader().read(Path.of("plate-layouts", name));
    }

    private static PageFormat a4() {
        Paper paper = new Paper();
        paper.setSize(A4_SHORT, A4_LONG);
        paper.setImageableArea(MARGIN, MARGIN, A4_SHORT - 2 * MARGIN, A4_LONG - 2 * MARGIN);
        PageFormat page = new PageFormat();
        page.setPaper(paper);
        page.setOrientation(PageFormat.LANDSCAPE);
        return page;
    }

    private static BufferedImage printed(Layout layout) {
        BufferedImage image =
                new BufferedImage((int) Math.ceil(A4_LONG), (int) Math.ceil(A4_SHORT), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, image.getWidth(), image.getHeight());
        assertThat(new LayoutPrint(layout, Shown.POINT).print(g, a4(), 0)).isEqualTo(Printable.PAGE_EXISTS);
        g.dispose();
        return image;
    }

    private static Rectangle inked(BufferedImage image) {
        Rectangle inked = new Rectangle(-1, -1);
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                if ((image.getRGB(x, y) & 0xFFFFFF) != 0xFFFFFF) {
                    inked.add(x, y);
                }
            }
        }
        return inked;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "thirty-six-with-controls.yaml",
                "sequential-glucose-fructose.yaml",
                "24-nine-in-duplicate.yaml",
                "384-one-hundred-sixty-in-duplicate.yaml"
            })
    void everythingLiesWithinTheMarginsAndFillsThePage(String name) throws InputException {
        Rectangle inked = inked(printed(layout(name)));
        assertThat(inked.getMinX()).isGreaterThanOrEqualTo(MARGIN - 1);
        assertThat(inked.getMinY()).isGreaterThanOrEqualTo(MARGIN - 1);
        assertThat(inked.getMaxX()).isLessThanOrEqualTo(A4_LONG - MARGIN + 1);
        assertThat(inked.getMaxY()).isLessThanOrEqualTo(A4_SHORT - MARGIN + 1);
        assertThat(inked.getHeight()).isGreaterThan(0.8 * (A4_SHORT - 2 * MARGIN));
    }

    @Test
    void thereIsOnePage() throws InputException {
        BufferedImage image = new BufferedImage(10, 10, BufferedImage.TYPE_INT_RGB);
        int second = new LayoutPrint(layout("triplicates.yaml"), Shown.POINT).print(image.createGraphics(), a4(), 1);
        assertThat(second).isEqualTo(Printable.NO_SUCH_PAGE);
    }

    @Test
    void aPrinterThatTakesPostScriptGetsIt() throws Exception {
        DocFlavor flavor = DocFlavor.SERVICE_FORMATTED.PRINTABLE;
        StreamPrintServiceFactory[] factories =
                StreamPrintServiceFactory.lookupStreamPrintServiceFactories(flavor, "application/postscript");
        assertThat(factories).isNotEmpty();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        LayoutPrint print = new LayoutPrint(layout("triplicates.yaml"), Shown.POINT);
        factories[0]
                .getPrintService(out)
                .createPrintJob()
                .print(new SimpleDoc(print, flavor, null), new HashPrintRequestAttributeSet());
        String text = out.toString(StandardCharsets.ISO_8859_1);
        assertThat(text).startsWith("%!PS-Adobe").contains("showpage");
    }
}
