package tallywell.report;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.assess.JudgedDifference;
import tallywell.budget.DifferenceBudget;
import tallywell.budget.PlateBudget;
import tallywell.budget.RecoveryBudget;
import tallywell.budget.ResultBudget;
import tallywell.budget.Simulation;
import tallywell.workup.Result;

/** Writes the sheet Budget: what each result is uncertain from, and how sure the recoveries are. */
final class BudgetSheet {
    static final String NAME = "Budget";

    private static final int LINE_PT = 13;
    private static final double PERCENT = 100;
    private static final int DIGITS = 3;

    /** With more rows the legend begins a page of its own. */
    private static final int MOST_BEFORE_LEGEND = 30;

    /** Above this many degrees of freedom k is that of none missing to three decimals. */
    static final double UNLIMITED = 1e4;

    private static final Look CELL = Look.PLAIN.edge(Look.Edge.UNDER);
    private static final Look COMPUTED = CELL.face(Look.Face.COMPUTED);
    private static final Look REMARK = CELL.face(Look.Face.SOFT).wrapped().align(Look.Align.INDENT);
    private static final Look GROUP = Looks.HEAD.align(Look.Align.CENTRE);
    private static final Look HEAD = Looks.HEAD.wrapped();
    private static final Look HEAD_RIGHT = HEAD.align(Look.Align.RIGHT);
    private static final Look HEAD_INDENTED = HEAD.align(Look.Align.INDENT);
    private static final Look UNIT = CELL.align(Look.Align.INDENT);
    private static final int REMARK_WIDTH = 30;

    private final Draft draft;
    private final PlateBudget budget;
    private final BudgetColumns columns;
    private final Sheet sheet;
    private int row;

    private BudgetSheet(Draft draft, Sheet sheet) {
        this.draft = draft;
        this.budget = draft.report().assessment().budget();
        this.columns = new BudgetColumns(draft.report());
        this.sheet = sheet;
    }

    static void write(Draft draft, Sheet sheet) throws IOException {
        new BudgetSheet(draft, sheet).write();
    }

    private void write() throws IOException {
        sheet.row(row++, 26);
        sheet.text(0, "Budget", Looks.TITLE);
        sheet.row(row++);
        sheet.text(
                0,
                "What each result is uncertain from. Values and U are formulas; u, k and the parts are computed and do"
                        + " not follow changes on other sheets.",
                Looks.NOTE);
        heads();
        int top = row;
        for (int i = 0; i < budget.results().size(); i++) {
            result(i);
        }
        differences();
        recoveries();
        if (row > MOST_BEFORE_LEGEND) {
            sheet.poi().setRowBreak(row);
        }
        for (BudgetLegend.Line line : BudgetLegend.of(draft.report(), columns)) {
            legend(line);
        }
        columns.widths(REMARK_WIDTH).forEach(sheet::width);
        sheet.freeze(top, 1);
        sheet.print(true, false, top, draft.report().run());
    }

    private void heads() throws IOException {
        sheet.row(row++);
        if (!columns.labels().isEmpty()) {
            sheet.banner(columns.firstPart(), columns.lastPart(), "parts of u² in %", GROUP);
        }
        columns.draws()
                .ifPresent(draws -> sheet.banner(
                        columns.firstDraw(), columns.lastDraw(), "by " + draws.trials() + " draws", GROUP));
        sheet.row(row++, LINE_PT * 3);
        heads(columns.titles());
    }

    /** A header row, with the heads of numbers over the numbers, and texts beside them at a distance. */
    private void heads(List<String> titles) {
        for (int column = 0; column < titles.size(); column++) {
            boolean besideNumber = column == columns.value() + 1 || column == columns.remark();
            Look look = column < columns.value() ? HEAD : besideNumber ? HEAD_INDENTED : HEAD_RIGHT;
            sheet.text(column, titles.get(column), look);
        }
    }

