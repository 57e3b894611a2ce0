package tallywell.report;

import java.io.IOException;
import java.util.OptionalDouble;
import tallywell.assess.BasisWords;
import tallywell.assess.JudgedDifference;
import tallywell.budget.Basis;
import tallywell.budget.DifferenceBudget;
import tallywell.workup.Result;

/** Writes the row of a result by difference, in the columns of {@code results.csv}. */
final class DifferenceRow {
    private DifferenceRow() {}

    static void write(Report report, JudgedDifference judged, Fields to) throws IOException {
        Result row = judged.row();
        to.text(report.run());
        to.text(report.analysis().assay().plate());
        to.text(row.role());
        to.number(row.slot().orElseThrow());
        to.text(row.name());
        to.text(row.analyte());
        to.number(row.value());
        to.text(row.unit().symbol());
        to.number(of(judged, DifferenceBudget::standardUncertainty));
        to.number(of(judged, DifferenceBudget::expandedUncertainty));
        to.number(of(judged, DifferenceBudget::coverageFactor));
        to.number(row.n());
        to.empty();
        to.number(row.dilution().factor());
        to.number(row.valueAll());
        to.empty();
        to.empty();
        to.text(judged.verdict().word());
        to.text(ResultColumns.words(row.flags()));
        to.text(judged.advice().word());
        to.number(judged.atMost());
        to.text(judged.adviceFor().word());
        to.text(BasisWords.of(judged).map(Basis::word).orElse(""));
    }

    private static OptionalDouble of(
            JudgedDifference judged, java.util.function.ToDoubleFunction<DifferenceBudget> what) {
        return judged.budget().isPresent()
                ? OptionalDouble.of(what.applyAsDouble(judged.budget().get()))
                : OptionalDouble.empty();
    }
}
