package tallywell.assess;

import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.curve.DetectionLimits;
import tallywell.curve.DetectionRule;
import tallywell.numeric.StudentT;
import tallywell.plate.Content;
import tallywell.workup.BlankMean;
import tallywell.workup.Flag;
import tallywell.workup.Repeatability;
import tallywell.workup.Result;
import tallywell.workup.StepAnalysis;

/**
 * Where a net ΔA can be told from a blank, and where it says how much.
 *
 * <pre>{@code
 * decision        t · s0 · √(1/n + 1/N)                   t one-sided at 95 %
 *                 t · s0 · √(1/n + 1/N + 1/m + 1/N0)      with sample blanks
 * quantification  10 instead of t
 * below zero      t one-sided at 99 %, on the other side of 0
 * }</pre>
 *
 * <p>n wells of the sample, N blanks, m sample blanks, N0 blanks without trigger: every mean that is in the net ΔA. The
 * last term is missing where the sample has sample blanks and the group has no blanks without trigger. s0 is the standard
 * deviation of the blanks of the group from {@value #ENOUGH} wells on, else that of the pooled repeatability at net ΔA 0.
 *
 * <p>Source: Currie (1995), IUPAC recommendations, Pure Appl. Chem. 67, 1699 (from memory).
 *
 * @param sd s0
 * @param degreesOfFreedom of s0
 * @param decision net ΔA up to which a sample is not to be told from a blank
 * @param quantification net ΔA from which on a value says how much
 * @param belowZero net ΔA, negative, under which chance does not explain that a sample reads less than its blanks
 */
record Detection(double sd, double degreesOfFreedom, double decision, double quantification, double belowZero) {
    private static final int ENOUGH = 4;

    /** One sample in a hundred that holds nothing is called below zero. */
    private static final double ONE_SIDED_BELOW = 0.99;

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
        double u = sd * Math.sqrt(1.0 / result.n() + offset(step, blank, result));
        DetectionLimits limits = DetectionLimits.fromUncertainty(DetectionRule.BLANKS, u, freedom);
        return Optional.of(new Detection(
                sd,
                freedom,
                limits.decision().orElseThrow(),
                limits.quantification(),
                -StudentT.quantile(ONE_SIDED_BELOW, freedom) * u));
    }

    /** Variance of what is taken off ΔA, for a variance of 1 of each well. */
    private static double offset(StepAnalysis step, BlankMean blank, Result result) {
        double common = 1.0 / blank.wells().size();
        int own = sampleBlanks(step, result);
        if (own == 0) {
            return common;
        }
        int untriggered = blank.untriggered().size();
        return common + 1.0 / own + (untriggered == 0 ? 0 : 1.0 / untriggered);
    }

    /** How many sample blanks are taken off the wells of a result. */
    static int sampleBlanks(StepAnalysis step, Result result) {
        return step.where(well -> well.used()
                        && well.deltaA().isPresent()
                        && well.content() instanceof Content.SampleBlank each
                        && each.of() == result.slot().orElse(0))
                .size();
    }

    /** What is to be said of a net ΔA. */
    Optional<Flag> flag(double net) {
        if (net < belowZero) {
            return Optional.of(Flag.BELOW_ZERO);
        }
        if (net <= decision) {
            return Optional.of(Flag.BELOW_DETECTION);
        }
        return net < quantification ? Optional.of(Flag.BELOW_QUANTIFICATION) : Optional.empty();
    }
}