    private void result(int index) throws IOException {
        Result result = draft.analysis().results().get(index);
        Optional<ResultBudget> found = budget.results().get(index);
        String remark = BudgetWords.of(budget, result, found);
        sheet.row(row, LINE_PT * ChecksSheet.lines(remark, REMARK_WIDTH));
        name(result.name(), result.role(), result.analyte());
        String value = ResultPlaces.cell(draft.results().row(result), ResultColumns.VALUE);
        value(value, result.value(), result.unit().symbol());
        if (found.isPresent()) {
            ResultBudget each = found.get();
            uncertainty(each.byBudget(), each.degreesOfFreedom(), each.factorByBudget(), result.value());
            if (columns.validated()) {
                sheet.number(columns.validation(), each.byValidation(), number(each.byValidation(), COMPUTED));
            }
            parts(each);
        } else {
            blanks(columns.u(), columns.lastPart());
        }
        columns.draws().ifPresent(draws -> draws(draws.outputs().get(index), draws.difference(budget, index)));
        sheet.text(columns.remark(), remark, REMARK);
        row++;
    }

    private void name(String name, String role, String analyte) {
        sheet.text(0, name, CELL);
        sheet.text(1, role, CELL);
        if (columns.several()) {
            sheet.text(2, analyte, CELL);
        }
    }

    private void value(String cell, OptionalDouble value, String unit) {
        int at = columns.value();
        sheet.formula(at, "IF(" + cell + "=\"\",\"\"," + cell + ")", value, number(value, CELL));
        sheet.text(at + 1, unit, UNIT);
    }

    private void uncertainty(double u, double freedom, double factor, OptionalDouble value) {
        expanded(u, freedom, factor);
        double size = Math.abs(value.orElse(0));
        String of = At.cell(row, columns.value());
        sheet.formula(
                columns.u() + 4,
                "IF(OR(" + of + "=\"\"," + of + "=0),\"\",100*" + At.cell(row, columns.u() + 3) + "/ABS(" + of + "))",
                size > 0 ? OptionalDouble.of(PERCENT * u * factor / size) : OptionalDouble.empty(),
                CELL.format("0.0"));
    }

    private void expanded(double u, double freedom, double factor) {
        int at = columns.u();
        sheet.number(at, u, COMPUTED.format(Looks.digits(u, DIGITS)));
        if (freedom > UNLIMITED) {
            sheet.text(at + 1, BudgetLegend.UNLIMITED, COMPUTED.align(Look.Align.RIGHT));
        } else {
            sheet.number(at + 1, freedom, COMPUTED.format(Looks.digits(freedom, 2)));
        }
        sheet.number(at + 2, factor, COMPUTED.format("0.00"));
        String expanded = At.cell(row, at) + "*" + At.cell(row, at + 2);
        sheet.formula(at + 3, expanded, u * factor, CELL.format(Looks.digits(u * factor, DIGITS)));
    }

    private void parts(ResultBudget each) {
        Map<String, Double> shares = each.shares();
        double largest =
                shares.values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
        int at = columns.firstPart();
        for (String label : columns.labels()) {
            Double share = shares.get(label);
            if (share == null) {
                sheet.blank(at++, CELL);
            } else {
                Look look = share == largest ? CELL.face(Look.Face.BOLD) : CELL;
                sheet.number(at++, PERCENT * share, look.format("0.0"));
            }
        }
    }

    private void draws(Optional<Simulation.Output> drawn, OptionalDouble difference) {
        if (drawn.isEmpty()) {
            blanks(columns.firstDraw(), columns.lastDraw());
            return;
        }
        Simulation.Output output = drawn.get();
        int at = columns.firstDraw();
        for (double each : new double[] {output.standardUncertainty(), output.low(), output.high()}) {
            sheet.number(at++, each, COMPUTED.format(Looks.digits(each, DIGITS)));
        }
        OptionalDouble percent =
                difference.isPresent() ? OptionalDouble.of(PERCENT * difference.getAsDouble()) : difference;
        sheet.number(at++, percent, COMPUTED.format("+0.0;-0.0;0.0"));
        if (columns.lost()) {
            sheet.number(at, output.lost(), COMPUTED.format("0"));
        }
    }

