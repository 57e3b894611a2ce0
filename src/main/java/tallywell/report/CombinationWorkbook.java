package tallywell.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.OptionalDouble;
import tallywell.across.Combination;
import tallywell.across.CombinedResult;
import tallywell.across.Found;

/** Writes combined results as a workbook: the results, what each run found, and the files that all come from. */
public final class CombinationWorkbook {
    private static final List<String> COMBINED =
            List.of("sample", "id", "analyte", "value", "u", "U", "k", "unit", "n", "SD", "Birge ratio", "remark");
    private static final double[] COMBINED_WIDTHS = {28, 14, 16, 11, 9, 9, 7, 9, 5, 9, 11, 70};
    private static final List<String> SINGLE = List.of(
            "sample", "id", "analyte", "run", "value", "u", "U", "unit", "verdict", "weight", "counts", "why not");
    private static final double[] SINGLE_WIDTHS = {28, 14, 16, 40, 11, 9, 9, 9, 9, 9, 8, 40};

    /**
     * Writes the workbook.
     *
     * @param made by what, when and from which files
     * @param out where to; left open
     */
    public void write(Combination combination, Provenance made, OutputStream out) throws IOException {
        try (Book book = new Book()) {
            AcrossSheet combined = new AcrossSheet(book.add("Combined"), COMBINED, COMBINED_WIDTHS);
            combined.head(
                    "Results of several runs",
                    List.of(
                            "Rule, stated before the results: "
                                    + combination.rule().text() + ".",
                            combination.withChecks()
                                    ? "Results with the verdict check count: a person has looked at them."
                                    : "Results with the verdict check or repeat do not count.",
                            "Runs: " + String.join(", ", combination.runs()),
                            combination.sentence(),
                            ComparisonText.shared(combination.shared()) + CombinationText.basis(combination),
                            "Birge ratio: well over 1 where results differ by more than their uncertainties explain."));
            for (CombinedResult each : combination.results()) {
                combined(each, combined);
            }
            combined.finish();
            AcrossSheet single = new AcrossSheet(book.add("Single results"), SINGLE, SINGLE_WIDTHS);
            single.head("What each run found", List.of("In the unit of the combined result."));
            for (CombinedResult each : combination.results()) {
                for (CombinedResult.Part part : each.parts()) {
                    single(part, each.id(), single);
                }
            }
            single.finish();
            AcrossSheet.files(book, made);
            book.describe(
                    "Results of " + combination.runs().size() + " runs combined", "", made.version(), made.made());
            book.write(out);
        }
    }

    private static void combined(CombinedResult each, AcrossSheet sheet) throws IOException {
        sheet.row();
        sheet.text(ComparisonText.name(each.parts().get(0).found()));
        sheet.text(each.id());
        sheet.text(each.analyte());
        sheet.value(each.value(), each.expanded());
        sheet.uncertainty(each.u());
        sheet.uncertainty(each.expanded());
        sheet.score(each.u().isPresent() ? OptionalDouble.of(each.k()) : OptionalDouble.empty());
        sheet.text(each.unit().symbol());
        sheet.count(each.n());
        sheet.uncertainty(each.sd());
        sheet.score(
                each.consistency().isPresent()
                        ? OptionalDouble.of(each.consistency().get().birge())
                        : OptionalDouble.empty());
        sheet.text(each.remark(), each.isInconsistent() ? Look.PLAIN.face(Look.Face.BAD) : Looks.TEXT);
    }

    private static void single(CombinedResult.Part part, String id, AcrossSheet sheet) throws IOException {
        Found found = part.found();
        sheet.row();
        sheet.text(ComparisonText.name(found));
        sheet.text(id);
        sheet.text(found.result().analyte());
        sheet.text(found.run());
        sheet.value(found.value(), found.expandedUncertainty());
        sheet.uncertainty(found.standardUncertainty());
        sheet.uncertainty(found.expandedUncertainty());
        sheet.text(found.unit().symbol());
        sheet.text(found.verdict().word());
        sheet.score(part.weight());
        sheet.text(part.counts() ? "yes" : "no");
        sheet.text(part.leftOut());
    }
}
