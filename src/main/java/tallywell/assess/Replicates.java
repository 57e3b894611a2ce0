package tallywell.assess;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tallywell.method.Limits;
import tallywell.numeric.Dixon;
import tallywell.numeric.Grubbs;
import tallywell.numeric.OutlierTest;
import tallywell.numeric.Significance;
import tallywell.numeric.Suspect;
import tallywell.workup.Flag;
import tallywell.workup.Repeatability;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/**
 * How the wells of one result agree. Up to three wells the limits of the method decide; from four on tests for an outlier
 * say more. An outlier is flagged and never removed.
 */
final class Replicates {
    private final Result result;
    private final Limits limits;
    private final List<WellResult> wells;
    private final double[] nets;

    Replicates(Result result, StepAnalysis step) {
        this.result = result;
        this.limits = step.step().limits();
        this.wells = step.where(well ->
                well.used() && well.netDeltaA().isPresent() && result.wells().contains(well.well()));
        this.nets = wells.stream()
                .map(WellResult::netDeltaA)
                .flatMapToDouble(OptionalDouble::stream)
                .toArray();
    }

    Set<Flag> flags(Optional<Repeatability> scatter) {
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        if (differ()) {
            flags.add(Flag.REPLICATES_DIFFER);
        }
        if (grubbs().map(OutlierTest::beyond).orElse(false)) {
            flags.add(Flag.OUTLIER);
        }
        if (!wells.isEmpty()
                && scatter.flatMap(each -> each.outlierOf(wells.get(0))).isPresent()) {
            flags.add(Flag.SCATTER_HIGH);
        }
        return flags;
    }

    /** Grubbs' test, two-sided at 1 %; empty under four wells. */
    Optional<OutlierTest> grubbs() {
        return nets.length < Grubbs.LEAST
                ? Optional.empty()
                : Optional.of(Grubbs.test(nets, Suspect.EITHER, Significance.ONE_PERCENT));
    }

    /** Dixon's test, two-sided at 1 %; empty under four wells and over thirty. */
    Optional<OutlierTest> dixon() {
        return nets.length < Dixon.LEAST || nets.length > Dixon.MOST
                ? Optional.empty()
                : Optional.of(Dixon.test(nets, Suspect.EITHER, Significance.ONE_PERCENT));
    }

    /** The well that a test suspects. */
    String well(OutlierTest test) {
        return wells.get(test.index()).well().toString();
    }

    /** Replicates pass if either limit holds; without any limit they are not assessed. */
    private boolean differ() {
        boolean limited =
                limits.replicateCv().isPresent() || limits.replicateRange().isPresent();
        if (!limited || nets.length < 2) {
            return false;
        }
        // Outside the standards there are no values to compare; their net ΔA can still be compared.
        boolean cv = limits.replicateCv().isPresent()
                && result.cvPercent().orElseGet(this::cvPercentOfNets)
                        <= 100 * limits.replicateCv().getAsDouble();
        boolean range = limits.replicateRange().isPresent()
                && range() <= limits.replicateRange().getAsDouble();
        return !cv && !range;
    }

    private double cvPercentOfNets() {
        double mean = Arrays.stream(nets).average().orElseThrow();
        double squares =
                Arrays.stream(nets).map(net -> (net - mean) * (net - mean)).sum();
        return mean == 0 ? Double.POSITIVE_INFINITY : 100 * Math.sqrt(squares / (nets.length - 1)) / Math.abs(mean);
    }

    private double range() {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double value : nets) {
            least = Math.min(least, value);
            most = Math.max(most, value);
        }
        return most - least;
    }
}
