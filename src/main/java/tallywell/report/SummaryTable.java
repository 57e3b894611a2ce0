package tallywell.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.assess.BasisWords;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.quantity.Numbers;
import tallywell.statement.Bounds;
import tallywell.statement.Rounding;
import tallywell.statement.Words;
import tallywell.workup.Result;

/**
 * The tables of results on the first page.
 *
 * <p>Values are rounded to the place of the second significant digit of their expanded uncertainty, which is shown with
 * two (JCGM 100:2008, 7.2.6), or to three significant digits where there is none.
 */
final class SummaryTable {
    private static final double LINE_PT = 12.5;
    private static final double LONGER_HEAD = 7;
    private static final int LONGEST_NAME = 75;
    private static final Well FIRST = new Well(0, 0);
    private static final Look CELL = Look.PLAIN.edge(Look.Edge.UNDER).align(Look.Align.TOP);
    private static final Look RIGHT = CELL.align(Look.Align.RIGHT);
    private static final Look INDENTED = CELL.align(Look.Align.INDENT);

    /** What a table shows. */
    private enum Column {
        NAME("Sample", 26),
        ANALYTE("Analyte", 14),
        VALUE("Value", 10),
        EXPANDED("± U", 9),
        UNIT("Unit", 9),
        DILUTION("Dilution", 9),
        N("n", 4),
        CV("CV %", 6.5),
        VERDICT("Verdict", 9),
        SEEN("What was seen", 28),
        NEXT("What to do next", 21);

        private final String title;
        private final double width;

        Column(String title, double width) {
            this.title = title;
            this.width = width;
        }

        boolean isNumber() {
            return this == VALUE || this == EXPANDED || this == DILUTION || this == N || this == CV;
        }
    }

    /** One row, whatever it is a result of. */
    private record Line(
            Result result,
            OptionalDouble expanded,
            Verdict verdict,
            String next,
            int resultsRow,
            String otherwise,
            boolean isBound,
            String basis) {}

    private final Draft draft;
    private final Sheet sheet;
    private final BasisWords basis;
    private final List<Column> columns = new ArrayList<>(List.of(Column.values()));

    SummaryTable(Draft draft, Sheet sheet) {
        this.draft = draft;
        this.sheet = sheet;
        this.basis = new BasisWords(draft.report().assessment());
        if (draft.analysis().steps().size() == 1
                && draft.analysis().differences().isEmpty()) {
            columns.remove(Column.ANALYTE);
        }
        if (!hasUncertainty()) {
            columns.remove(Column.EXPANDED);
        }
        for (int i = 0; i < columns.size(); i++) {
            boolean longHead = columns.get(i) == Column.EXPANDED && basis.scatterOnly();
            sheet.width(i, columns.get(i).width + (longHead ? LONGER_HEAD : 0));
        }
    }

    /** Whether any result has an uncertainty. */
    boolean hasUncertainty() {
        return draft.report().assessment().judgements().stream()
                .anyMatch(each -> each.budget().isPresent());
    }

    /** The last column. */
    int last() {
        return columns.size() - 1;
    }

    /** How many characters there are across. */
    int width() {
        return (int) columns.stream().mapToDouble(column -> column.width).sum();
    }

    /** The rows of a role, below a header row; nothing where there are none. */
    int role(String role, int firstRow) throws IOException {
        List<Line> lines = new ArrayList<>();
        for (Judgement judgement : draft.report().assessment().judgements()) {
            if (judgement.result().role().equals(role)) {
                lines.add(line(judgement));
            }
        }
        return write(
                lines,
                firstRow,
                role.equals("sample") ? Column.NAME.title : role.equals("control") ? "Control" : "Spiked sample",
                role.equals("sample") ? Column.NEXT.title : "Recovery");
    }

    /** The results by difference. */
    int differences(int firstRow) throws IOException {
        List<Line> lines = new ArrayList<>();
        List<JudgedDifference> all = draft.report().assessment().differences();
        for (int i = 0; i < all.size(); i++) {
            JudgedDifference judged = all.get(i);
            boolean isBound = judged.atMost().isPresent();
            OptionalDouble expanded = judged.budget().isPresent() && !isBound
                    ? OptionalDouble.of(judged.budget().get().expandedUncertainty())
                    : OptionalDouble.empty();
            lines.add(new Line(
                    judged.row(),
                    expanded,
                    judged.verdict(),
                    Words.advice(judged),
                    draft.results().rowOfDifference(i),
                    Bounds.words(judged),
                    isBound,
                    basis.row(BasisWords.of(judged))));
        }
        return write(lines, firstRow, "By difference", Column.NEXT.title);
    }

    private Line line(Judgement judgement) {
        OptionalDouble expanded = judgement.budget().isPresent()
                ? OptionalDouble.of(judgement.budget().get().expandedUncertainty())
                : OptionalDouble.empty();
        return new Line(
                judgement.result(),
                expanded,
                judgement.verdict(),
                Words.advice(judgement.advice()),
                draft.results().row(judgement.result()),
                Bounds.words(draft.analysis(), judgement.result()),
                false,
                basis.row(BasisWords.of(judgement)));
    }

