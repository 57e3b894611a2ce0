package tallywell.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.budget.PlateBudget;

/** What stands on the sheet Budget, in words. */
final class BudgetLegend {
    static final String UNLIMITED = "unlimited";

    private BudgetLegend() {}

    /**
     * A line of the legend.
     *
     * @param word what is explained, or a heading
     * @param text in words; empty for a heading
     */
    record Line(String word, String text) {}

    static List<Line> of(Report report, BudgetColumns columns) {
        List<Line> lines = new ArrayList<>();
        lines.add(new Line("In words", ""));
        lines.add(new Line(
                "u",
                "standard uncertainty: as uncertain as a result with this standard deviation, all sources together, in"
                        + " the unit of the value."));
        lines.add(new Line("U, k", "U = k · u. " + coverage(report.assessment().budget())));
        lines.add(new Line(
                "degrees of freedom",
                "how well u itself is known. Few make k large: a scatter that is seen in few wells may be larger than it"
                        + " looked. " + UNLIMITED + ": k is 1.96."));
        String held = UncertaintyWords.of(report.assessment().budget());
        if (!held.isEmpty()) {
            lines.add(new Line("held, not held", held));
        }
        if (columns.validated()) {
            lines.add(new Line(
                    "u by validation",
                    "from precision and bias as the method states them. It stands beside the budget as a check; which of"
                            + " the two goes on the report is the method's word."));
        }
        if (!columns.labels().isEmpty()) {
            lines.add(new Line(
                    "parts",
                    "how much of u² comes from each source; together 100 in a row, the largest in bold. To make a result"
                            + " surer, work on that one. Empty: the source does not act on this result, or cancels."));
            columns.labels().forEach(label -> lines.add(new Line(label, source(label))));
        }
        columns.draws()
                .ifPresent(draws -> lines.add(new Line(
                        "draws",
                        draws.trials() + " plates made up with the scatter and the sources of this one, each worked up"
                                + " anew, seed " + draws.seed() + ". The standard deviation of their values is u by"
                                + " draws, to be held against u. The interval holds the middle 95 % once it is drawn,"
                                + " too, how well the scatter is known; hold it against value − U to value + U. Where"
                                + " they agree within a few per cent, the budget can be trusted.")));
        recoveries(report, lines);
        return lines;
    }

    /** Scatter alone does not say where the true value lies, so that nothing is promised of it. */
    private static String coverage(PlateBudget budget) {
        String promise = "In 95 of 100 cases the true value lies between value − U and value + U.";
        if (!budget.anyScatterOnly()) {
            return promise;
        }
        return "Where the remark says scatter only, no source that the method states acts: U says how well the result"
                + " repeats, and the true value may lie farther off.";
    }

    private static void recoveries(Report report, List<Line> lines) {
        PlateBudget budget = report.assessment().budget();
        if (budget.recoveries().stream().anyMatch(Optional::isPresent)) {
            lines.add(new Line(
                    "recoveries",
                    "u and U in percentage points. What a spike and its sample share is wrong in"
                            + " both alike and taken out. Assigned values and what was added count as exact. Where"
                            + " 100 % lies within U, nothing speaks against full recovery."));
        }
    }

    private static String source(String label) {
        return switch (label) {
            case "repeatability" ->
                "scatter among wells of one content, pooled over the plate: pipetting, reader and trace together.";
            case "noise of the trace" ->
                "noise of the readings of the well alone, since no replicates show more. Pipetting is not in it, so u is"
                        + " the least it can be.";
            case "course of the trace" ->
                "burst that may be left where the line begins, and creep that may die away. Replicates share it, so it is"
                        + " not in their scatter.";
            case "course of the standards" -> "the same of the standards: all results that are read off them share it.";
            case "blank" -> "scatter of the blanks that are taken off.";
            case "calibration" -> "scatter of the standards about the curve.";
            default -> "as the method states it under uncertainty.";
        };
    }
}
