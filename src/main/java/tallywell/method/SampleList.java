package tallywell.method;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What is in the slots.
 *
 * @param bySlot samples by the number of their slot, ascending
 * @param unstated slots for which the list says no dilution, so that their samples count as undiluted
 */
public record SampleList(Map<Integer, Sample> bySlot, Set<Integer> unstated) {
    /** Keeps copies that cannot change. */
    public SampleList {
        bySlot = java.util.Collections.unmodifiableMap(new TreeMap<>(bySlot));
        unstated = Set.copyOf(unstated);
    }

    /** A list of samples with different slots, each with its dilution. */
    public static SampleList of(Collection<Sample> samples) {
        return of(samples, Set.of());
    }

    /** A list of samples with different slots, some of which have no dilution in it. */
    public static SampleList of(Collection<Sample> samples, Set<Integer> unstated) {
        return new SampleList(samples.stream().collect(Collectors.toMap(Sample::slot, Function.identity())), unstated);
    }

    /**
     * The samples whose dilution may have been forgotten, so that a value would be too low by the whole factor: those
     * without one in a list that has one for others, and all of a list without any where the method knows no kind of sample
     * undiluted. A dilution of 1 that the list states is never among them.
     */
    public List<Sample> forgotten(AssayMethod method) {
        boolean none = unstated.size() == bySlot.size();
        return none && !method.bench().dilutesEverything()
                ? List.of()
                : bySlot.values().stream()
                        .filter(sample -> unstated.contains(sample.slot()))
                        .toList();
    }

    /** Barcodes that stand with different names, each with its samples. */
    public Map<String, List<Sample>> idsOfSeveralNames() {
        Map<String, List<Sample>> byId = bySlot.values().stream()
                .filter(sample -> !sample.id().isEmpty())
                .collect(Collectors.groupingBy(Sample::id, TreeMap::new, Collectors.toList()));
        byId.values()
                .removeIf(each -> each.stream().map(Sample::name).distinct().count() < 2);
        return byId;
    }

    /** Whether no sample has a dilution that the list states. */
    public boolean statesNoDilution() {
        return unstated.size() == bySlot.size();
    }

    /** The same list, where samples without a dilution are said to be undiluted. */
    public SampleList stated() {
        return new SampleList(bySlot, Set.of());
    }

    /** Every slot at dilution 1, named by its number. */
    public static SampleList plain(List<Integer> slots) {
        return of(slots.stream().map(Sample::plain).toList());
    }

    /** The sample in a slot; empty if the slot is unused. */
    public Optional<Sample> in(int slot) {
        return Optional.ofNullable(bySlot.get(slot));
    }
}