    private int write(List<Line> lines, int firstRow, String first, String last) throws IOException {
        if (lines.isEmpty()) {
            return firstRow;
        }
        // A row of distance from the table before.
        int row = first.equals(Column.NAME.title) ? firstRow : firstRow + 1;
        sheet.row(row++, 16);
        for (int i = 0; i < columns.size(); i++) {
            Column column = columns.get(i);
            String title = column == Column.NAME
                    ? first
                    : column == Column.NEXT ? last : column == Column.EXPANDED ? basis.head() : column.title;
            Look.Align align =
                    column.isNumber() ? Look.Align.RIGHT : isIndented(column) ? Look.Align.INDENT : Look.Align.LEFT;
            sheet.text(i, title, Looks.HEAD.align(align));
        }
        for (Line line : lines) {
            String seen = seen(line);
            int high = ChecksSheet.lines(name(line), (int) Column.NAME.width, seen, (int) Column.SEEN.width);
            sheet.row(row++, 2 + LINE_PT * high);
            for (int i = 0; i < columns.size(); i++) {
                cell(i, line, seen);
            }
        }
        return row;
    }

    /** The name, cut where it would fill the page; the sheet Results has it whole. */
    private static String name(Line line) {
        String name = line.result().name();
        int end = name.offsetByCodePoints(0, Math.min(LONGEST_NAME, name.codePointCount(0, name.length())));
        return end < name.length() ? name.substring(0, end) + "…" : name;
    }

    private String seen(Line line) {
        Result result = line.result();
        List<String> seen = new ArrayList<>();
        if (result.assigned().isPresent()) {
            seen.add("assigned " + Numbers.plain(result.assigned().getAsDouble()) + " " + result.unit());
        }
        if (draft.analysis()
                        .assay()
                        .layout()
                        .at(result.wells().isEmpty() ? FIRST : result.wells().get(0))
                instanceof Content.Spike spike) {
            spike.added()
                    .of(draft.analysis().stepOf(result).step().analyte().name())
                    .ifPresent(added -> seen.add("added " + added));
        }
        String flags = Words.brief(result.flags());
        if (!flags.isEmpty()) {
            seen.add(flags);
        }
        if (!line.basis().isEmpty()) {
            seen.add(line.basis());
        }
        return String.join("; ", seen);
    }

    /** Texts right of a number keep a distance from it. */
    private static boolean isIndented(Column column) {
        return column == Column.UNIT || column == Column.VERDICT;
    }

    private void cell(int at, Line line, String seen) {
        Result result = line.result();
        switch (columns.get(at)) {
            case NAME -> sheet.text(at, name(line), CELL.wrapped());
            case ANALYTE -> sheet.text(at, result.analyte(), CELL);
            case VALUE -> value(at, line);
            case EXPANDED -> expanded(at, line);
            case UNIT -> sheet.text(at, result.unit().symbol(), INDENTED);
            case DILUTION ->
                sheet.formula(
                        at,
                        ResultPlaces.cell(line.resultsRow(), ResultColumns.DILUTION),
                        result.dilution().factor(),
                        RIGHT.format("General"));
            case N ->
                sheet.formula(at, ResultPlaces.cell(line.resultsRow(), ResultColumns.N), result.n(), RIGHT.format("0"));
            case CV -> copied(at, ResultPlaces.cell(line.resultsRow(), ResultColumns.CV_PERCENT), result.cvPercent());
            case VERDICT ->
                sheet.text(
                        at,
                        line.verdict().word(),
                        ResultsSheet.verdict(line.verdict())
                                .align(Look.Align.INDENT)
                                .edge(Look.Edge.UNDER));
            case SEEN -> sheet.text(at, seen, CELL.wrapped());
            case NEXT -> next(at, line);
        }
    }

    private void copied(int at, String cell, OptionalDouble value) {
        sheet.formula(at, "IF(" + cell + "=\"\",\"\"," + cell + ")", value, RIGHT.format("0.0"));
    }

    private static int place(Line line) {
        return Rounding.place(line.result().value().orElse(0), line.expanded());
    }

    private void value(int at, Line line) {
        if (line.isBound()) {
            sheet.text(
                    at, line.otherwise(), Looks.COMPUTED.align(Look.Align.RIGHT).face(Look.Face.BOLD));
            return;
        }
        String cell = ResultPlaces.cell(line.resultsRow(), ResultColumns.VALUE);
        int place = place(line);
        String formula = "IF(" + cell + "=\"\",\"" + line.otherwise() + "\",ROUND(" + cell + "," + place + "))";
        Look look = RIGHT.face(Look.Face.BOLD);
        OptionalDouble value = line.result().value();
        if (value.isPresent()) {
            sheet.formula(at, formula, Rounding.round(value.getAsDouble(), place), look.format(Looks.decimals(place)));
        } else {
            sheet.formula(at, formula, line.otherwise(), look);
        }
    }

    private void expanded(int at, Line line) {
        if (line.expanded().isEmpty()) {
            sheet.blank(at, RIGHT);
            return;
        }
        String cell = ResultPlaces.cell(line.resultsRow(), ResultColumns.U_EXPANDED);
        int place = place(line);
        sheet.formula(
                at,
                "IF(" + cell + "=\"\",\"\",ROUND(" + cell + "," + place + "))",
                Rounding.round(line.expanded().getAsDouble(), place),
                RIGHT.format(Looks.decimals(place)));
    }

    private void next(int at, Line line) {
        Result result = line.result();
        if (result.role().equals("control") || result.role().equals("spike")) {
            recovery(at, line);
        } else {
            sheet.text(at, line.next(), CELL.wrapped());
        }
    }

    private void recovery(int at, Line line) {
        Result result = line.result();
        if (result.recoveryPercent().isEmpty()) {
            sheet.text(at, "not assessed", CELL);
            return;
        }
        String cell = ResultPlaces.cell(line.resultsRow(), ResultColumns.RECOVERY_PERCENT);
        sheet.formula(
                at,
                "IF(" + cell + "=\"\",\"\"," + cell + ")",
                result.recoveryPercent().getAsDouble(),
                CELL.align(Look.Align.LEFT).format("0.0\" %\""));
    }
}
