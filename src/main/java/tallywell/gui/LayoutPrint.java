package tallywell.gui;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.print.PageFormat;
import java.awt.print.Printable;
import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.UIManager;
import tallywell.desk.Faces;
import tallywell.desk.RoleFaces;
import tallywell.desk.Shown;
import tallywell.notice.OutputException;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.Well;

/** A layout on a page of paper: its name, the plate as large as it goes, and in words what the wells hold. */
final class LayoutPrint implements Printable {
    private static final int ROW_HEAD = 24;
    private static final int COLUMN_HEAD = 20;
    private static final float TITLE = 15;
    private static final float TEXT = 9;

    private final Layout layout;
    private final Faces faces;
    private final RoleFaces roles;

    LayoutPrint(Layout layout, Shown shown) {
        this.layout = layout;
        roles = new RoleFaces(shown, Optional.empty());
        faces = roles.of(layout);
    }

    /** Asks for a printer and prints there, beside the windows. */
    static void print(Layout layout, Shown shown, Host host, Said said) {
        PrinterJob job = PrinterJob.getPrinterJob();
        PageFormat page = job.defaultPage();
        page.setOrientation(PageFormat.LANDSCAPE);
        job.setJobName(layout.name());
        job.setPrintable(new LayoutPrint(layout, shown), page);
        if (!job.printDialog()) {
            return;
        }
        host.jobs()
                .run(
                        said,
                        Text.of("print.busy"),
                        Jobs.Cancel.NEVER,
                        progress -> {
                            send(job);
                            return layout;
                        },
                        printed -> said.hint(Text.of("print.done", printed.name())),
                        e -> said.hint(Text.of("print.failed", String.valueOf(e.getMessage()))));
    }

    private static void send(PrinterJob job) throws OutputException {
        try {
            job.print();
        } catch (PrinterException e) {
            throw new OutputException(Path.of(job.getJobName()), String.valueOf(e.getMessage()), e);
        }
    }

    @Override
    public int print(Graphics graphics, PageFormat format, int page) {
        if (page > 0) {
            return NO_SUCH_PAGE;
        }
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.translate(format.getImageableX(), format.getImageableY());
        paint(g, format.getImageableWidth(), format.getImageableHeight());
        g.dispose();
        return PAGE_EXISTS;
    }

    /** Draws the page in points; always in the light colours, which paper wants. */
    private void paint(Graphics2D g, double width, double height) {
        Font font = UIManager.getFont("Label.font").deriveFont(TEXT);
        Font title = font.deriveFont(Font.BOLD, TITLE);
        g.setColor(Palette.LIGHT.ink());
        g.setFont(title);
        g.drawString(layout.name(), 0, g.getFontMetrics().getAscent());
        double top = g.getFontMetrics().getHeight() + 6;
        List<String> words = words(g.getFontMetrics(font), width);
        double below = words.size() * g.getFontMetrics(font).getHeight() + 6;
        PlateGeometry geometry =
                new PlateGeometry(layout.format(), (int) width, (int) (height - top - below), ROW_HEAD, COLUMN_HEAD);
        g.translate(0, top);
        plate(g, geometry, font);
        g.translate(0, height - top - below + 6);
        g.setFont(font);
        g.setColor(Palette.LIGHT.ink());
        FontMetrics metrics = g.getFontMetrics();
        for (int i = 0; i < words.size(); i++) {
            g.drawString(words.get(i), 0, i * metrics.getHeight() + metrics.getAscent());
        }
    }

    private void plate(Graphics2D g, PlateGeometry geometry, Font font) {
        WellPainter painter = new WellPainter(Palette.LIGHT, faces, font);
        g.setFont(font);
        g.setColor(Palette.LIGHT.ink());
        for (int column = 0; column < layout.format().columns(); column++) {
            centred(
                    g,
                    Integer.toString(column + 1),
                    geometry.left() + (column + 0.5) * geometry.pitchX(),
                    geometry.top() - COLUMN_HEAD / 2.0);
        }
        for (int row = 0; row < layout.format().rows(); row++) {
            centred(
                    g,
                    Well.rowName(row),
                    geometry.left() - ROW_HEAD / 2.0,
                    geometry.top() + (row + 0.5) * geometry.pitchY());
        }
        for (Well well : layout.format().all()) {
            Rectangle2D.Double box = geometry.well(well);
            painter.paint(g, faces.wells().get(well), box);
        }
    }

    private static void centred(Graphics2D g, String text, double x, double y) {
        double width = g.getFontMetrics().stringWidth(text);
        g.drawString(
                text, (float) (x - width / 2), (float) (y + g.getFontMetrics().getAscent() * 0.37));
    }

    /** What each word of the layout stands for, in lines that fit the page. */
    private List<String> words(FontMetrics metrics, double width) {
        List<String> parts = new ArrayList<>();
        layout.wells().forEach((well, content) -> {
            if (!(content instanceof Content.Sample) && !(content instanceof Content.Unused)) {
                String part = content.word() + ": " + roles.words(content);
                if (!parts.contains(part)) {
                    parts.add(part);
                }
            }
        });
        parts.sort(null);
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String part : parts) {
            if (line.length() > 0 && metrics.stringWidth(line + "   " + part) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : "   ").append(part);
        }
        if (line.length() > 0) {
            lines.add(line.toString());
        }
        return lines;
    }
}
