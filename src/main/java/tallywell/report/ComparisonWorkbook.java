package tallywell.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.across.ComparedResult;
import tallywell.across.Comparison;
import tallywell.across.Found;

/** Writes a comparison of two runs as a workbook: the table, and the files that both come from. */
public final class ComparisonWorkbook {
    private static final List<String> TITLES = List.of(
            "sample",
            "id",
            "analyte",
            "unit",
            "first",
            "u",
            "U",
            "verdict",
            "second",
            "u",
            "U",
            "verdict",
            "difference",
            "u",
            "U",
            "score",
            "judgement",
            "remark");
    private static final double[] WIDTHS = {26, 12, 15, 8, 9, 8, 8, 9, 9, 8, 8, 9, 11, 8, 8, 7, 12, 36};

    /**
     * Writes the workbook.
     *
     * @param made by what, when and from which files
     * @param out where to; left open
     */
    public void write(Comparison comparison, Provenance made, OutputStream out) throws IOException {
        try (Book book = new Book()) {
            AcrossSheet sheet = new AcrossSheet(book.add("Comparison"), TITLES, WIDTHS);
            sheet.head(
                    "Two runs side by side",
                    List.of(
                            "First: " + comparison.first(),
                            "Second: " + comparison.second(),
                            comparison.sentence(),
                            ComparisonText.shared(comparison.shared()) + ComparisonText.basis(comparison),
                            "difference: second less first. score: difference over its expanded uncertainty (95 %), in"
                                    + " which what both plates share is taken out; they agree from -1 to 1."));
            for (ComparedResult row : comparison.rows()) {
                row(row, sheet);
            }
            for (Found each : comparison.onlyOne()) {
                sheet.row();
                sheet.text(ComparisonText.name(each));
                sheet.text(each.id());
                sheet.text(each.result().analyte());
                sheet.text(each.unit().symbol());
                sheet.skip(each.run().equals(comparison.first()) ? 0 : 4);
                found(each, sheet);
                sheet.skip(each.run().equals(comparison.first()) ? 8 : 4);
                sheet.text(ComparedResult.Agreement.NOT_JUDGED.words());
                sheet.text("only in " + each.run());
            }
            sheet.finish();
            AcrossSheet.files(book, made);
            book.describe(
                    "Comparison of " + comparison.first() + " and " + comparison.second(),
                    "",
                    made.version(),
                    made.made());
            book.write(out);
        }
    }

    private static void row(ComparedResult row, AcrossSheet sheet) throws IOException {
        sheet.row();
        sheet.text(ComparisonText.name(row.first()));
        sheet.text(row.id());
        sheet.text(row.first().result().analyte());
        sheet.text(row.unit().symbol());
        found(row.first(), sheet);
        found(row.second(), sheet);
        OptionalDouble expanded =
                row.doubt().isPresent() ? OptionalDouble.of(row.doubt().get().expanded()) : OptionalDouble.empty();
        sheet.value(row.difference(), expanded);
        sheet.uncertainty(
                row.doubt().isPresent() ? OptionalDouble.of(row.doubt().get().u()) : OptionalDouble.empty());
        sheet.uncertainty(expanded);
        sheet.score(row.score());
        Look look = switch (row.agreement()) {
            case AGREE -> Look.PLAIN.face(Look.Face.GOOD);
            case DIFFER -> Look.PLAIN.face(Look.Face.BAD);
            case NOT_JUDGED -> Look.PLAIN.face(Look.Face.ATTENTION);
        };
        sheet.text(row.agreement().words(), look);
        sheet.text(row.why());
    }

    private static void found(Found each, AcrossSheet sheet) throws IOException {
        sheet.value(each.value(), each.expandedUncertainty());
        sheet.uncertainty(each.standardUncertainty());
        sheet.uncertainty(each.expandedUncertainty());
        sheet.text(each.verdict().word());
    }
}
