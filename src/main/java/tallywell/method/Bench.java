package tallywell.method;

import java.util.List;
import java.util.OptionalDouble;
import tallywell.quantity.Dilution;
import tallywell.quantity.QuantityRange;

/**
 * What a method says for the bench; the calculation needs none of it.
 *
 * @param reagents in the order of addition; empty if the method does not list them
 * @param dilutions what is usual for kinds of sample
 * @param wellUl how much liquid a well may hold, in µL, if the method says
 * @param smallestUl smallest volume to pipette, in µL, if the method says
 * @param hazards what its reagents and standards do, as far as they are known
 */
public record Bench(
        List<Reagent> reagents,
        List<Usual> dilutions,
        OptionalDouble wellUl,
        OptionalDouble smallestUl,
        List<Hazard> hazards) {
    /** Nothing said. */
    public static final Bench NONE =
            new Bench(List.of(), List.of(), OptionalDouble.empty(), OptionalDouble.empty(), List.of());

    /** Keeps copies that cannot change. */
    public Bench {
        reagents = List.copyOf(reagents);
        dilutions = List.copyOf(dilutions);
        hazards = List.copyOf(hazards);
    }

    /** The reagents of one part, in order. */
    public List<Reagent> into(Reagent.Into part, int trigger) {
        return reagents.stream()
                .filter(each -> each.into() == part && each.trigger() == trigger)
                .toList();
    }

    /** Whether usual dilutions are given and none of them leaves a sample as it is. */
    boolean dilutesEverything() {
        return !dilutions.isEmpty()
                && dilutions.stream().allMatch(each -> each.dilution().factor() > 1);
    }

    /** Volume of one part in each well, in µL. */
    public double volumeUl(Reagent.Into part, int trigger) {
        return into(part, trigger).stream().mapToDouble(Reagent::volumeUl).sum();
    }

    /**
     * A usual dilution.
     *
     * @param matrix kind of sample
     * @param content what it usually holds: of the analyte that is measured, in that half where the row is of one; without a
     *     treatment in a method with results by difference, of the analyte that follows
     * @param dilution what is usually made of it
     * @param treatment the half of a difference that the row is of, or none
     */
    public record Usual(String matrix, QuantityRange content, Dilution dilution, Treatment treatment) {
        /** Kind of sample, and the half where the row is of one. */
        public String name() {
            return treatment == Treatment.NONE ? matrix : matrix + " (" + treatment.word() + ")";
        }
    }
}
