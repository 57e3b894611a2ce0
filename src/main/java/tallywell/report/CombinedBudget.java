package tallywell.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tallywell.assess.JudgedDifference;
import tallywell.budget.DifferenceBudget;
import tallywell.budget.PlateBudget;
import tallywell.budget.RecoveryBudget;
import tallywell.budget.ResultBudget;
import tallywell.quantity.Numbers;
import tallywell.workup.Result;

/**
 * The sheet Budget of many runs: one row for each value and for each recovery. Sources differ from method to method and
 * rows are written as runs come, so the parts of u² stand in one cell, the largest in cells of its own.
 */
final class CombinedBudget {
    static final List<String> TITLES = List.of(
            "run",
            "role",
            "slot",
            "sample",
            "analyte",
            "quantity",
            "value",
            "unit",
            "u",
            "degrees_of_freedom",
            "k",
            "U",
            "u_validation",
            "largest_source",
            "largest_percent",
            "parts_percent",
            "remark");
    static final double[] WIDTHS = {34, 10, 6, 26, 16, 10, 11, 9, 10, 19, 7, 10, 14, 22, 15, 60, 44};

    private static final double PERCENT = 100;
    private static final int DIGITS = 3;
    private static final String RECOVERY = "recovery";

    private final Report report;
    private final PlateBudget budget;
    private final Sheet sheet;

    private CombinedBudget(Report report, Sheet sheet) {
        this.report = report;
        this.budget = report.assessment().budget();
        this.sheet = sheet;
    }

    /** Adds the rows of a run. */
    static void add(Report report, Sheet sheet) throws IOException {
        new CombinedBudget(report, sheet).add();
    }

    private void add() throws IOException {
        List<Result> results = report.analysis().results();
        for (int i = 0; i < results.size(); i++) {
            value(results.get(i), budget.results().get(i));
        }
        for (JudgedDifference each : report.assessment().differences()) {
            difference(each.row(), each.budget());
        }
        for (int i = 0; i < results.size(); i++) {
            if (results.get(i).recoveryPercent().isPresent()) {
                recovery(results.get(i), budget.recoveries().get(i));
            }
        }
    }

    private void begin(Result result, String quantity, OptionalDouble value, String unit) throws IOException {
        CombinedWorkbook.next(sheet);
        sheet.text(0, report.run(), Looks.TEXT);
        sheet.text(1, result.role(), Looks.TEXT);
        slot(result.slot());
        sheet.text(3, result.name(), Looks.INDENTED);
        sheet.text(4, result.analyte(), Looks.TEXT);
        sheet.text(5, quantity, Looks.TEXT);
        boolean recovery = quantity.equals(RECOVERY);
        sheet.number(
                6,
                value,
                Look.PLAIN.format(recovery || value.isEmpty() ? "0.0" : Looks.digits(value.getAsDouble(), DIGITS + 1)));
        sheet.text(7, unit, Looks.INDENTED);
    }

    private void slot(OptionalInt slot) {
        if (slot.isPresent()) {
            sheet.number(2, slot.getAsInt(), Looks.TEXT);
        } else {
            sheet.blank(2, Looks.TEXT);
        }
    }

    private void uncertainty(double u, double freedom, double factor) {
        sheet.number(8, u, Look.PLAIN.format(Looks.digits(u, DIGITS)));
        if (freedom > BudgetSheet.UNLIMITED) {
            sheet.text(9, BudgetLegend.UNLIMITED, Look.PLAIN.align(Look.Align.RIGHT));
        } else {
            sheet.number(9, freedom, Look.PLAIN.format(Looks.digits(freedom, 2)));
        }
        sheet.number(10, factor, Look.PLAIN.format("0.00"));
        sheet.number(11, u * factor, Look.PLAIN.format(Looks.digits(u * factor, DIGITS)));
    }

    private void value(Result result, Optional<ResultBudget> found) throws IOException {
        begin(result, "value", result.value(), result.unit().symbol());
        if (found.isPresent()) {
            ResultBudget each = found.get();
            uncertainty(each.byBudget(), each.degreesOfFreedom(), each.factorByBudget());
            OptionalDouble validated = each.byValidation();
            sheet.number(
                    12,
                    validated,
                    validated.isPresent()
                            ? Look.PLAIN.format(Looks.digits(validated.getAsDouble(), DIGITS))
                            : Looks.TEXT);
            parts(each.shares());
        }
        sheet.text(16, BudgetWords.of(budget, result, found), Looks.NOTE);
    }

    /** The parts of u², largest first. */
    private void parts(Map<String, Double> shares) {
        if (shares.isEmpty()) {
            return;
        }
        List<String> words = new ArrayList<>();
        shares.forEach((label, share) -> words.add(label + " " + Numbers.fixed(PERCENT * share, 1)));
        Map.Entry<String, Double> largest = shares.entrySet().iterator().next();
        sheet.text(13, largest.getKey(), Looks.INDENTED);
        sheet.number(14, PERCENT * largest.getValue(), Look.PLAIN.format("0.0"));
        sheet.text(15, String.join("; ", words), Looks.INDENTED);
    }

    private void difference(Result result, Optional<DifferenceBudget> found) throws IOException {
        begin(result, "value", result.value(), result.unit().symbol());
        found.ifPresent(
                each -> uncertainty(each.standardUncertainty(), each.degreesOfFreedom(), each.coverageFactor()));
        sheet.text(16, BudgetWords.of(found), Looks.NOTE);
    }

    private void recovery(Result result, Optional<RecoveryBudget> found) throws IOException {
        begin(result, RECOVERY, result.recoveryPercent(), "%");
        found.ifPresent(
                each -> uncertainty(each.standardUncertainty(), each.degreesOfFreedom(), each.coverageFactor()));
        sheet.text(16, found.map(each -> "U: " + each.basis().word()).orElse(""), Looks.NOTE);
    }
}
