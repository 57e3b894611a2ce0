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

    /** What tells blocks apart, but for the titles over them. */
    private record Name(Optional<String> plate, OptionalDouble wavelength, String label, boolean processed) {
        static Name of(Facts facts) {
            return new Name(
                    facts.plate().map(name -> name.toLowerCase(Locale.ROOT)),
                    facts.wavelengthNm(),
                    facts.label().toLowerCase(Locale.ROOT),
                    facts.isProcessed());
        }
    }

    /** A name under a title. */
    private record Key(Name name, String title) {
        static Key of(Piece piece) {
            return new Key(Name.of(piece.facts()), piece.title().toLowerCase(Locale.ROOT));
        }
    }

    /** The blocks in the order of the file. */
    static List<Draft> drafts(List<Piece> pieces) throws InputException {
        Map<Key, List<Draft>> groups = new LinkedHashMap<>();
        Map<Name, List<Draft>> named = new LinkedHashMap<>();
        List<Draft> drafts = new ArrayList<>();
        for (Piece piece : pieces) {
            List<Draft> group = groups.computeIfAbsent(Key.of(piece), none -> new ArrayList<>());
            if (!taken(piece, group)) {
                Draft draft = new Draft(piece);
                group.add(draft);
                named.computeIfAbsent(Name.of(piece.facts()), none -> new ArrayList<>())
                        .add(draft);
                drafts.add(draft);
            }
        }
        named.values().forEach(Assembly::tellApart);
        return drafts;
    }

    private static boolean taken(Piece piece, List<Draft> group) throws InputException {
        return !group.isEmpty() && group.get(group.size() - 1).take(piece);
    }

    /** Blocks of one name are told apart by the titles over them, or by the numbers of the readings. */
    private static void tellApart(List<Draft> group) {
        if (group.size() < 2) {
            return;
        }
        Set<String> titles = new HashSet<>();
        Set<OptionalInt> cycles = new HashSet<>();
        for (Draft draft : group) {
            titles.add(draft.title().toLowerCase(Locale.ROOT));
            cycles.add(draft.facts().cycle());
        }
        if (titles.size() == group.size()) {
            group.forEach(draft -> draft.nameAfter(draft.title()));
        } else if (cycles.size() == group.size() && !cycles.contains(OptionalInt.empty())) {
            group.forEach(
                    draft -> draft.nameAfter("reading " + draft.facts().cycle().getAsInt()));
        } else {
            group.forEach(Draft::markTwin);
        }
    }
}
