package tallywell.exchange;

import java.io.Closeable;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tallywell.assess.Judgement;
import tallywell.budget.Contribution;
import tallywell.budget.Estimate;
import tallywell.budget.ResultBudget;
import tallywell.report.CsvRows;
import tallywell.report.Report;
import tallywell.workup.Result;

/** Writes {@code budget.csv}: one row for each source that makes a result uncertain. */
final class BudgetTable implements Closeable {
    static final List<Column> COLUMNS = List.of(
            Column.text("run", "Path of the run file as typed").required(),
            Column.text("role", "What the result is of").required().oneOf("sample", "control", "spike"),
            Column.whole("slot", "Slot of the layout; empty for controls and spikes"),
            Column.text("sample", "Name of the sample or control").required(),
            Column.text("analyte", "What is measured").required(),
            Column.text("unit", "Unit of the value; its UCUM code stands in the table units")
                    .required(),
            Column.text("source", "What makes the result uncertain").required(),
            Column.text(
                    "name",
                    "What tells the source from others of the same kind; results that name one source share its error"),
            Column.text("estimate", "Where its size was taken from").required().oneOf(words()),
            Column.number("sensitivity", "Change of the value for each unit of the source")
                    .required(),
            Column.number("u_source", "Standard uncertainty of the source, in its own unit")
                    .required(),
            Column.number(
                            "effect",
                            "sensitivity times u_source: standard uncertainty of the value from this source alone")
                    .required()
                    .perRow(),
            Column.number("share", "Part of the variance of the value, from 0 to 1")
                    .required()
                    .in(Ucum.ONE));

    private final CsvRows rows;

    BudgetTable(Appendable out) throws IOException {
        rows = new CsvRows(out, Column.names(COLUMNS));
    }

    private static String[] words() {
        return Arrays.stream(Estimate.values()).map(BudgetTable::word).toArray(String[]::new);
    }

    private static String word(Estimate estimate) {
        return estimate.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    void add(Report report) throws IOException {
        for (Judgement judgement : report.assessment().judgements()) {
            Optional<ResultBudget> budget = judgement.budget();
            if (budget.isPresent()) {
                double total = budget.get().byBudget();
                for (Contribution each : budget.get().contributions()) {
                    row(report.run(), judgement.result(), each, total);
                }
            }
        }
    }

    private void row(String run, Result result, Contribution each, double total) throws IOException {
        rows.text(run);
        rows.text(result.role());
        if (result.slot().isPresent()) {
            rows.number(result.slot().getAsInt());
        } else {
            rows.empty();
        }
        rows.text(result.name());
        rows.text(result.analyte());
        rows.text(result.unit().symbol());
        rows.text(each.source().label());
        rows.text(each.source().name());
        rows.text(word(each.source().estimate()));
        rows.number(each.sensitivity());
        rows.number(each.standardUncertainty());
        rows.number(each.effect());
        double part = each.effect() / total;
        rows.number(part * part);
        rows.end();
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
