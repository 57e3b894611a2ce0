package tallywell.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFConditionalFormattingRule;
import org.apache.poi.xssf.usermodel.XSSFSheetConditionalFormatting;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.plate.PlateFormat;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Writes the sheet Plate: the plate drawn as a grid, once by what stands where and for each step by net ΔA and value. */
final class PlateSheet {
    private static final List<Look.Fill> SCALE = List.of(
            Look.Fill.VALUE_1,
            Look.Fill.VALUE_2,
            Look.Fill.VALUE_3,
            Look.Fill.VALUE_4,
            Look.Fill.VALUE_5,
            Look.Fill.VALUE_6);

    /** From this step of the scale on, letters must be white to be read. */
    private static final int DARK_FROM = 4;

    private static final int LONGEST_NAME = 26;

    private final Draft draft;
    private final Sheet sheet;
    private final Layout layout;
    private final PlateFormat format;
    private final boolean roomy;
    private int row;

    private PlateSheet(Draft draft, Sheet sheet) {
        this.draft = draft;
        this.sheet = sheet;
        this.layout = draft.analysis().assay().layout();
        this.format = layout.format();
        this.roomy = format.columns() <= 12;
    }

    static void write(Draft draft, Sheet sheet) throws IOException {
        new PlateSheet(draft, sheet).write();
    }

    private void write() throws IOException {
        sheet.row(row++, 26);
        sheet.text(0, "Plate", Looks.TITLE);
        sheet.row(row++);
        sheet.text(0, layout.name() + ", " + format.wells() + " wells", Looks.NOTE);
        row++;
        contents();
        boolean one = draft.analysis().steps().size() == 1;
        for (StepAnalysis step : draft.analysis().steps()) {
            page();
            String of = one ? "" : " of " + step.step().analyte().name();
            values("Net ΔA" + of, step, WellColumns.NET_DELTA_A);
            values("Value in the original sample" + of + units(step), step, WellColumns.VALUE);
        }
        sheet.width(0, 5);
        for (int column = 1; column <= format.columns(); column++) {
            sheet.width(column, roomy ? 12 : format.columns() <= 24 ? 8 : 7);
        }
        sheet.print(true, false, 0, draft.report().run());
        // Breaks between the pictures need a scale of our own: fitting to a width leaves no say in them.
        sheet.scaleTo(5 + format.columns() * (roomy ? 12 : format.columns() <= 24 ? 8 : 7));
    }

    /** Makes a coloured cell, so that the classes for colours that follow values are there. */
    static void prepare(Sheet sheet) {
        XSSFSheetConditionalFormatting formatting = sheet.poi().getSheetConditionalFormatting();
        formatting.addConditionalFormatting(
                new CellRangeAddress[] {new CellRangeAddress(0, 0, 0, 0)},
                rule(formatting, 0, At.fixed(1, 1), DARK_FROM));
    }

    private static String units(StepAnalysis step) {
        List<String> units = step.wells().stream()
                .filter(well -> WellColumns.hasValue(well.content()))
                .map(well -> well.unit().symbol())
                .distinct()
                .toList();
        return units.isEmpty() ? "" : " (" + String.join(", ", units) + ")";
    }

    private void page() {
        sheet.breakAfter(row - 1);
    }

    private void title(String title) throws IOException {
        sheet.row(row++, 20);
        sheet.text(0, title, Looks.SECTION);
    }

    private void columnNumbers() throws IOException {
        sheet.row(row++);
        for (int column = 0; column < format.columns(); column++) {
            sheet.number(column + 1, column + 1, Looks.LABEL.align(Look.Align.CENTRE));
        }
    }

    private void contents() throws IOException {
        title("What stands where");
        columnNumbers();
        for (int each = 0; each < format.rows(); each++) {
            sheet.row(row++, roomy ? 36 : 16);
            sheet.text(0, Well.rowName(each), Looks.LABEL.align(Look.Align.CENTRE));
            for (int column = 0; column < format.columns(); column++) {
                Well well = new Well(each, column);
                sheet.text(column + 1, text(well), look(well));
            }
        }
        legend();
        row++;
    }

    private boolean isExcluded(Well well) {
        return draft.analysis().assay().exclusions().containsKey(well);
    }

