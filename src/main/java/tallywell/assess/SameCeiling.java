package tallywell.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tallywell.method.Direction;
import tallywell.numeric.Significance;
import tallywell.workup.IndicatorLeft;
import tallywell.workup.Repeatability;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * Whether results at the top of a falling assay agree where they should differ: then something ran out in all of them.
 *
 * <pre>{@code
 * together: those whose net ΔA is within w = 3 · √(s²/n + s²/n top) of the largest
 * dilutions of one sample, F1 < F2: together, though the largest net ΔA · (1 - F1 / F2) > 2 w
 * m of n samples together: P(at least m - 1 of n - 1 within w of the top by chance) <= 1 %, with w / range for each
 * }</pre>
 *
 * <p>Error rates: dilutions, 3 in 1000 by the factor 3; samples, one plate in a hundred where contents spread evenly over
 * the plate. Samples that are alike by nature are flagged, too, and a person must say so. Three are the fewest, and half
 * of the indicator or more must seem used (own choices).
 */
final class SameCeiling {
    private static final double FACTOR = 3;
    private static final int FEWEST = 3;
    private static final double MOST_LEFT = 0.5;

    private final StepAnalysis step;
    private final Repeatability scatter;

    private SameCeiling(StepAnalysis step, Repeatability scatter) {
        this.step = step;
        this.scatter = scatter;
    }

    /** The keys of the results of a step that stand at one ceiling; none where nothing shows the scatter. */
    static Set<String> keys(StepAnalysis step, List<Result> results, Optional<Repeatability> scatter) {
        if (step.step().signal().direction() != Direction.FALLS || scatter.isEmpty()) {
            return Set.of();
        }
        List<Result> falling = results.stream()
                .filter(result -> result.step() == step.number()
                        && result.n() > 0
                        && result.netDeltaA().isPresent())
                .sorted(Comparator.comparingDouble(SameCeiling::net).reversed())
                .toList();
        return falling.isEmpty() ? Set.of() : new SameCeiling(step, scatter.get()).among(falling);
    }

    private Set<String> among(List<Result> falling) {
        Result top = falling.get(0);
        List<Result> together = falling.stream()
                .filter(result -> net(top) - net(result) <= width(top, result) && isMostUsed(result))
                .toList();
        Set<String> keys = new HashSet<>(dilutions(top, together));
        int others = names(falling) - 1;
        int near = names(together) - 1;
        double range = net(top) - net(falling.get(falling.size() - 1));
        double share = width(top, top) / range;
        if (near + 1 >= FEWEST && share < 1 && atLeast(near, others, share) <= Significance.ONE_PERCENT.probability()) {
            together.forEach(result -> keys.add(result.key()));
        }
        return keys;
    }

    private List<String> dilutions(Result top, List<Result> together) {
        List<String> keys = new ArrayList<>();
        for (Result one : together) {
            for (Result other : together) {
                double ratio = one.dilution().factor() / other.dilution().factor();
                if (one.role().equals(other.role())
                        && one.name().equals(other.name())
                        && net(top) * (1 - Math.min(ratio, 1 / ratio)) > 2 * width(one, other)) {
                    keys.add(one.key());
                }
            }
        }
        return keys;
    }

    private double width(Result one, Result other) {
        return FACTOR
                * Math.sqrt(scatter.function().at(net(one)) / one.n()
                        + scatter.function().at(net(other)) / other.n());
    }

    /** Where much is left by any account, what they have in common is no end of the indicator. */
    private boolean isMostUsed(Result result) {
        return step.wells().stream()
                .filter(WellResult::used)
                .map(WellResult::well)
                .filter(result.wells()::contains)
                .map(step.indicator()::get)
                .anyMatch(left -> left != null && isMostUsed(left));
    }

    private static boolean isMostUsed(IndicatorLeft left) {
        return !(left.left() >= MOST_LEFT * left.supplied());
    }

    /** P(X >= k) of a binomial distribution. */
    private static double atLeast(int k, int n, double p) {
        double below = 0;
        double term = Math.pow(1 - p, n);
        for (int i = 0; i < k; i++) {
            below += term;
            term *= (n - i) / (i + 1.0) * p / (1 - p);
        }
        return 1 - below;
    }

    private static int names(List<Result> results) {
        return results.stream()
                .map(result -> result.role().equals("control") ? "control " + result.name() : result.name())
                .collect(Collectors.toSet())
                .size();
    }

    private static double net(Result result) {
        return result.netDeltaA().orElseThrow();
    }
}
