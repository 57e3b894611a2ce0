package tallywell.readings;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** What the words of a line mean together, once a word of denial and signs such as a slash have had their say. */
final class LineMeanings {
    private static final Pattern RATE = Pattern.compile(
            "(?i)/ ?(min|s|sec|h|hr)(?!\\p{L})|(?<!\\p{L})per (minute|second|hour)|pro (minute|sekunde|stunde)");
    private static final Pattern LESS_BLANK = Pattern.compile(
            "[-–−] ?(" + Vocabulary.alternatives("BLANK") + ")(?!\\p{L})",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    /** Readings for a path of one centimetre, or turned over. */
    private static final Pattern DONE = Pattern.compile(
            "(?i)/ ?(?:cm|см)(?!\\p{L})|cm ?(?:\\^? ?[-−]1|⁻¹)|(?<![\\p{L}\\d/])1 ?/ ?(?:A|Abs|OD|E|absorbance)(?![\\p{L}/])");

    private static final Pattern TRANSMITTED =
            Pattern.compile("(?<![\\p{L}\\d])(?:% ?[Tt]|[Tt] ?[(\\[]? ?%)(?!\\p{L})");
    private static final Pattern VOLTS = Pattern.compile("[(\\[] ?[mµμ]?V ?[)\\]]");

    private static final Pattern TWO_WAVELENGTHS =
            Pattern.compile("(?is).*\\d{3} ?(nm)? ?[-–−/] ?[A-Z]{0,3}\\d{3}( ?nm)?\\b.*");

    private LineMeanings() {}

    /** The meanings of a line. */
    static Set<Meaning> of(String text) {
        return settled(Words.in(text), text);
    }

    /** Takes back what a word of denial denies. */
    private static Set<Meaning> settled(Set<Meaning> meanings, String text) {
        Set<Meaning> settled = EnumSet.noneOf(Meaning.class);
        settled.addAll(meanings);
        if (meanings.contains(Meaning.TIME) && !hasStatistic(text)) {
            settled.remove(Meaning.STATISTIC);
        }
        if (!meanings.contains(Meaning.TIME) && RATE.matcher(text).find()) {
            settled.add(Meaning.STATISTIC);
        }
        if (LESS_BLANK.matcher(text).find()) {
            settled.add(Meaning.PROCESSED);
        }
        boolean denied = meanings.contains(Meaning.NOT) || text.matches("(?s).*[:=]\\s*(-|—|0|n)\\s*");
        if (denied && settled.remove(Meaning.PROCESSED)) {
            settled.remove(Meaning.PATH);
        }
        if (DONE.matcher(text).find()) {
            settled.add(Meaning.PROCESSED);
        }
        if (VOLTS.matcher(text).find()) {
            settled.add(Meaning.OTHER_SIGNAL);
        }
        if (TRANSMITTED.matcher(text).find()) {
            settled.remove(Meaning.TIME);
            settled.add(Meaning.OTHER_SIGNAL);
        }
        if (meanings.contains(Meaning.NOT)) {
            settled.remove(Meaning.OTHER_SIGNAL);
        }
        if (TWO_WAVELENGTHS.matcher(text).matches()) {
            // Two wavelengths, one less or over the other.
            settled.add(Meaning.PROCESSED);
        }
        return settled;
    }

    /** Whether a word other than a unit of time, such as min for minutes, speaks of statistics. */
    private static boolean hasStatistic(String text) {
        return Words.split(text.toLowerCase(Locale.ROOT)).stream()
                .anyMatch(word -> Words.of(word).contains(Meaning.STATISTIC)
                        && TimeUnit.of(word).isEmpty());
    }

    /** Whether a line has the sign for per cent transmittance or for volts. */
    static boolean isTransmitted(String text) {
        return TRANSMITTED.matcher(text).find() || VOLTS.matcher(text).find();
    }
}