    private String text(Well well) {
        Content content = layout.at(well);
        if (!roomy) {
            return content instanceof Content.Unused ? "·" : content.word();
        }
        return (isExcluded(well) ? "× " : "") + words(content);
    }

    private String words(Content content) {
        if (content instanceof Content.Sample sample) {
            return sample.slot() + "\n"
                    + shortened(draft.analysis()
                            .assay()
                            .samples()
                            .in(sample.slot())
                            .map(tallywell.method.Sample::name)
                            .orElse("not used"));
        }
        if (content instanceof Content.Blank blank) {
            return blank.triggered() ? "blank" : "blank, no trigger";
        }
        if (content instanceof Content.Standard standard) {
            return "standard\n"
                    + String.join(
                            " / ",
                            standard.level().quantities().stream()
                                    .map(quantity -> Numbers.plain(quantity.value()))
                                    .sorted()
                                    .distinct()
                                    .toList())
                    + standard.level().quantities().stream()
                            .findFirst()
                            .map(quantity -> " " + quantity.unit())
                            .orElse("");
        }
        if (content instanceof Content.Control control) {
            return "control\n" + shortened(control.name());
        }
        if (content instanceof Content.SampleBlank blank) {
            return "sample blank\nof " + blank.of();
        }
        return content instanceof Content.Spike spike ? "+ spike\nof " + spike.of() : "·";
    }

    private static String shortened(String name) {
        String line = name.replaceAll("\\s+", " ");
        int end = line.offsetByCodePoints(0, Math.min(LONGEST_NAME, line.codePointCount(0, line.length())));
        return end < line.length() ? line.substring(0, end) + "…" : line;
    }

    private Look look(Well well) {
        Look look = role(layout.at(well)).align(Look.Align.CENTRE).wrapped();
        return look.face(isExcluded(well) ? Look.Face.STRUCK : Look.Face.SMALL);
    }

    /** Roles differ by border as well as by colour. */
    private static Look role(Content content) {
        if (content instanceof Content.Sample) {
            return Look.PLAIN.fill(Look.Fill.SAMPLE).edge(Look.Edge.BOX);
        }
        if (content instanceof Content.Standard) {
            return Look.PLAIN.fill(Look.Fill.STANDARD).edge(Look.Edge.DOUBLE);
        }
        if (content instanceof Content.Control) {
            return Look.PLAIN.fill(Look.Fill.CONTROL).edge(Look.Edge.HEAVY);
        }
        if (content instanceof Content.Blank) {
            return Look.PLAIN.edge(Look.Edge.BOX);
        }
        if (content instanceof Content.SampleBlank) {
            return Look.PLAIN.edge(Look.Edge.DASHED);
        }
        return content instanceof Content.Spike
                ? Look.PLAIN.fill(Look.Fill.SPIKE).edge(Look.Edge.DOTTED)
                : Look.PLAIN;
    }

    private void legend() throws IOException {
        Map<String, Content> roles = new LinkedHashMap<>();
        for (Well well : format.all()) {
            if (!(layout.at(well) instanceof Content.Unused)) {
                roles.putIfAbsent(layout.at(well).role().replace('-', ' '), layout.at(well));
            }
        }
        sheet.row(row++, 6);
        sheet.row(row++, roomy ? 16 : 14);
        int column = 1;
        int span = roomy ? 1 : 3;
        for (Map.Entry<String, Content> each : roles.entrySet()) {
            Look look = role(each.getValue()).face(Look.Face.SMALL).align(Look.Align.CENTRE);
            if (column + span - 1 <= format.columns()) {
                sheet.banner(column, column + span - 1, each.getKey(), look);
                column += span;
            }
        }
        if (!draft.analysis().assay().exclusions().isEmpty() && column <= format.columns()) {
            sheet.text(column, "× excluded", Look.PLAIN.face(Look.Face.STRUCK).align(Look.Align.CENTRE));
        }
    }

    private void values(String title, StepAnalysis step, WellColumns what) throws IOException {
        Map<Well, WellResult> byWell = new HashMap<>();
        step.wells().forEach(well -> byWell.put(well.well(), well));
        title(title);
        columnNumbers();
        int first = row;
        DoubleSummaryStatistics shown = new DoubleSummaryStatistics();
        for (int each = 0; each < format.rows(); each++) {
            sheet.row(row++, roomy ? 22 : 16);
            sheet.text(0, Well.rowName(each), Looks.LABEL.align(Look.Align.CENTRE));
            for (int column = 0; column < format.columns(); column++) {
                Well well = new Well(each, column);
                value(column + 1, well, Optional.ofNullable(byWell.get(well)), step, what)
                        .ifPresent(shown);
            }
        }
        scale(first, shown);
        row++;
    }

