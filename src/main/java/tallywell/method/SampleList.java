package tallywell.method;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What is in the slots.
 *
 * @param bySlot samples by the number of their slot, ascending
 */
public record SampleList(Map<Integer, Sample> bySlot) {
    /** Keeps a copy that cannot change. */
    public SampleList {
        bySlot = java.util.Collections.unmodifiableMap(new TreeMap<>(bySlot));
    }

    /** A list of samples with different slots. */
    public static SampleList of(Collection<Sample> samples) {
        return new SampleList(samples.stream().collect(Collectors.toMap(Sample::slot, Function.identity())));
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
