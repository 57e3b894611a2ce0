package tallywell.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import tallywell.assess.BasisWords;
import tallywell.assess.JudgedDifference;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.plate.Content;
import tallywell.quantity.Numbers;
import tallywell.report.Report;
import tallywell.statement.Stated;
import tallywell.statement.Words;
import tallywell.workup.Result;

/** The tables of results on the first page. */
final class ResultLines {
    private static final double SLOT = 20;
    private static final double NAME = 74;
    private static final double ANALYTE = 52;
    private static final double VALUE = 44;
    private static final double EXPANDED = 33;
    private static final double UNIT = 29;
    private static final double DILUTION = 40;
    private static final double WELLS = 13;
    private static final double CV = 26;
    private static final double VERDICT = 36;
    private static final double NEXT = 54;

    private final Report report;
    private final boolean hasAnalytes;
    private final BasisWords basis;

    ResultLines(Report report) {
        this.report = report;
        this.basis = new BasisWords(report.assessment());
        this.hasAnalytes = report.analysis().steps().size() > 1
                || !report.analysis().differences().isEmpty();
    }

    /** Columns of a table of results. */
    List<Column> columns(String name, String last) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.number("No.", SLOT));
        columns.add(Column.text(name, NAME + (hasAnalytes ? 0 : 23)));
        if (hasAnalytes) {
            columns.add(Column.text("Analyte", ANALYTE));
        }
        // Bounds of differences are longer than values.
        columns.add(Column.number("Value", VALUE + (hasAnalytes ? 4 : 0)));
        columns.add(Column.number("± U", EXPANDED));
        columns.add(Column.text("Unit", UNIT));
        columns.add(Column.number("Dilution", DILUTION));
        columns.add(Column.number("n", WELLS));
        columns.add(Column.number("CV %", CV));
        columns.add(Column.text("Verdict", VERDICT));
        double taken = columns.stream().mapToDouble(Column::width).sum();
        double next = hasAnalytes ? NEXT : NEXT + 18;
        columns.add(Column.text("What was seen", Flow.WIDTH - taken - next));
        columns.add(Column.text(last, next));
        return columns;
    }

    /** The results of a role: {@code sample}, {@code control} or {@code spike}. */
    List<List<Cell>> of(String role) {
        List<List<Cell>> rows = new ArrayList<>();
        for (Judgement each : report.assessment().judgements()) {
            if (each.result().role().equals(role)) {
                String last = role.equals("sample") ? Words.advice(each) : recovery(each.result());
                String scatter = basis.row(BasisWords.of(each));
                rows.add(row(each.result(), Stated.of(report.analysis(), each), each.verdict(), last, scatter));
            }
        }
        return rows;
    }

    /** The results by difference. */
    List<List<Cell>> differences() {
        List<List<Cell>> rows = new ArrayList<>();
        for (JudgedDifference each : report.assessment().differences()) {
            String scatter = basis.row(BasisWords.of(each));
            rows.add(row(each.row(), Stated.of(each), each.verdict(), Words.advice(each), scatter));
        }
        return rows;
    }

    private List<Cell> row(Result result, Stated stated, Verdict verdict, String last, String scatter) {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.of(slot(result)));
        cells.add(Cell.of(result.name()));
        if (hasAnalytes) {
            cells.add(Cell.of(result.analyte()));
        }
        cells.add(Cell.bold(stated.value()));
        cells.add(Cell.of(stated.expanded()));
        cells.add(Cell.of(result.unit().symbol()));
        cells.add(Cell.of(Numbers.plain(result.dilution().factor())));
        cells.add(Cell.of(Integer.toString(result.n())));
        cells.add(Cell.of(
                result.cvPercent().isPresent()
                        ? Numbers.fixed(result.cvPercent().getAsDouble(), 1)
                        : ""));
        cells.add(verdict(verdict));
        cells.add(Cell.of(seen(result, scatter)));
        cells.add(Cell.of(last));
        return cells;
    }

    private static String slot(Result result) {
        OptionalInt slot = result.slot();
        return slot.isPresent() ? Integer.toString(slot.getAsInt()) : result.word();
    }

    private static Cell verdict(Verdict verdict) {
        return switch (verdict) {
            case REPORT -> Cell.on(Ink.GOOD, Ink.SPRUCE, verdict.word());
            case CHECK -> Cell.on(Ink.ATTENTION, Ink.AMBER, verdict.word());
            case REPEAT -> Cell.on(Ink.BAD, Ink.BEET, verdict.word());
        };
    }

    private String seen(Result result, String scatter) {
        List<String> seen = new ArrayList<>();
        if (result.assigned().isPresent()) {
            seen.add("assigned " + Numbers.plain(result.assigned().getAsDouble()) + " " + result.unit());
        }
        result.wells().stream()
                .findFirst()
                .map(well -> report.analysis().assay().layout().at(well))
                .filter(content -> content instanceof Content.Spike)
                .flatMap(spike -> ((Content.Spike) spike).added().of(result.analyte()))
                .ifPresent(added -> seen.add("added " + added));
        String flags = Words.brief(result.flags());
        if (!flags.isEmpty()) {
            seen.add(flags);
        }
        if (!scatter.isEmpty()) {
            seen.add(scatter);
        }
        return String.join("; ", seen);
    }

    private static String recovery(Result result) {
        return result.recoveryPercent().isPresent()
                ? Numbers.fixed(result.recoveryPercent().getAsDouble(), 1) + " %"
                : "not assessed";
    }
}
