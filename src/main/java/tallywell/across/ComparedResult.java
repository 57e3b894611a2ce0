package tallywell.across;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.quantity.Unit;

/**
 * Two results of one sample, side by side.
 *
 * <pre>{@code
 * d = second - first        u(d) what both have in common taken out
 * zeta = d / u(d)           E = d / U(d),  U(d) = k u(d),  k for 95 %
 * }</pre>
 *
 * <p>They agree where |E| is at most 1. Source: JCGM 100:2008 (GUM), 5.2.2, for u(d); ISO 13528:2015, 9.6 and 9.7 (from
 * memory), for the two scores, which there have independent results.
 *
 * @param first the original
 * @param second the repeat, in the unit of the original
 * @param id barcode, or empty
 * @param difference second less first; empty if one has no value
 * @param doubt how sure the difference is; empty if a run cannot tell
 * @param agreement the judgement at 95 %
 * @param why in words, why there is none; empty if there is one
 * @param shared in words, the sources that both results have in common
 */
public record ComparedResult(
        Found first,
        Found second,
        String id,
        OptionalDouble difference,
        Optional<Doubt> doubt,
        Agreement agreement,
        String why,
        List<String> shared) {
    /** Keeps a copy that cannot change. */
    public ComparedResult {
        shared = List.copyOf(shared);
    }

    /** What a difference says. */
    public enum Agreement {
        /** The difference is within its expanded uncertainty. */
        AGREE("agree"),
        /** The difference is larger than its expanded uncertainty. */
        DIFFER("differ"),
        /** A value or an uncertainty is missing. */
        NOT_JUDGED("not judged");

        private final String words;

        Agreement(String words) {
            this.words = words;
        }

        /** In words. */
        public String words() {
            return words;
        }
    }

    /**
     * How sure a difference is.
     *
     * @param u standard uncertainty
     * @param degreesOfFreedom effective ones, may be infinite
     * @param k coverage factor for 95 %
     */
    public record Doubt(double u, double degreesOfFreedom, double k) {
        /** The expanded uncertainty. */
        public double expanded() {
            return k * u;
        }
    }

    static ComparedResult of(Found first, Found second, String id) {
        if (first.value().isEmpty() || second.value().isEmpty()) {
            Found without = first.value().isEmpty() ? first : second;
            return notJudged(first, second, id, OptionalDouble.empty(), "no value in " + without.run());
        }
        OptionalDouble difference =
                OptionalDouble.of(second.value().getAsDouble() - first.value().getAsDouble());
        if (first.parts().isEmpty() || second.parts().isEmpty()) {
            Found without = first.parts().isEmpty() ? first : second;
            return notJudged(first, second, id, difference, "no uncertainty in " + without.run());
        }
        List<UncertaintyParts> parts =
                List.of(first.parts().get(), second.parts().get());
        WeightedSum sum = WeightedSum.of(new double[] {-1, 1}, parts);
        if (!(sum.standardUncertainty() > 0)) {
            return notJudged(first, second, id, difference, "the difference has no uncertainty");
        }
        Doubt doubt = new Doubt(sum.standardUncertainty(), sum.degreesOfFreedom(), sum.coverageFactor());
        boolean within = Math.abs(difference.getAsDouble()) <= doubt.expanded();
        return new ComparedResult(
                first,
                second,
                id,
                difference,
                Optional.of(doubt),
                within ? Agreement.AGREE : Agreement.DIFFER,
                "",
                inCommon(parts));
    }

    private static ComparedResult notJudged(
            Found first, Found second, String id, OptionalDouble difference, String why) {
        return new ComparedResult(
                first, second, id, difference, Optional.empty(), Agreement.NOT_JUDGED, why, List.of());
    }

    private static List<String> inCommon(List<UncertaintyParts> parts) {
        List<String> shared = new ArrayList<>();
        for (Common each : parts.get(0).common().keySet()) {
            if (parts.get(1).common().containsKey(each)) {
                shared.add(each.words());
            }
        }
        return shared;
    }

    /** The difference over its standard uncertainty. */
    public OptionalDouble zeta() {
        return doubt.isPresent()
                ? OptionalDouble.of(difference.orElseThrow() / doubt.get().u())
                : OptionalDouble.empty();
    }

    /** The difference over its expanded uncertainty. */
    public OptionalDouble score() {
        return doubt.isPresent()
                ? OptionalDouble.of(difference.orElseThrow() / doubt.get().expanded())
                : OptionalDouble.empty();
    }

    /** The unit of all numbers. */
    public Unit unit() {
        return first.unit();
    }
}
