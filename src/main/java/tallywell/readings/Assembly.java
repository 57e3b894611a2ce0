package tallywell.readings;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import tallywell.notice.InputException;

/** Puts pieces together to blocks: those of the same plate, wavelength and name that differ only by time or wells. */
final class Assembly {
    private Assembly() {}

    /** What tells blocks apart. */
    private record Key(Optional<String> plate, OptionalDouble wavelength, String label, boolean processed) {
        static Key of(Facts facts) {
            return new Key(
                    facts.plate().map(name -> name.toLowerCase(Locale.ROOT)),
                    facts.wavelengthNm(),
                    facts.label().toLowerCase(Locale.ROOT),
                    facts.isProcessed());
        }
    }

    /** The blocks in the order of the file. */
    static List<Draft> drafts(List<Piece> pieces) throws InputException {
        Map<Key, List<Draft>> groups = new LinkedHashMap<>();
        List<Draft> drafts = new ArrayList<>();
        for (Piece piece : pieces) {
            List<Draft> group = groups.computeIfAbsent(Key.of(piece.facts()), none -> new ArrayList<>());
            if (!taken(piece, group)) {
                Draft draft = new Draft(piece);
                group.add(draft);
                drafts.add(draft);
            }
        }
        groups.values().forEach(Assembly::tellApart);
        return drafts;
    }

    private static boolean taken(Piece piece, List<Draft> group) throws InputException {
        return !group.isEmpty() && group.get(group.size() - 1).take(piece);
    }

    /** Readings without times are told apart by their numbers, if they have them. */
    private static void tellApart(List<Draft> group) {
        if (group.size() < 2) {
            return;
        }
        Set<OptionalInt> cycles = new HashSet<>();
        for (Draft draft : group) {
            cycles.add(draft.facts().cycle());
        }
        if (cycles.size() == group.size() && !cycles.contains(OptionalInt.empty())) {
            for (Draft draft : group) {
                String label = draft.facts().label();
                draft.setLabel((label.isEmpty() ? "" : label + ", ") + "reading "
                        + draft.facts().cycle().getAsInt());
            }
        } else {
            group.forEach(Draft::markTwin);
        }
    }
}
