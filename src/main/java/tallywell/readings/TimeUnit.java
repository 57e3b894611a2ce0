package tallywell.readings;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What times are counted in. */
enum TimeUnit {
    MILLISECOND(1e-3, "milliseconds", "ms msec millisecond milliseconds millisekunden"),
    SECOND(
            1,
            "seconds",
            "s sec secs second seconds sek sekunde sekunden seconde secondes segundo segundos secondo secondi sekund"),
    MINUTE(60, "minutes", "min mins minute minutes minuten minuto minutos minuti minuut minuten minut"),
    HOUR(3600, "hours", "h hr hrs hour hours std stunde stunden heure heures hora horas ora ore uur godz"),
    DAY(86_400, "days", "d day days tag tage jour jours día días giorno giorni dag dagen");

    private final double seconds;
    private final String label;

    @SuppressWarnings("ImmutableEnumChecker") // made by Set.copyOf
    private final Set<String> words;

    TimeUnit(double seconds, String label, String words) {
        this.seconds = seconds;
        this.label = label;
        this.words = Set.copyOf(Arrays.stream(words.split(" ")).distinct().toList());
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
