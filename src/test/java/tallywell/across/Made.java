package tallywell.across;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import tallywell.assess.Verdict;
import tallywell.budget.Basis;
import tallywell.quantity.Dilution;
import tallywell.quantity.Unit;
import tallywell.workup.Result;

/** Results made up for tests. */
final class Made {
    private Made() {}

    /** How sure a result is: own scatter that is well known, and named errors in common. */
    static UncertaintyParts parts(double own, Map<String, Double> common) {
        return parts(own, Double.POSITIVE_INFINITY, common);
    }

    static UncertaintyParts parts(double own, double freedom, Map<String, Double> common) {
        Map<Common, Double> sources = new LinkedHashMap<>();
        common.forEach((name, effect) -> sources.put(new Common(name, "", 1), effect));
        return new UncertaintyParts(sources, own, own, freedom, 2 * own, Basis.BUDGET);
    }

    static Found found(String run, double value, UncertaintyParts parts) {
        return found(run, 1, "Vat 1", "", "malic acid", Unit.GRAM_PER_LITRE, value, Verdict.REPORT, parts);
    }

    static Found found(String run, int slot, String name, String id) {
        return found(run, slot, name, id, "malic acid", Unit.GRAM_PER_LITRE, 1, Verdict.REPORT, parts(0.01, Map.of()));
    }

    static Found found(
            String run,
            int slot,
            String name,
            String id,
            String analyte,
            Unit unit,
            double value,
            Verdict verdict,
            UncertaintyParts parts) {
        Result result = new Result(
                "sample",
                Integer.toString(slot),
                OptionalInt.of(slot),
                name,
                analyte,
                1,
                List.of(),
                OptionalDouble.of(value),
                unit,
                2,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Dilution.NONE,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Set.of());
        return new Found(run, result, id, OptionalDouble.of(value), unit, verdict, Optional.of(parts));
    }

    static RunResults run(String name, Found... found) {
        return new RunResults(name, List.of(found));
    }
}