    private void blanks(int first, int last) {
        for (int column = first; column <= last; column++) {
            sheet.blank(column, CELL);
        }
    }

    private static Look number(OptionalDouble value, Look look) {
        return value.isPresent() ? look.format(Looks.digits(value.getAsDouble(), DIGITS + 1)) : look;
    }

    private void differences() throws IOException {
        List<JudgedDifference> all = draft.report().assessment().differences();
        for (int i = 0; i < all.size(); i++) {
            JudgedDifference each = all.get(i);
            Result result = each.row();
            Optional<DifferenceBudget> found = each.budget();
            String remark = BudgetWords.of(found);
            sheet.row(row, LINE_PT * ChecksSheet.lines(remark, REMARK_WIDTH));
            name(result.name(), result.role(), result.analyte());
            String cell = ResultPlaces.cell(draft.results().rowOfDifference(i), ResultColumns.VALUE);
            value(cell, result.value(), result.unit().symbol());
            if (found.isPresent()) {
                DifferenceBudget u = found.get();
                uncertainty(u.standardUncertainty(), u.degreesOfFreedom(), u.coverageFactor(), result.value());
            } else {
                blanks(columns.u(), columns.u() + 4);
            }
            blanks(columns.u() + 5, columns.remark() - 1);
            sheet.text(columns.remark(), remark, REMARK);
            row++;
        }
    }

    private void recoveries() throws IOException {
        List<Result> results = draft.analysis().results();
        if (results.stream().allMatch(each -> each.recoveryPercent().isEmpty())) {
            return;
        }
        section("Recoveries");
        sheet.row(row++, LINE_PT * 2);
        heads(columns.recoveryTitles());
        List<Optional<RecoveryBudget>> known = budget.recoveries();
        for (int i = 0; i < results.size(); i++) {
            if (results.get(i).recoveryPercent().isPresent()) {
                recovery(results.get(i), known.get(i));
            }
        }
    }

    private void recovery(Result result, Optional<RecoveryBudget> known) throws IOException {
        sheet.row(row);
        name(result.name(), result.role(), result.analyte());
        String cell = ResultPlaces.cell(draft.results().row(result), ResultColumns.RECOVERY_PERCENT);
        sheet.formula(
                columns.value(),
                "IF(" + cell + "=\"\",\"\"," + cell + ")",
                result.recoveryPercent(),
                CELL.format("0.0"));
        sheet.text(columns.value() + 1, "%", UNIT);
        if (known.isPresent()) {
            RecoveryBudget each = known.get();
            expanded(each.standardUncertainty(), each.degreesOfFreedom(), each.coverageFactor());
            String found = At.cell(row, columns.value());
            boolean within = Math.abs(result.recoveryPercent().getAsDouble() - PERCENT) <= each.expandedUncertainty();
            sheet.formula(
                    columns.u() + 4,
                    "IF(" + found + "=\"\",\"\",IF(ABS(" + found + "-100)<=" + At.cell(row, columns.u() + 3)
                            + ",\"yes\",\"no\"))",
                    within ? "yes" : "no",
                    CELL.align(Look.Align.RIGHT));
            sheet.text(columns.u() + 5, each.basis().word(), CELL);
        } else {
            blanks(columns.u(), columns.u() + 5);
        }
        row++;
    }

    private void section(String title) throws IOException {
        row++;
        sheet.row(row++, 20);
        sheet.text(0, title, Looks.SECTION);
    }

    private void legend(BudgetLegend.Line line) throws IOException {
        if (line.text().isEmpty()) {
            section(line.word());
            return;
        }
        sheet.row(row++, LINE_PT * ChecksSheet.lines(line.text(), columns.charactersOfText()));
        sheet.text(0, line.word(), Looks.LABEL.align(Look.Align.TOP));
        sheet.banner(1, columns.remark(), line.text(), Looks.NOTE_WRAPPED.align(Look.Align.TOP));
    }
}
