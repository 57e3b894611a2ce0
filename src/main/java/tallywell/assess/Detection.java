package tallywell.assess;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.budget.Repeatability;
import tallywell.numeric.StudentT;
import tallywell.plate.Content;
import tallywell.workup.BlankMean;
import tallywell.workup.Flag;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;

/**
 * Where a net ΔA can be told from a blank, and where it says how much.
 *
 * <pre>{@code
 * decision        t · s0 · √(1/n + 1/N + 1/m)     t one-sided at 95 %
 * quantification  10 · s0 · √(1/n + 1/N + 1/m)
 * }</pre>
 *
 * <p>n wells of the sample, N blanks, m sample blanks (the last term only where there are any). s0 is the standard
 * deviation of the blanks of the group from {@value #ENOUGH} wells on, else that of the pooled repeatability at net ΔA 0.
 *
 * <p>Source: Currie (1995), IUPAC recommendations, Pure Appl. Chem. 67, 1699 (from memory).
 *
 * @param sd s0
 * @param degreesOfFreedom of s0
 * @param decision net ΔA up to which a sample is not to be told from a blank
 * @param quantification net ΔA from which on a value says how much
 */
record Detection(double sd, double degreesOfFreedom, double decision, double quantification) {
    private static final int ENOUGH = 4;
    private static final double ONE_SIDED = 0.95;
    private static final double QUANTIFICATION = 10;

    /** The limits for a result; empty if nothing on the plate shows the scatter of a blank. */
    static Optional<Detection> of(StepAnalysis step, Optional<Repeatability> scatter, Result result) {
        String group = step.where(well -> result.wells().contains(well.well()))
                .get(0)
                .trace()
                .group();
        BlankMean blank = step.blanks().get(group);
        if (blank == null || result.n() == 0) {
            return Optional.empty();
        }
        OptionalDouble own = blank.wells().size() >= ENOUGH ? blank.sd() : OptionalDouble.empty();
        boolean measured = own.isPresent() && own.getAsDouble() > 0;
        double sd = measured
                ? own.getAsDouble()
                : Math.sqrt(scatter.map(each -> each.function().constant()).orElse(0.0));
        if (!(sd > 0)) {
            return Optional.empty();
        }
        double freedom = measured
                ? blank.wells().size() - 1
                : scatter.map(each -> each.function().degreesOfFreedom(0)).orElseThrow();
        double net = sd * Math.sqrt(1.0 / result.n() + 1.0 / blank.wells().size() + ownBlanks(step, result));
        return Optional.of(
                new Detection(sd, freedom, StudentT.quantile(ONE_SIDED, freedom) * net, QUANTIFICATION * net));
    }

    private static double ownBlanks(StepAnalysis step, Result result) {
        int slot = result.slot().orElse(0);
        int wells = step.where(well -> well.used()
                        && well.deltaA().isPresent()
                        && well.content() instanceof Content.SampleBlank own
                        && own.of() == slot)
                .size();
        return wells == 0 ? 0 : 1.0 / wells;
    }

    /** What is to be said of a net ΔA. */
    Optional<Flag> flag(double net) {
        if (net <= decision) {
            return Optional.of(Flag.BELOW_DETECTION);
        }
        return net < quantification ? Optional.of(Flag.BELOW_QUANTIFICATION) : Optional.empty();
    }
}
