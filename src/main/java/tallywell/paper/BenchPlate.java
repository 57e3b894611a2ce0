package tallywell.paper;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import tallywell.method.Sample;
import tallywell.plan.Plan;
import tallywell.plate.Content;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;

/** The plate in large print: what stands in each well, and at which dilution. */
final class BenchPlate {
    private static final double NAMES = 16;
    private static final double HEAD = 11;
    private static final double LARGE = 12;

    /** Wells lower or narrower than this have no room for a second line. */
    private static final double LEAST_HEIGHT = 17;

    private static final double LEAST_WIDTH = 30;

    private final Plan plan;
    private final Letters letters;
    private final PlateFormat format;
    private final Map<Integer, Sample> samples = new HashMap<>();

    BenchPlate(Plan plan, Letters letters) {
        this.plan = plan;
        this.letters = letters;
        this.format = plan.layout().format();
        plan.samples().forEach(each -> samples.put(each.sample().slot(), each.sample()));
    }

    void draw(Page page, PDStructureElement parent, double left, double top, double height) throws IOException {
        PDStructureElement table = Tags.child(parent, "Table");
        double width = (Flow.WIDTH - NAMES) / format.columns();
        double high = (height - HEAD) / format.rows();
        PDStructureElement head = Tags.child(table, "TR");
        Tags.headsColumn(Tags.child(head, "TH"));
        double size = Math.min(7.6, 0.5 * width);
        for (int column = 0; column < format.columns(); column++) {
            PDStructureElement cell = Tags.child(head, "TH");
            Tags.headsColumn(cell);
            centred(
                    page,
                    cell,
                    Integer.toString(column + 1),
                    Face.PLAIN,
                    size,
                    left + NAMES + column * width,
                    width,
                    top + 8);
        }
        for (int row = 0; row < format.rows(); row++) {
            PDStructureElement line = Tags.child(table, "TR");
            PDStructureElement name = Tags.child(line, "TH");
            Tags.headsRow(name);
            double y = top + HEAD + row * high;
            double letter = Math.min(7.6, 0.8 * high);
            centred(page, name, Well.rowName(row), Face.BOLD, letter, left, NAMES - 3, y + high / 2 + 0.36 * letter);
            for (int column = 0; column < format.columns(); column++) {
                Content content = plan.layout().at(new Well(row, column));
                well(page, Tags.child(line, "TD"), content, left + NAMES + column * width, y, width, high);
            }
        }
    }

    private void well(
            Page page, PDStructureElement cell, Content content, double x, double y, double width, double high)
            throws IOException {
        if (!isUsed(content)) {
            page.box(Ink.LINE, 0.3, x, y, width, high);
            return;
        }
        Ink ground = ground(content);
        if (ground != Ink.WHITE) {
            page.fill(ground, x, y, width, high);
        }
        page.box(Ink.SOFT, 0.5, x, y, width, high);
        boolean hasSecond = high >= LEAST_HEIGHT && width >= LEAST_WIDTH;
        double size = Math.min(LARGE, Math.min(0.52 * high, 0.62 * width));
        double base = hasSecond ? y + 0.53 * high : y + high / 2 + 0.36 * size;
        centred(page, cell, content.word(), Face.BOLD, size, x, width, base);
        if (hasSecond) {
            centred(page, cell, small(content), Face.PLAIN, Math.min(6.4, 0.26 * high), x, width, y + 0.86 * high);
        }
    }

    private void centred(
            Page page,
            PDStructureElement element,
            String text,
            Face face,
            double size,
            double x,
            double width,
            double base)
            throws IOException {
        String clean = letters.clean(text, face);
        double fitting = size;
        while (fitting > 3 && letters.width(clean, face, fitting) > width - 1) {
            fitting -= 0.4;
        }
        String cut = letters.cut(clean, face, fitting, width - 1);
        double at = x + (width - letters.width(cut, face, fitting)) / 2;
        if (!cut.isEmpty()) {
            page.text(element, Direction.seen(cut), face, fitting, Ink.TEXT, at, base);
        }
    }

    private boolean isUsed(Content content) {
        return !(content instanceof Content.Unused)
                && !(content instanceof Content.Sample sample && !samples.containsKey(sample.slot()));
    }

    private static Ink ground(Content content) {
        return switch (content.role()) {
            case "standard" -> Ink.STANDARD;
            case "control", "spike" -> Ink.CONTROL;
            case "blank", "sample-blank" -> Ink.HEAD;
            default -> Ink.WHITE;
        };
    }

    private String small(Content content) {
        if (content instanceof Content.Sample each) {
            Sample sample = samples.get(each.slot());
            double factor = sample == null ? 1 : sample.dilution().factor();
            return factor == 1 ? "as it is" : "dil. " + Numbers.brief(factor, 4);
        }
        if (content instanceof Content.Blank blank) {
            return blank.triggered() ? "blank" : "no trigger";
        }
        if (content instanceof Content.SampleBlank blank) {
            return blank.of() + ", no trigger";
        }
        return content instanceof Content.Spike spike ? spike.of() + " spiked" : content.role();
    }
}
