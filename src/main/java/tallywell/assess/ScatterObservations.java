package tallywell.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tallywell.budget.PlateBudget;
import tallywell.numeric.OutlierTest;
import tallywell.numeric.Significance;
import tallywell.numeric.VarianceFunction;
import tallywell.numeric.VarianceRatio;
import tallywell.plate.Content;
import tallywell.quantity.Numbers;
import tallywell.workup.Repeatability;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;

/** Repeatability of the plate, replicates that scatter more than the others, outliers among replicates. */
final class ScatterObservations {
    private static final int DIGITS = 3;

    private final PlateBudget budget;
    private final StepAnalysis step;
    private final Optional<Repeatability> scatter;
    private final String of;

    ScatterObservations(PlateBudget budget, StepAnalysis step, String of) {
        this.budget = budget;
        this.step = step;
        this.scatter = budget.repeatabilities().get(step.number() - 1);
        this.of = of;
    }

    List<Check> all() {
        List<Check> checks = new ArrayList<>();
        if (scatter.isEmpty()) {
            checks.add(Observations.open("repeatability of ΔA" + of, withoutReplicates(), "layout"));
        } else {
            checks.add(repeatability(scatter.get()));
            checks.add(cochran(scatter.get()));
            checks.add(blanks());
        }
        checks.add(outliers());
        return checks;
    }

    private String withoutReplicates() {
        return budget.restsOnTraces(step.number())
                ? "no replicates that differ; u is from the noise of the traces, without pipetting"
                : "no replicates that differ, so nothing shows the scatter, and results have no u";
    }

    private Check repeatability(Repeatability found) {
        VarianceFunction function = found.function();
        String size = "SD " + Numbers.rounded(Math.sqrt(function.constant()), DIGITS) + " at net ΔA 0, and "
                + Numbers.rounded(100 * Math.sqrt(function.proportional()), DIGITS)
                + " % of net ΔA besides; from " + found.slots() + " groups of replicates with "
                + Numbers.rounded(found.degreesOfFreedom(), DIGITS) + " degrees of freedom";
        return Observations.open("repeatability of ΔA" + of, size, "pooled over the replicates");
    }

    private Check cochran(Repeatability found) {
        String name = "all replicates scatter alike" + of;
        String left = found.outliers().stream().map(Repeatability.Slot::key).collect(Collectors.joining(", "));
        return new Check(
                name,
                "none beyond Cochran's limit",
                left.isEmpty() ? "none" : "far more scatter than the others: " + left,
                Observations.state(left.isEmpty()),
                "Cochran's test, 1 %");
    }

    /** The variance of the blanks over that of the other slots at net ΔA 0. */
    private Check blanks() {
        String name = "blanks scatter like the other wells" + of;
        List<Repeatability.Slot> all = Repeatability.slots(step);
        List<Repeatability.Slot> blanks = all.stream()
                .filter(slot -> slot.content() instanceof Content.Blank blank && blank.triggered())
                .toList();
        List<Repeatability.Slot> others = all.stream()
                .filter(slot -> !(slot.content() instanceof Content.Blank))
                .toList();
        double nu = freedom(blanks);
        double rest = freedom(others);
        if (nu < 2 || rest < 2 || !(pooled(others) > 0)) {
            return Observations.open(name, "too few replicates to compare", "layout");
        }
        // Scatter that grows with ΔA makes the others larger, so only blanks that scatter more stand out.
        VarianceRatio ratio = new VarianceRatio(pooled(blanks) / pooled(others), nu, rest);
        return new Check(
                name,
                "variance at most " + Numbers.rounded(ratio.critical(Significance.ONE_PERCENT), DIGITS)
                        + " times that of the others",
                Numbers.rounded(ratio.statistic(), DIGITS) + " times",
                Observations.state(!ratio.beyond(Significance.ONE_PERCENT)),
                "F test, one-sided, 1 %");
    }

    private static double freedom(List<Repeatability.Slot> slots) {
        return slots.stream().mapToDouble(slot -> slot.n() - 1).sum();
    }

    private static double pooled(List<Repeatability.Slot> slots) {
        return slots.stream()
                        .mapToDouble(slot -> (slot.n() - 1) * slot.variance())
                        .sum()
                / freedom(slots);
    }

    private Check outliers() {
        String name = "no outlier among the wells of one sample" + of;
        List<String> found = new ArrayList<>();
        int tested = 0;
        for (Result result : budget.analysis().results()) {
            if (result.step() != step.number()) {
                continue;
            }
            Replicates replicates = new Replicates(result, step);
            Optional<OutlierTest> grubbs = replicates.grubbs();
            if (grubbs.isPresent()) {
                tested++;
                if (grubbs.get().beyond()) {
                    boolean dixon = replicates.dixon().map(OutlierTest::beyond).orElse(false);
                    found.add(replicates.well(grubbs.get()) + (dixon ? " (Dixon's test agrees)" : ""));
                }
            }
        }
        if (tested == 0) {
            return Observations.open(
                    name, "no sample in four wells or more; up to three the limits of the method decide", "layout");
        }
        return new Check(
                name,
                "no well beyond Grubbs' limit",
                found.isEmpty() ? "none in " + tested + " results" : String.join(", ", found),
                Observations.state(found.isEmpty()),
                "Grubbs' test, two-sided, 1 %; flagged, never removed");
    }
}