    private OptionalDouble value(
            int column, Well well, Optional<WellResult> result, StepAnalysis step, WellColumns what) {
        Look look = new Look(
                isExcluded(well) ? Look.Face.STRUCK : Look.Face.SMALL,
                Look.Fill.NONE,
                "",
                Look.Align.CENTRE,
                role(layout.at(well)).edge(),
                false,
                false);
        if (result.isEmpty()) {
            sheet.text(column, "·", look);
            return OptionalDouble.empty();
        }
        boolean net = what == WellColumns.NET_DELTA_A;
        OptionalDouble value = net ? result.get().netDeltaA() : WellColumns.value(result.get());
        if (net && value.isEmpty() || !net && !WellColumns.hasValue(result.get().content())) {
            sheet.blank(column, look);
            return OptionalDouble.empty();
        }
        String cell = draft.wells().cell(step.number(), well, what);
        String shown = net ? "0.000" : value.isPresent() ? Looks.digits(value.getAsDouble(), 3) : "";
        sheet.formula(column, "IF(" + cell + "=\"\",\"\"," + cell + ")", value, look.format(shown));
        return value;
    }

    /** The legend of the colours, whose bounds the colours follow. */
    private void scale(int first, DoubleSummaryStatistics shown) throws IOException {
        int last = row - 1;
        String grid = At.fixed(first, 1) + ":" + At.fixed(last, format.columns());
        double least = shown.getCount() == 0 ? 0 : shown.getMin();
        double most = shown.getCount() == 0 ? 0 : shown.getMax();
        sheet.row(row++, 6);
        sheet.row(row, 16);
        int boundsRow = row++;
        int span = roomy ? 1 : 2;
        if (1 + span * SCALE.size() > format.columns() + 1) {
            span = 1;
        }
        sheet.text(0, "from", Looks.LABEL);
        List<XSSFConditionalFormattingRule> rules = new ArrayList<>();
        XSSFSheetConditionalFormatting formatting = sheet.poi().getSheetConditionalFormatting();
        for (int i = 0; i < SCALE.size(); i++) {
            int column = 1 + i * span;
            Look look =
                    new Look(Look.Face.SMALL, SCALE.get(i), "0.00#", Look.Align.CENTRE, Look.Edge.NONE, false, false);
            look = i >= DARK_FROM ? look.face(Look.Face.INVERSE) : look;
            sheet.formula(
                    column,
                    "IF(COUNT(" + grid + ")=0,0,MIN(" + grid + ")+" + i + "/" + SCALE.size() + "*(MAX(" + grid
                            + ")-MIN(" + grid + ")))",
                    least + i / (double) SCALE.size() * (most - least),
                    look);
            rules.add(0, rule(formatting, first, At.fixed(boundsRow, column), i));
        }
        CellRangeAddress[] cells = {new CellRangeAddress(first, last, 1, format.columns())};
        // The darkest first: the first rule that holds decides.
        for (int i = 0; i < rules.size(); i += 3) {
            formatting.addConditionalFormatting(
                    cells, rules.subList(i, i + 3).toArray(new XSSFConditionalFormattingRule[0]));
        }
    }

    private static XSSFConditionalFormattingRule rule(
            XSSFSheetConditionalFormatting formatting, int first, String bound, int step) {
        String cell = At.cell(first, 1);
        XSSFConditionalFormattingRule rule =
                formatting.createConditionalFormattingRule("AND(ISNUMBER(" + cell + ")," + cell + ">=" + bound + ")");
        var fill = rule.createPatternFormatting();
        fill.setFillBackgroundColor(Styles.colour(SCALE.get(step).colour));
        fill.setFillPattern(org.apache.poi.ss.usermodel.PatternFormatting.SOLID_FOREGROUND);
        if (step >= DARK_FROM) {
            rule.createFontFormatting().setFontColorIndex(IndexedColors.WHITE.getIndex());
        }
        return rule;
    }
}
