package tallywell.readings;

import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a title, a heading or a cell of words says of the readings it belongs to.
 *
 * @param plate name of the plate
 * @param wavelengthNm the wavelength read at
 * @param time when it was read
 * @param cycle which reading in a row of readings it is
 * @param label what else names it, as written
 * @param meanings the meanings of its words
 */
record Facts(
        Optional<String> plate,
        OptionalDouble wavelengthNm,
        Optional<Moment> time,
        OptionalInt cycle,
        String label,
        Set<Meaning> meanings) {
    private static final double SHORTEST = 190;
    private static final double LONGEST = 1100;
    private static final int LONGEST_TEXT = 200;
    private static final int LONGEST_NAME = 40;

    /** Words of these meanings name nothing by themselves. */
    private static final Set<Meaning> ANNOUNCING =
            EnumSet.of(Meaning.WAVELENGTH, Meaning.TIME, Meaning.PLATE, Meaning.ROW, Meaning.COLUMN, Meaning.WELL);

    private static final Pattern NANOMETRES = Pattern.compile("(\\d{2,4})(?:[.,]\\d+)? ?nm\\b");
    private static final Pattern LETTER_WAVELENGTH = Pattern.compile(
            "(?<![\\p{L}\\d])(?:[AEλ]|(?:OD|Abs|ABS|Ext)(?=[ _(\\[:=]{0,2}\\d))[ _(\\[:=]{0,2}(\\d{3,4})(?![\\d.,:])");
    private static final Pattern NUMBER = Pattern.compile("(?<![\\d.,:\\p{L}])(\\d{3,4})(?![\\d.,:])");
    private static final Pattern CLOCK =
            Pattern.compile("(?<![\\d:.-])\\d{1,3}:\\d\\d(?::\\d\\d)?(?:[.,]\\d+)?(?![\\d:])");
    private static final Pattern DURATION = Pattern.compile(
            "(?<![\\d.,:\\p{L}])(\\d+(?:[.,]\\d+)?) ?(ms|s|sec|secs|seconds?|sek|sekunden?|min|mins|minutes?|minuten?|h|hr|hrs|hours?|std|stunden?)\\b"
                    + "(?: (\\d+(?:[.,]\\d+)?) ?(s|sec|secs|seconds?|sek|sekunden?|min|minutes?|minuten?)\\b)?",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern DATE = Pattern.compile(
            "\\d{4}[-/.]\\d\\d?[-/.]\\d\\d?|\\d\\d?[-/.]\\d\\d?[-/.]\\d{2,4}" + "|\\b\\d\\d? ?[AaPp][Mm]\\b");
    private static final Pattern RATE = Pattern.compile(
            "(?i)/ ?(min|s|sec|h|hr)(?!\\p{L})|(?<!\\p{L})per (minute|second|hour)|pro (minute|sekunde|stunde)");
    private static final Pattern LESS_BLANK =
            Pattern.compile("(?iu)[-–−] ?(blank|blk|leerwert|blindwert|blanc|blanco|bianco)(?!\\p{L})");
    private static final Pattern TEMPERATURE = Pattern.compile("\\d+(?:[.,]\\d+)? ?(?:°|º|deg)? ?C(?!\\p{L})");
    private static final Pattern BARE_TIME = Pattern.compile("(?<![\\d.,:\\p{L}])[-+]?\\d+(?:[.,]\\d+)?(?![\\d.,:])");
    private static final Pattern PLATE = Pattern.compile(
            "(?<!\\p{L})(plate|microplate|platte|mikroplatte|mikrotiterplatte|plaque|microplaque|placa|microplaca|piastra|plaat|płytka|barcode|strichcode)"
                    + "[ _]?(?:(?:name|id|no|nr|number|nummer|code|barcode|n°|#|№)(?![\\p{L}])[.]?)?\\s*[:=#]?\\s*"
                    + "([\\p{L}\\d](?:[\\p{L}\\d._/-]*[\\p{L}\\d])?)?",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    /** Words that lead on to what a plate is or is for, and are not its name. */
    private static final Set<String> PREPOSITIONS = Set.of(
            "of", "with", "for", "in", "on", "at", "is", "was", "mit", "von", "für", "im", "ist", "de", "avec", "pour",
            "à", "en", "con", "para", "di", "da", "per", "met", "van");

    private static final Pattern CYCLE = Pattern.compile(
            "(?<!\\p{L})(?:cycle|read|reading|measurement|scan|repeat|zyklus|messung|lesung|durchgang|lecture|mesure|ciclo|lectura|lettura|misura|meting|cyklus|cykl)"
                    + "[ _]?(?:no|nr|number|#)?[.]?\\s*[:=#]?\\s*(\\d{1,5})(?![\\d.,:]|\\s?\\p{L}{1,3}\\b)",
            Pattern.CASE_INSENSITIVE);

    /** Nothing known. */
    static Facts none() {
        return new Facts(Optional.empty(), OptionalDouble.empty(), Optional.empty(), OptionalInt.empty(), "", Set.of());
    }

    /** Reads a title or a line of a preamble. */
    static Facts ofLine(String line) {
        return of(line, false);
    }

    /** Reads the heading of a column, where a bare number beside a word for readings is a wavelength. */
    static Facts ofHeading(String heading) {
        return of(heading, true);
    }

    private static Facts of(String given, boolean heading) {
        String text = given.length() > LONGEST_TEXT ? given.substring(0, LONGEST_TEXT) : given;
        if (text.isBlank()) {
            return none();
        }
        Set<Meaning> meanings = settled(Words.in(text), text);
        if (heading
                && meanings.contains(Meaning.PATH)
                && meanings.contains(Meaning.VALUE)
                && !meanings.contains(Meaning.NOT)) {
            meanings.add(Meaning.PROCESSED);
        }
        StringBuilder rest = new StringBuilder(text);
        Optional<String> plate = plate(rest, meanings);
        OptionalDouble wavelength = wavelength(rest, meanings, heading);
        OptionalInt cycle = cycle(rest);
        Optional<Moment> time = time(rest, meanings);
        return new Facts(plate, wavelength, time, cycle, label(rest), without(meanings, rest));
    }

    /** Units that have been taken out with their numbers do not count as words: 10 min is no minimum. */
    private static Set<Meaning> without(Set<Meaning> meanings, StringBuilder rest) {
        Set<Meaning> left = Words.in(
                DURATION.matcher(TEMPERATURE.matcher(rest).replaceAll(" ")).replaceAll(" "));
        Set<Meaning> kept = EnumSet.noneOf(Meaning.class);
        for (Meaning meaning : meanings) {
            boolean quantity =
                    meaning == Meaning.STATISTIC || meaning == Meaning.OTHER || meaning == Meaning.TEMPERATURE;
            if (!quantity || left.contains(meaning)) {
                kept.add(meaning);
            }
        }
        return kept;
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
        if (text.matches("(?i).*\\d{3} ?(nm)? ?[-–−/] ?[A-Z]{0,3}\\d{3}( ?nm)?\\b.*")) {
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

    private static Optional<String> plate(StringBuilder rest, Set<Meaning> meanings) {
        if (!meanings.contains(Meaning.PLATE)) {
            return Optional.empty();
        }
        Matcher plate = PLATE.matcher(rest);
        while (plate.find()) {
            String name = plate.group(2);
            if (name == null
                    || PREPOSITIONS.contains(name.toLowerCase(Locale.ROOT))
                    || Words.of(name.toLowerCase(Locale.ROOT)).contains(Meaning.PLATE_KIND)
                    || Words.of(name.toLowerCase(Locale.ROOT)).contains(Meaning.PLATE)
                    || isPlateSize(name, rest, plate.end())) {
                continue;
            }
            boolean announced = rest.substring(plate.start(), plate.start(2)).matches("(?s).*[:=]\\s*");
            if (announced
                    && rest.length() - plate.start(2) <= LONGEST_NAME
                    && rest.indexOf(":", plate.start(2)) < 0
                    && rest.indexOf("=", plate.start(2)) < 0) {
                String all = rest.substring(plate.start(2)).strip();
                rest.setLength(plate.start());
                return Optional.of(all);
            }
            rest.delete(plate.start(), plate.end());
            return Optional.of(name);
        }
        return Optional.empty();
    }

    private static boolean isPlateSize(String name, StringBuilder text, int end) {
        return name.matches("(?i)\\d+[- ]?(well|wells|kavit.*)")
                || name.matches("\\d+") && text.substring(end).matches("(?is)[- ]?(well|wells|kavit|puits|pocillos).*");
    }

    private static OptionalDouble wavelength(StringBuilder rest, Set<Meaning> meanings, boolean heading) {
        boolean other = meanings.contains(Meaning.OTHER_WAVELENGTH);
        Pattern[] patterns = {NANOMETRES, LETTER_WAVELENGTH, NUMBER};
        for (Pattern pattern : patterns) {
            boolean named = meanings.contains(Meaning.WAVELENGTH)
                    || heading
                            && (meanings.contains(Meaning.VALUE)
                                    || meanings.contains(Meaning.RAW)
                                    || meanings.contains(Meaning.PROCESSED));
            if (pattern == NUMBER && !named || other && pattern != NANOMETRES) {
                continue;
            }
            Matcher matcher = pattern.matcher(rest);
            OptionalDouble found = OptionalDouble.empty();
            int from = 0;
            int to = 0;
            int hits = 0;
            while (matcher.find()) {
                double value = Double.parseDouble(matcher.group(1));
                if (value >= SHORTEST && value <= LONGEST) {
                    hits++;
                    found = OptionalDouble.of(value);
                    // A lone letter such as the A of A340 goes with its number; a word stays as a name.
                    boolean lone = matcher.start(1) - matcher.start() <= 1;
                    from = lone ? matcher.start() : matcher.start(1);
                    to = matcher.end();
                }
            }
            if (hits > 0) {
                if (hits > 1 || other) {
                    // Several wavelengths in one line say nothing of one block.
                    return OptionalDouble.empty();
                }
                rest.delete(from, to);
                return found;
            }
        }
        return OptionalDouble.empty();
    }

    private static OptionalInt cycle(StringBuilder rest) {
        Matcher cycle = CYCLE.matcher(rest);
        if (!cycle.find()) {
            return OptionalInt.empty();
        }
        int number = Integer.parseInt(cycle.group(1));
        rest.delete(cycle.start(), cycle.end());
        return OptionalInt.of(number);
    }

    private static Optional<Moment> time(StringBuilder rest, Set<Meaning> meanings) {
        if (DATE.matcher(rest).find() || meanings.contains(Meaning.OTHER_TIME)) {
            return Optional.empty();
        }
        boolean named = meanings.contains(Meaning.TIME);
        TimeHeading unit = named ? TimeHeading.of(rest.toString()) : TimeHeading.none();
        for (Pattern pattern : List.of(CLOCK, DURATION)) {
            Matcher matcher = pattern.matcher(rest);
            if (matcher.find()) {
                Optional<Moment> moment = unit.read(matcher.group().strip());
                if (moment.isPresent() && !matcher.find()) {
                    matcher.reset();
                    matcher.find();
                    rest.delete(matcher.start(), matcher.end());
                    return moment;
                }
                return Optional.empty();
            }
        }
        Matcher bare = BARE_TIME.matcher(rest);
        if (named && bare.find()) {
            Optional<Moment> moment = unit.read(bare.group());
            rest.delete(bare.start(), bare.end());
            return moment;
        }
        return Optional.empty();
    }

    /** What is left once everything known is taken out, unless it only announces that. */
    private static String label(StringBuilder rest) {
        String text = rest.toString()
                .replaceAll(
                        "(?iu)(?<!\\p{L})(wavelength|wellenlänge|time|zeit|t|plate|platte|at|bei|nm|longueur d'onde|temps|lambda)(?!\\p{L})",
                        " ")
                .replaceAll("[\\s;,|:=()\\[\\]@_-]+", " ")
                .strip();
        boolean says = Words.split(text.toLowerCase(Locale.ROOT)).stream()
                .filter(word -> Character.isLetter(word.charAt(0)))
                .anyMatch(word -> !ANNOUNCING.containsAll(Words.of(word))
                        || Words.of(word).isEmpty() && TimeUnit.of(word).isEmpty());
        return says ? text : "";
    }

    boolean has(Meaning meaning) {
        return meanings.contains(meaning);
    }

    /** Whether it says that the readings are not as the detector gave them. */
    boolean isProcessed() {
        return has(Meaning.PROCESSED);
    }

    /** Whether it says that the numbers are no readings of absorbance. */
    boolean isOtherQuantity() {
        boolean reading = has(Meaning.VALUE) || has(Meaning.RAW) || has(Meaning.PROCESSED) || has(Meaning.MILLI);
        return has(Meaning.STATISTIC) || (has(Meaning.OTHER) || has(Meaning.TEMPERATURE)) && !reading;
    }

    /** Whether anything is known that tells readings apart. */
    boolean isSomething() {
        return plate.isPresent()
                || wavelengthNm.isPresent()
                || time.isPresent()
                || cycle.isPresent()
                || !label.isEmpty();
    }

    /** These facts of a piece, completed by those of the title over it: whatever that says of the readings holds. */
    Facts under(Facts title) {
        Set<Meaning> both = EnumSet.noneOf(Meaning.class);
        both.addAll(meanings);
        both.addAll(title.meanings);
        Facts completed = or(title);
        return new Facts(
                completed.plate, completed.wavelengthNm, completed.time, completed.cycle, completed.label, both);
    }

    /** These facts, completed by those of something less near. */
    Facts or(Facts other) {
        Set<Meaning> both = EnumSet.noneOf(Meaning.class);
        both.addAll(meanings);
        if (label.isEmpty()) {
            both.addAll(other.meanings);
        }
        return new Facts(
                plate.or(other::plate),
                wavelengthNm.isPresent() ? wavelengthNm : other.wavelengthNm,
                time.or(other::time),
                cycle.isPresent() ? cycle : other.cycle,
                label.isEmpty() ? other.label : label,
                both);
    }

    Facts withTime(Optional<Moment> replaced) {
        return new Facts(plate, wavelengthNm, replaced, cycle, label, meanings);
    }

    Facts withCycle(OptionalInt replaced) {
        return new Facts(plate, wavelengthNm, time, replaced, label, meanings);
    }

    Facts withLabel(String replaced) {
        return new Facts(plate, wavelengthNm, time, cycle, replaced, meanings);
    }

    Facts withWavelength(double nm) {
        return new Facts(plate, OptionalDouble.of(nm), time, cycle, label, meanings);
    }

    Facts withPlate(String name) {
        return new Facts(Optional.of(name), wavelengthNm, time, cycle, label, meanings);
    }

    Facts withMeanings(Collection<Meaning> replaced) {
        return new Facts(plate, wavelengthNm, time, cycle, label, Set.copyOf(replaced));
    }

    Facts plus(Meaning meaning) {
        Set<Meaning> more = EnumSet.of(meaning);
        more.addAll(meanings);
        return new Facts(plate, wavelengthNm, time, cycle, label, more);
    }

    Facts without(Meaning meaning) {
        Set<Meaning> fewer = EnumSet.noneOf(Meaning.class);
        fewer.addAll(meanings);
        fewer.remove(meaning);
        return new Facts(plate, wavelengthNm, time, cycle, label, fewer);
    }

    /** Whether a number may be a wavelength in nanometres that such readers measure at. */
    static boolean isWavelength(double value) {
        return value >= SHORTEST && value <= LONGEST;
    }
}
