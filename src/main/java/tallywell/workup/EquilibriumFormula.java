package tallywell.workup;

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
 * p = A2 - A0        q = A1 - A0        r = q / p
 * E = p - q² / p     = A2 - (A0 + q² / p)
 * u²(E) = (1 + r²)² u²(A2) + 4 r² u²(A1) + (1 - r)⁴ u²(A0)
 * }</pre>
 *
 * <p>A0 is read before the enzymes of the equilibrium, A1 when it has settled, A2 when the analyte is used up; creep is
 * taken out of A2 before it enters. The indicator (NADH) and a second product (oxaloacetate) come from reactants in
 * excess, so their product stays what it was at A1: q². Where the analyte takes X of the second product away, p (p - X) =
 * q², and X is E. Without analyte p = q and E = 0.
 *
 * <p>E is stated as a change from an equivalent baseline {@code A0 + q²/p} to A2, so that everything after it is as in
 * other steps.
 *
 * <p>Source: the calculation of acetic acid by acetyl-CoA synthetase in published enzymatic methods (from memory).
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
     */
    static Optional<Change> of(Change settled, Change used, int sign) {
        double a0 = settled.before();
        double p = used.after() - a0;
        if (!(sign * p > 0)) {
            return Optional.empty();
        }
        double q = settled.after() - a0;
        double r = q / p;
        BaselineFit equivalent = new BaselineFit(
                a0 + q * r, 0, settled.baseline().leftOut(), settled.baseline().scatter(), OptionalDouble.empty());
        return Optional.of(new Change(
                equivalent,
                used.after(),
                used.reading(),
                used.creepPerMin(),
                used.uCreepPerMin(),
                uncertainty(settled, used, r),
                (1 + r * r) * used.uCourse(),
                used.finished(),
                used.curve(),
                used.flags()));
    }

    private static OptionalDouble uncertainty(Change settled, Change used, double r) {
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
        double square = (1 + r * r) * (1 + r * r) * u2Squared
                + 4 * r * r * u1.getAsDouble() * u1.getAsDouble()
                + Math.pow(1 - r, 4) * u0.getAsDouble() * u0.getAsDouble();
        return OptionalDouble.of(Math.sqrt(square));
    }
}
