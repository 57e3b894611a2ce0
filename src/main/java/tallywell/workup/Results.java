package tallywell.workup;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import tallywell.method.Sample;
import tallywell.plate.Content;
import tallywell.plate.Layout;
import tallywell.quantity.Quantity;
import tallywell.quantity.Unit;

/** From the values of wells to one result for each sample, control and spike. */
final class Results {
    private static final double PERCENT = 100;

    private final StepAnalysis step;
    private final Layout layout;
    private final Conversion conversion;

    Results(StepAnalysis step, Layout layout) {
        this.step = step;
        this.layout = layout;
        this.conversion = new Conversion(step.step().analyte(), step.step().report());
    }

    List<Result> samples() {
        List<Result> results = new ArrayList<>();
        for (int slot : layout.slots()) {
            List<WellResult> wells =
                    step.where(well -> well.content() instanceof Content.Sample sample && sample.slot() == slot);
            if (!wells.isEmpty()) {
                Sample sample = wells.get(0).trace().sample().orElseThrow();
                results.add(result(wells, OptionalInt.of(slot), sample.label(), OptionalDouble.empty()));
            }
        }
        return results;
    }

    List<Result> controls() {
        List<Result> results = new ArrayList<>();
        for (List<WellResult> wells : byWord(well -> well.content() instanceof Content.Control)) {
            Content.Control control = (Content.Control) wells.get(0).content();
            OptionalDouble assigned = control.assigned()
                    .of(step.step().analyte().name())
                    .map(conversion::assigned)
                    .orElse(OptionalDouble.empty());
            Result plain = result(wells, OptionalInt.empty(), control.name(), assigned);
            results.add(plain.withRecovery(recovery(plain, assigned)));
        }
        return results;
    }

    List<Result> spikes() {
        List<Result> results = new ArrayList<>();
        for (List<WellResult> wells : byWord(well -> well.content() instanceof Content.Spike)) {
            Content.Spike spike = (Content.Spike) wells.get(0).content();
            Sample sample = wells.get(0).trace().sample().orElseThrow();
            Optional<Quantity> added = spike.added().of(step.step().analyte().name());
            Result plain = result(wells, OptionalInt.empty(), sample.name(), OptionalDouble.empty());
            results.add(plain.withRecovery(
                    added.isPresent()
                            ? spikeRecovery(wells, spike, conversion.gPerL(added.get()))
                            : OptionalDouble.empty()));
        }
        return results;
    }

    private Collection<List<WellResult>> byWord(Predicate<WellResult> test) {
        Map<String, List<WellResult>> byWord = new LinkedHashMap<>();
        for (WellResult well : step.where(test)) {
            byWord.computeIfAbsent(well.content().word(), word -> new ArrayList<>())
                    .add(well);
        }
        return byWord.values();
    }

    private static OptionalDouble recovery(Result result, OptionalDouble assigned) {
        return result.value().isPresent() && assigned.isPresent() && assigned.getAsDouble() > 0
                ? OptionalDouble.of(PERCENT * result.value().getAsDouble() / assigned.getAsDouble())
                : OptionalDouble.empty();
    }

    /** (c spiked - (1 - φ) c sample) / added, of the solutions pipetted. */
    private OptionalDouble spikeRecovery(List<WellResult> wells, Content.Spike spike, double addedGPerL) {
        List<WellResult> samples =
                step.where(well -> well.content() instanceof Content.Sample sample && sample.slot() == spike.of());
        OptionalDouble spiked = mean(counting(wells), WellResult::concentration);
        OptionalDouble plain = mean(counting(samples), WellResult::concentration);
        return spiked.isPresent() && plain.isPresent() && addedGPerL > 0
                ? OptionalDouble.of(
                        PERCENT * (spiked.getAsDouble() - (1 - spike.fraction()) * plain.getAsDouble()) / addedGPerL)
                : OptionalDouble.empty();
    }

    private Result result(List<WellResult> wells, OptionalInt slot, String name, OptionalDouble assigned) {
        WellResult first = wells.get(0);
        List<WellResult> counting = counting(wells);
        OptionalDouble value = mean(counting, WellResult::value);
        double[] values =
                counting.stream().flatMapToDouble(well -> well.value().stream()).toArray();
        Set<Flag> flags = EnumSet.noneOf(Flag.class);
        wells.stream().filter(WellResult::used).forEach(well -> flags.addAll(well.flags()));
        if (wells.stream().anyMatch(well -> !well.used())) {
            flags.add(Flag.EXCLUDED);
        }
        if (counting.size() == 1) {
            flags.add(Flag.SINGLE_REPLICATE);
        }
        Unit unit = first.unit();
        return new Result(
                first.content().role(),
                first.content().word(),
                slot,
                name,
                step.step().report().nameOf(step.step().analyte()),
                step.number(),
                wells.stream().map(WellResult::well).toList(),
                value,
                unit,
                counting.size(),
                value.isPresent() ? Means.cvPercent(values) : OptionalDouble.empty(),
                mean(counting, WellResult::netDeltaA),
                Values.dilution(first.content(), first.trace().sample()),
                value,
                assigned,
                OptionalDouble.empty(),
                flags);
    }

    /**
     * The wells that the mean is taken over: used, and read. A well that was not read tells nothing and is left out with
     * a flag; one that is over range, or outside the standards, tells that the sample is, so it stays and leaves no value.
     */
    static List<WellResult> counting(List<WellResult> wells) {
        return wells.stream()
                .filter(well -> well.used())
                .filter(well -> well.deltaA().isPresent() || well.flags().contains(Flag.OVER_RANGE))
                .toList();
    }

    private static OptionalDouble mean(
            List<WellResult> wells, java.util.function.Function<WellResult, OptionalDouble> what) {
        if (wells.isEmpty() || wells.stream().anyMatch(well -> what.apply(well).isEmpty())) {
            return OptionalDouble.empty();
        }
        ToDoubleFunction<WellResult> number = well -> what.apply(well).orElseThrow();
        return OptionalDouble.of(Means.mean(wells.stream().mapToDouble(number).toArray()));
    }
}
