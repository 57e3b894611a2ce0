package tallywell.paper;

import de.rototor.pdfbox.graphics2d.IPdfBoxGraphics2DFontTextDrawer.IFontTextDrawerEnv;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import java.awt.Font;
import java.io.IOException;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import tallywell.chart.Picture;

/** Turns pictures into vectors for a page; their texts are written in the faces of the document. */
final class Drawing {
    private Drawing() {}

    static PDFormXObject of(Picture picture, Paper paper) throws IOException {
        PdfBoxGraphics2D g = new PdfBoxGraphics2D(paper.document(), (float) picture.width(), (float) picture.height());
        try (OwnFaces faces = new OwnFaces(paper.letters())) {
            g.setFontTextDrawer(faces);
            picture.draw(g);
        } finally {
            g.dispose();
        }
        return g.getXFormObject();
    }

    /** Writes with the faces of the document whatever face is asked for. */
    private static final class OwnFaces extends PdfBoxGraphics2DFontTextDrawer {
        private final Letters letters;

        OwnFaces(Letters letters) {
            this.letters = letters;
        }

        @Override
        protected boolean hasDynamicFontMapping() {
            return true;
        }

        @Override
        protected PDFont mapFont(Font font, IFontTextDrawerEnv env) {
            return letters.font(font.isBold() ? Face.BOLD : Face.PLAIN);
        }
    }
}
