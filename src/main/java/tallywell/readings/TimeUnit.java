package tallywell.readings;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What times are counted in. */
enum TimeUnit {
    MILLISECOND(1e-3, "milliseconds", "UNIT_MS"),
    SECOND(1, "seconds", "UNIT_S"),
    MINUTE(60, "minutes", "UNIT_MIN"),
    HOUR(3600, "hours", "UNIT_H"),
    DAY(86_400, "days", "UNIT_D");

    private final double seconds;
    private final String label;

    @SuppressWarnings("ImmutableEnumChecker") // never changed after loading
    private final Set<String> words;

    TimeUnit(double seconds, String label, String kind) {
        this.seconds = seconds;
        this.label = label;
        this.words = Vocabulary.of(kind);
    }

    /** How many seconds one unit is. */
    double seconds() {
        return seconds;
    }

    /** The unit in the words of a message. */
    String label() {
        return label;
    }

    /** The unit that a word names. */
    static Optional<TimeUnit> of(String word) {
        String lower = word.toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(unit -> unit.words.contains(lower))
                .findFirst();
    }
}
