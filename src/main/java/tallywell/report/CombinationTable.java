package tallywell.report;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.across.Combination;
import tallywell.across.CombinedResult;
import tallywell.across.Consistency;
import tallywell.across.Found;
import tallywell.budget.Basis;

/**
 * Writes combined results as a table: one row {@code combined} for each sample or control and analyte, and below it a row
 * {@code single} for each run that has it.
 */
public final class CombinationTable implements Closeable {
    static final List<String> TITLES = List.of(
            "row",
            "role",
            "sample",
            "id",
            "analyte",
            "run",
            "value",
            "unit",
            "u",
            "U",
            "k",
            "n",
            "sd",
            "birge_ratio",
            "birge_limit",
            "rule",
            "weight",
            "verdict",
            "counts",
            "remark",
            "U_basis");

    private final CsvRows rows;

    /**
     * Starts the table with its header row.
     *
     * @param out where to; closed with the table if it can be
     */
    public CombinationTable(Appendable out) throws IOException {
        rows = new CsvRows(out, TITLES);
    }

    /** Writes the rows. */
    public void add(Combination combination) throws IOException {
        for (CombinedResult each : combination.results()) {
            combined(each, combination.rule().word());
            for (CombinedResult.Part part : each.parts()) {
                single(part, each.id());
            }
        }
    }

    private void combined(CombinedResult each, String rule) throws IOException {
        names("combined", each.role(), each.name(), each.id(), each.analyte());
        rows.empty();
        rows.number(each.value());
        rows.text(each.unit().symbol());
        rows.number(each.u());
        rows.number(each.expanded());
        rows.number(each.u().isPresent() ? OptionalDouble.of(each.k()) : OptionalDouble.empty());
        rows.number(each.n());
        rows.number(each.sd());
        rows.number(each.consistency().isPresent() ? birge(each.consistency().get()) : OptionalDouble.empty());
        rows.number(
                each.consistency().isPresent()
                        ? OptionalDouble.of(each.consistency().get().limit())
                        : OptionalDouble.empty());
        rows.text(rule);
        rows.empty();
        rows.empty();
        rows.empty();
        rows.text(each.remark());
        rows.text(each.basis().map(Basis::word).orElse(""));
        rows.end();
    }

    private static OptionalDouble birge(Consistency consistency) {
        return OptionalDouble.of(consistency.birge());
    }

    private void names(String row, String role, String name, String id, String analyte) throws IOException {
        rows.text(row);
        rows.text(role);
        rows.text(name);
        rows.text(id);
        rows.text(analyte);
    }

    private void single(CombinedResult.Part part, String id) throws IOException {
        Found found = part.found();
        names(
                "single",
                found.result().role(),
                found.result().name(),
                id,
                found.result().analyte());
        rows.text(found.run());
        rows.number(found.value());
        rows.text(found.unit().symbol());
        rows.number(found.standardUncertainty());
        rows.number(found.expandedUncertainty());
        rows.empty();
        rows.number(found.result().n());
        for (int i = 0; i < 4; i++) {
            rows.empty();
        }
        rows.number(part.weight());
        rows.text(found.verdict().word());
        rows.text(part.counts() ? "yes" : "no");
        rows.text(part.leftOut());
        rows.text(found.basis().map(Basis::word).orElse(""));
        rows.end();
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
