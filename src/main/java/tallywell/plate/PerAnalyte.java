package tallywell.plate;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import tallywell.quantity.Quantity;

/**
 * A quantity for each analyte of an assay: one for all, or one by name.
 *
 * @param byName analyte name to quantity; the one entry of an assay with a single analyte has the name ""
 */
public record PerAnalyte(Map<String, Quantity> byName) {
    private static final String ANY = "";

    /** Keeps a copy that cannot change, in the same order. */
    public PerAnalyte {
        byName = Collections.unmodifiableMap(new LinkedHashMap<>(byName));
    }

    /** One quantity, whichever the analyte is. */
    public static PerAnalyte single(Quantity quantity) {
        return new PerAnalyte(Map.of(ANY, quantity));
    }

    /** Nothing for any analyte. */
    public static PerAnalyte none() {
        return new PerAnalyte(Map.of());
    }

    /** The quantity for an analyte, if it has one. */
    public Optional<Quantity> of(String analyte) {
        Quantity named = byName.get(analyte);
        return Optional.ofNullable(named != null ? named : byName.get(ANY));
    }

    /** Whether there is one quantity for whichever analyte. */
    public boolean isSingle() {
        return byName.containsKey(ANY);
    }

    /** All quantities, in the order they were given. */
    public Collection<Quantity> quantities() {
        return byName.values();
    }

    /** Whether no analyte has a quantity. */
    public boolean isEmpty() {
        return byName.isEmpty();
    }
}
