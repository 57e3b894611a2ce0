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
    private static final Set<String> EVERYDAY = Set.of(
            "ratio",
            "ratios",
            "rapport",
            "rapports",
            "net",
            "netto",
            "delta",
            "minus",
            "mean",
            "average",
            "avg",
            "std",
            "min",
            "max",
            "minimum",
            "maximum",
            "sum",
            "range",
            "count",
            "n",
            "rate",
            "lag",
            "slope",
            "error",
            "media",
            "moyenne",
            "mittel",
            "mittelwert",
            "mittelwerte",
            "summe",
            "anzahl",
            "fehler",
            "somme",
            "somma",
            "suma");

    private static final Set<String> RATIO = Set.of("ratio", "ratios", "rapport", "rapports");

    /** Words that change nothing of what the others say. */
    private static final Set<String> PLAIN = Set.of(
            "of",
            "the",
            "per",
            "by",
            "and",
            "for",
            "all",
            "a",
            "der",
            "des",
            "die",
            "das",
            "und",
            "von",
            "pro",
            "je",
            "aller",
            "alle",
            "de",
            "du",
            "la",
            "le",
            "les",
            "et",
            "par",
            "d",
            "del",
            "della",
            "y",
            "e",
            "por",
            "di",
            "yes",
            "on",
            "ja",
            "oui",
            "si",
            "true",
            "data",
            "table",
            "daten",
            "tabelle",
            "blank",
            "blanks",
            "leerwert",
            "blindwert",
            "blanc",
            "blanco",
            "bianco",
            "standard",
            "duplicate",
            "duplicates",
            "triplicate",
            "triplicates",
            "two",
            "au",
            "mau",
            "od",
            "abs");

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

    private static boolean isOfReadings(String word) {
        return !Character.isLetter(word.charAt(0))
                || word.length() == 1
                || PLAIN.contains(word)
                || !Words.of(word).isEmpty()
                || TimeUnit.of(word).isPresent();
    }
}
