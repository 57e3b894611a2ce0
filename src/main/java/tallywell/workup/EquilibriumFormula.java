package tallywell.workup;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tallywell.trace.Baseline;
import tallywell.trace.BaselineFit;
import tallywell.trace.Change;

/**
 * The change of an indicator that was in equilibrium before the analyte reacted.
 *
 * <pre>{@code
 * p = A2 - A0        q = A1 - A0        g = q² / p · Π (C - p) / (C - q)
 * E = p - g          = A2 - (A0 + g)
 * ∂E/∂p = 1 + g (1/p + Σ 1/(C - p))        ∂E/∂q = -g (2/q + Σ 1/(C - q))
 * u²(E) = (∂E/∂p)² u²(A2) + (∂E/∂q)² u²(A1) + (∂E/∂p + ∂E/∂q)² u²(A0)
 * }</pre>
 *
 * <p>A0 is read before the enzymes of the equilibrium, A1 when it has settled, A2 when the analyte is used up; creep is
 * taken out of A2 before it enters. The indicator (NADH) and a second product (oxaloacetate) come from the same reactants,
 * one each. C is the absorbance that a reactant (NAD, malate) could make in all. By the law of mass action
 * {@code p · (p - X) / Π (C - p)} after the analyte has taken X of the second product is what {@code q² / Π (C - q)} was
 * before; X is E. Reactants in excess have no C, and the products are 1. Without analyte p = q and E = 0.
 *
 * <p>E is stated as a change from an equivalent baseline {@code A0 + g} to A2, so that everything after it is as in other
 * steps.
 *
 * <p>Source: the calculation of acetic acid by acetyl-CoA synthetase in published enzymatic methods (from memory) is that
 * without C; with C it is derived here, and checked by {@code docs/checks/coupled-equilibrium.R}.
 */
final class EquilibriumFormula {
    private EquilibriumFormula() {}

    /** A1 as a baseline: the last reading before the second trigger, as uncertain as one reading. */
    static Baseline.Given between(Change settled) {
        return new Baseline.Given(settled.after(), settled.baseline().scatter().orElse(0));
    }

    /**
     * The change by the formula; empty unless A2 lies beyond A0 in the direction of the signal.
     *
     * @param settled from A0 to A1
     * @param used from A1 to A2
     * @param sign 1 where the signal rises, -1 where it falls
     * @param reactants absorbance that each reactant could make; those in excess are absent
     */
    static Optional<Change> of(Change settled, Change used, int sign, List<Double> reactants) {
        double a0 = settled.before();
        double p = used.after() - a0;
        if (!(sign * p > 0)) {
            return Optional.empty();
        }
        double q = settled.after() - a0;
        if (!reactants.stream().allMatch(c -> c > sign * p && c > sign * q)) {
            return Optional.empty();
        }
        Slopes slopes = Slopes.of(sign * p, sign * q, reactants);
        BaselineFit equivalent = new BaselineFit(
                a0 + sign * slopes.taken(),
                0,
                settled.baseline().leftOut(),
                settled.baseline().scatter(),
                OptionalDouble.empty());
        return Optional.of(new Change(
                equivalent,
                used.after(),
                used.reading(),
                used.creepPerMin(),
                used.uCreepPerMin(),
                uncertainty(settled, used, slopes),
                slopes.byP() * used.uCourse(),
                used.finished(),
                used.curve(),
                used.flags()));
    }

    /**
     * The equivalent baseline over A0 and how E follows p and q.
     *
     * @param taken g
     * @param byP ∂E/∂p
     * @param byQ ∂E/∂q
     */
    private record Slopes(double taken, double byP, double byQ) {
        static Slopes of(double p, double q, List<Double> reactants) {
            double scarce = 1;
            double overP = 0;
            double overQ = 0;
            for (double c : reactants) {
                scarce *= (c - p) / (c - q);
                overP += 1 / (c - p);
                overQ += 1 / (c - q);
            }
            double g = q * q / p * scarce;
            // 2 g / q written so that q may be 0
            return new Slopes(g, 1 + g * (1 / p + overP), -(2 * q / p * scarce + g * overQ));
        }
    }

    private static OptionalDouble uncertainty(Change settled, Change used, Slopes slopes) {
        OptionalDouble u0 = settled.baseline().standardUncertainty();
        OptionalDouble u1 = settled.baseline().scatter();
        OptionalDouble u12 = used.uDeltaA();
        if (u0.isEmpty() || u1.isEmpty() || u12.isEmpty() && used.reading().equals(OptionalInt.empty())) {
            return OptionalDouble.empty();
        }
        // A single reading scatters as the baseline did; of a line, what its ΔA has beyond A1.
        double u2Squared = used.reading().isPresent()
                ? u1.getAsDouble() * u1.getAsDouble()
                : Math.max(0, u12.getAsDouble() * u12.getAsDouble() - u1.getAsDouble() * u1.getAsDouble());
        double byA0 = slopes.byP() + slopes.byQ();
        double square = slopes.byP() * slopes.byP() * u2Squared
                + slopes.byQ() * slopes.byQ() * u1.getAsDouble() * u1.getAsDouble()
                + byA0 * byA0 * u0.getAsDouble() * u0.getAsDouble();
        return OptionalDouble.of(Math.sqrt(square));
    }
}
