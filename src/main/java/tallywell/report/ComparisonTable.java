package tallywell.report;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.across.ComparedResult;
import tallywell.across.Comparison;
import tallywell.across.Found;
import tallywell.budget.Basis;

/** Writes a comparison of two runs as a table: one row for each sample or control and analyte. */
public final class ComparisonTable implements Closeable {
    static final List<String> TITLES = List.of(
            "role",
            "sample",
            "id",
            "analyte",
            "unit",
            "first_run",
            "first",
            "first_u",
            "first_U",
            "first_verdict",
            "second_run",
            "second",
            "second_u",
            "second_U",
            "second_verdict",
            "difference",
            "difference_u",
            "difference_k",
            "difference_U",
            "degrees_of_freedom",
            "zeta",
            "score",
            "judgement",
            "shared",
            "remark",
            "first_U_basis",
            "second_U_basis");

    private final CsvRows rows;

    /**
     * Starts the table with its header row.
     *
     * @param out where to; closed with the table if it can be
     */
    public ComparisonTable(Appendable out) throws IOException {
        rows = new CsvRows(out, TITLES);
    }

    /** Writes the rows of a comparison. */
    public void add(Comparison comparison) throws IOException {
        for (ComparedResult row : comparison.rows()) {
            names(row.first(), row.id());
            found(row.first());
            found(row.second());
            judged(row);
            basis(Optional.of(row.first()));
            basis(Optional.of(row.second()));
            rows.end();
        }
        for (Found each : comparison.onlyOne()) {
            names(each, each.id());
            boolean inFirst = each.run().equals(comparison.first());
            if (inFirst) {
                found(each);
                missing(comparison.second());
            } else {
                missing(comparison.first());
                found(each);
            }
            for (int i = 0; i < 7; i++) {
                rows.empty();
            }
            rows.text(ComparedResult.Agreement.NOT_JUDGED.words());
            rows.empty();
            rows.text("only in " + each.run());
            basis(Optional.of(each).filter(found -> inFirst));
            basis(Optional.of(each).filter(found -> !inFirst));
            rows.end();
        }
    }

    private void names(Found first, String id) throws IOException {
        rows.text(first.result().role());
        rows.text(first.result().name());
        rows.text(id);
        rows.text(first.result().analyte());
        rows.text(first.unit().symbol());
    }

    private void found(Found each) throws IOException {
        rows.text(each.run());
        rows.number(each.value());
        rows.number(each.standardUncertainty());
        rows.number(each.expandedUncertainty());
        rows.text(each.verdict().word());
    }

    private void basis(Optional<Found> found) throws IOException {
        rows.text(found.flatMap(Found::basis).map(Basis::word).orElse(""));
    }

    private void missing(String run) throws IOException {
        rows.text(run);
        for (int i = 0; i < 4; i++) {
            rows.empty();
        }
    }

    private void judged(ComparedResult row) throws IOException {
        rows.number(row.difference());
        if (row.doubt().isPresent()) {
            ComparedResult.Doubt doubt = row.doubt().get();
            rows.number(doubt.u());
            rows.number(doubt.k());
            rows.number(doubt.expanded());
            rows.number(finite(doubt.degreesOfFreedom()));
        } else {
            for (int i = 0; i < 4; i++) {
                rows.empty();
            }
        }
        rows.number(row.zeta());
        rows.number(row.score());
        rows.text(row.agreement().words());
        rows.text(String.join("; ", row.shared()));
        rows.text(row.why());
    }

    /** Infinitely many degrees of freedom are an empty cell. */
    static OptionalDouble finite(double freedom) {
        return freedom <= Double.MAX_VALUE ? OptionalDouble.of(freedom) : OptionalDouble.empty();
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
