package tallywell.readings;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a line above readings claims of them. Some words say it always, such as a standard deviation or a subtraction.
 * Others are everyday words too (a net weight, a mean of three flashes, the ratio of a mix): they say it only where the
 * line speaks of nothing else, and of nothing that stands nearer to the readings.
 */
final class Claim {
    private static final Set<String> EVERYDAY = Vocabulary.of("EVERYDAY");

    private static final Set<String> RATIO = Set.of("ratio", "ratios", "rapport", "rapports");

    /** Letters for absorbance and extinction. */
    private static final Set<String> UNITS_OF_ABSORBANCE = Set.of("a", "e", "ae", "do", "d", "nm");

    /** Words that change nothing of what the others say. */
    private static final Set<String> PLAIN = Vocabulary.of("PLAIN");

    private static final Pattern DELTA = Pattern.compile("(?iu)(?<!\\p{L})delta[ -]?(a|e|od|abs|ext|\\d)");

    /** A mass or a volume, as in net weight 3 g. */
    private static final Pattern AMOUNT =
            Pattern.compile("(?iu)(?<!\\p{L})(weight|mass|volume|vol|gewicht|masse|einwaage|volumen|poids|peso)[ :=,;]*"
                    + "\\d+([.,]\\d+)? ?(g|mg|kg|[µμu]?l|ml)(?!\\p{L})");

    private Claim() {}

    /** Whether a line gives the amount of something, and so names no readings. */
    static boolean isAmount(String text) {
        return AMOUNT.matcher(text).find();
    }

    /**
     * What a line says, without what its everyday words do not say here.
     *
     * @param line what the words of the line mean, each by itself
     * @param nearer what stands between the line and the readings
     */
    static Facts of(Facts line, String text, Facts nearer) {
        Facts claimed = line;
        List<String> words = Words.split(text.toLowerCase(Locale.ROOT).replaceAll("\\bin (au|mau|od|abs|%)", "$1"));
        String rest = words.stream().filter(word -> !EVERYDAY.contains(word)).collect(Collectors.joining(" "));
        boolean ofReadings = line.has(Meaning.VALUE) || DELTA.matcher(text).find();
        boolean elsewhere = !ofReadings && (!words.stream().allMatch(Claim::isOfReadings) || isAmount(text))
                || nearer.has(Meaning.VALUE);
        if (line.has(Meaning.STATISTIC) && !Facts.ofLine(rest).has(Meaning.STATISTIC)) {
            claimed = elsewhere || line.has(Meaning.OTHER_TIME) ? claimed.without(Meaning.STATISTIC) : claimed;
        }
        if (line.isProcessed() && isEveryday(text, words)) {
            boolean single =
                    nearer.wavelengthNm().isPresent() || line.wavelengthNm().isPresent();
            boolean ratio = words.stream().anyMatch(RATIO::contains) && single;
            claimed = elsewhere || ratio ? claimed.without(Meaning.PROCESSED) : claimed;
        }
        return claimed;
    }

    /** Whether nothing but everyday words of the line speaks of processed readings. */
    private static boolean isEveryday(String text, List<String> words) {
        String rest = text;
        for (String word : words) {
            rest = EVERYDAY.contains(word)
                    ? rest.replaceFirst("(?iu)(?<!\\p{L})" + Pattern.quote(word) + "(?!\\p{L})", " ")
                    : rest;
        }
        return !Facts.ofLine(rest).isProcessed();
    }

    /** Whether a word that means nothing but another signal than absorbance stands in a line. */
    static boolean isSignal(String text) {
        String lower = text.toLowerCase(Locale.ROOT).replace('_', ' ');
        boolean word = Words.split(lower).stream()
                .anyMatch(each -> !EVERYDAY.contains(each) && Words.of(each).contains(Meaning.OTHER_SIGNAL));
        return word || LineMeanings.isTransmitted(text);
    }

    /** Whether a unit is named behind a colon that is neither one of absorbance nor one of time. */
    static boolean isOtherUnit(String text) {
        String unit = text.replaceFirst("(?s)^[^:=：]*[:=：]", "").strip();
        List<String> words = Words.split(unit.toLowerCase(Locale.ROOT));
        return !unit.isEmpty()
                && words.stream()
                        .noneMatch(word -> Words.of(word).contains(Meaning.ABSORBANCE)
                                || Words.of(word).contains(Meaning.MILLI)
                                || TimeUnit.of(word).isPresent()
                                || UNITS_OF_ABSORBANCE.contains(word))
                && words.size() <= 2;
    }

    static boolean isOfReadings(String word) {
        return !Character.isLetter(word.charAt(0))
                || word.length() == 1
                || PLAIN.contains(word)
                || !Words.of(word).isEmpty()
                || TimeUnit.of(word).isPresent();
    }
}
