package tallywell.across;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.budget.Basis;
import tallywell.quantity.Unit;

/**
 * One result of a sample from several runs.
 *
 * @param parts what each run found, whether it counts or not
 * @param id barcode, or empty
 * @param value by the rule; empty if the rule gives none
 * @param u standard uncertainty; empty if a result that counts has none
 * @param degreesOfFreedom of u, may be infinite; counts with u only
 * @param k coverage factor for 95 %; counts with u only
 * @param sd standard deviation of the results that count; empty for fewer than two
 * @param consistency whether they go together; empty for fewer than two, or without uncertainties
 * @param remark what to know of it, in words; empty if nothing
 */
public record CombinedResult(
        List<Part> parts,
        String id,
        OptionalDouble value,
        OptionalDouble u,
        double degreesOfFreedom,
        double k,
        OptionalDouble sd,
        Optional<Consistency> consistency,
        String remark) {
    /** Keeps a copy that cannot change. */
    public CombinedResult {
        parts = List.copyOf(parts);
    }

    /**
     * What one run found.
     *
     * @param found the result
     * @param leftOut in words, why it does not count; empty if it counts
     * @param weight its part of the sum; empty where the rule gives no weights, or it does not count
     */
    public record Part(Found found, String leftOut, OptionalDouble weight) {
        /** Whether it counts. */
        public boolean counts() {
            return leftOut.isEmpty();
        }
    }

    /** How many results count. */
    public int n() {
        return (int) parts.stream().filter(Part::counts).count();
    }

    /** Name of the sample or control, as the first run has it. */
    public String name() {
        return parts.get(0).found().result().name();
    }

    /** What is measured. */
    public String analyte() {
        return parts.get(0).found().result().analyte();
    }

    /** {@code sample}, {@code control} or {@code difference}. */
    public String role() {
        return parts.get(0).found().result().role();
    }

    /** The unit of all numbers. */
    public Unit unit() {
        return parts.get(0).found().unit();
    }

    /** The expanded uncertainty for 95 %. */
    public OptionalDouble expanded() {
        return u.isPresent() ? OptionalDouble.of(k * u.getAsDouble()) : OptionalDouble.empty();
    }

    /** What the uncertainty rests on: scatter only if that is all that any of the results that count has. */
    public Optional<Basis> basis() {
        if (u.isEmpty()) {
            return Optional.empty();
        }
        List<Basis> counting = parts.stream()
                .filter(Part::counts)
                .flatMap(part -> part.found().basis().stream())
                .distinct()
                .toList();
        return counting.size() == 1 ? Optional.of(counting.get(0)) : Optional.of(Basis.BUDGET);
    }

    /** Whether results that count differ by more than their uncertainties explain. */
    public boolean isInconsistent() {
        return consistency.isPresent() && !consistency.get().holds();
    }
}
