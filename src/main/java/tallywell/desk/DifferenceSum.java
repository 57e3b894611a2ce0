package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.assess.Assessment;
import tallywell.assess.JudgedDifference;
import tallywell.budget.DifferenceBudget;
import tallywell.workup.DifferenceResult;
import tallywell.workup.Half;
import tallywell.workup.Result;

/** Shows the sum of a result by difference, from its two halves. */
final class DifferenceSum {
    private static final int DIGITS = 6;
    private static final int U_DIGITS = 3;

    private final Shown shown;
    private final List<String> lines = new ArrayList<>();

    private DifferenceSum(Shown shown) {
        this.shown = shown;
    }

    /** The sum of the difference that a row is of, as lines of text; empty if the assessment has none such. */
    static List<String> of(Assessment assessment, Result row, Shown shown) {
        Optional<JudgedDifference> judged = assessment.differences().stream()
                .filter(each -> each.row().slot().equals(row.slot())
                        && each.row().analyte().equals(row.analyte()))
                .findFirst();
        DifferenceSum sum = new DifferenceSum(shown);
        judged.ifPresent(sum::write);
        return List.copyOf(sum.lines);
    }

    private void write(JudgedDifference judged) {
        DifferenceResult difference = judged.difference();
        String unit = " " + difference.total().unit();
        lines.add(difference.name() + ", " + difference.rule().analyte().name());
        lines.add("");
        half("total", difference.whole());
        half("free", difference.unbound());
        lines.add("");
        if (difference.value().isEmpty()) {
            lines.add("No value: a half has none.");
            return;
        }
        lines.add("Value = " + shown.rounded(difference.factor(), DIGITS) + " · (total - free) = "
                + shown.rounded(difference.value().getAsDouble(), DIGITS) + unit);
        judged.budget().ifPresent(budget -> uncertainty(budget, unit));
        judged.atMost()
                .ifPresent(most -> lines.add(
                        "Not to be told from none; with 95 % at most " + shown.rounded(most, U_DIGITS) + unit));
    }

    private void half(String name, Half half) {
        String how = switch (half.below()) {
            case NOT -> "";
            case CURVE -> "  (below the lowest standard: what the curve says there)";
            case INTERVAL -> "  (below the lowest standard: the middle of the interval down to nothing)";
        };
        lines.add(name + "  "
                + (half.counted().value().isPresent()
                        ? shown.rounded(half.counted().value().getAsDouble(), DIGITS) + " "
                                + half.reported().unit() + how
                        : "no value"));
    }

    private void uncertainty(DifferenceBudget budget, String unit) {
        lines.add("± U (95 %) = k · u = " + shown.rounded(budget.coverageFactor(), U_DIGITS) + " · "
                + shown.rounded(budget.standardUncertainty(), U_DIGITS) + " = "
                + shown.rounded(budget.expandedUncertainty(), U_DIGITS) + unit);
    }
}
