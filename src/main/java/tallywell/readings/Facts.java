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
 * @param doubt why it must be asked whether the readings are meant; empty if nothing speaks against them
 */
record Facts(
        Optional<String> plate,
        OptionalDouble wavelengthNm,
        Optional<Moment> time,
        OptionalInt cycle,
        String label,
        Set<Meaning> meanings,
        String doubt) {
    private static final double SHORTEST = 190;
    private static final double LONGEST = 1100;
    private static final int LONGEST_TEXT = 200;
    private static final int LONGEST_NAME = 40;

    /** Words of these meanings name nothing by themselves. */
    private static final Set<Meaning> ANNOUNCING =
            EnumSet.of(Meaning.WAVELENGTH, Meaning.TIME, Meaning.PLATE, Meaning.ROW, Meaning.COLUMN, Meaning.WELL);

    private static final Pattern NANOMETRES = Pattern.compile("(\\d{2,4})(?:[.,]\\d+)? ?(?:nm|нм|纳米)(?!\\p{L})");
    private static final Pattern LETTER_WAVELENGTH = Pattern.compile(
            "(?<![\\p{L}\\d])(?:[AEλ]|(?:OD|Abs|ABS|Ext)(?=[ _(\\[:=]{0,2}\\d))[ _(\\[:=]{0,2}(\\d{3,4})(?![\\d.,:])");
    private static final Pattern NUMBER = Pattern.compile("(?<![\\d.,:\\p{L}])(\\d{3,4})(?![\\d.,:])");
    private static final Pattern CLOCK =
            Pattern.compile("(?<![\\d:.-])\\d{1,3}:\\d\\d(?::\\d\\d)?(?:[.,]\\d+)?(?![\\d:])");
    private static final String UNITS = Vocabulary.alternatives("UNIT_MS", "UNIT_S", "UNIT_MIN", "UNIT_H", "UNIT_D");
    private static final Pattern DURATION = Pattern.compile(
            "(?<![\\d.,:\\p{L}])(\\d+(?:[.,]\\d+)?) ?(" + UNITS + ")(?!\\p{L})[.]?(?: (\\d+(?:[.,]\\d+)?) ?(" + UNITS
                    + ")(?!\\p{L}))?",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    private static final Pattern DATE = Pattern.compile(
            "\\d{4}[-/.]\\d\\d?[-/.]\\d\\d?|\\d\\d?[-/.]\\d\\d?[-/.]\\d{2,4}" + "|\\b\\d\\d? ?[AaPp][Mm]\\b");
    private static final Pattern TEMPERATURE = Pattern.compile("\\d+(?:[.,]\\d+)? ?(?:°|º|deg)? ?C(?!\\p{L})");
    private static final Pattern BARE_TIME = Pattern.compile("(?<![\\d.,:\\p{L}])[-+]?\\d+(?:[.,]\\d+)?(?![\\d.,:])");
    private static final Pattern PLATE = Pattern.compile(
            "(?<!\\p{L})(" + Vocabulary.alternatives("PLATE")
                    + ")[ _]?(?:(?:name|id|no|nr|number|nummer|code|barcode|n°|#|№)(?![\\p{L}])[.]?)?\\s*[:：=#]?\\s*"
                    + "([\\p{L}\\d](?:[\\p{L}\\d._/-]*[\\p{L}\\d])?)?",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    /** Words that lead on to what a plate is or is for, and are not its name. */
    private static final Set<String> PREPOSITIONS = Vocabulary.of("PREPOSITION");

    private static final Pattern CYCLE = Pattern.compile(
            "(?<!\\p{L})(?!(?:no|nr)(?!\\p{L}))(?:" + Vocabulary.alternatives("CYCLE")
                    + ")[ _]?(?:no|nr|number|#)?[.]?\\s*[:：=#]?\\s*(\\d{1,5})(?![\\d.,:]|\\s?\\p{L}{1,3}\\b)",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    /** Nothing known. */
    static Facts none() {
        return new Facts(
                Optional.empty(), OptionalDouble.empty(), Optional.empty(), OptionalInt.empty(), "", Set.of(), "");
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
        Set<Meaning> meanings = LineMeanings.of(text);
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
        return new Facts(plate, wavelength, time, cycle, label(rest), without(meanings, rest), "");
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
        if (DATE.matcher(rest).find() || meanings.contains(Meaning.OTHER_TIME) || isAside(rest.toString(), meanings)) {
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

    /** Whether a duration is not that of a reading, but of something done, or stands in a name or a remark. */
    private static boolean isAside(String text, Set<Meaning> meanings) {
        List<String> words = Words.split(text.toLowerCase(Locale.ROOT));
        if (words.stream().anyMatch(Vocabulary.of("AFTER")::contains)
                && !meanings.contains(Meaning.SAMPLE)
                && !meanings.contains(Meaning.NOTE)) {
            return false;
        }
        boolean named = meanings.contains(Meaning.TIME) || meanings.contains(Meaning.CYCLE);
        return meanings.contains(Meaning.ACTION)
                || !named && (meanings.contains(Meaning.SAMPLE) || meanings.contains(Meaning.NOTE));
    }

    /** What is left once everything known is taken out, unless it only announces that. */
    private static String label(StringBuilder rest) {
        String text = rest.toString()
                .replaceAll(
                        "(?iu)(?<!\\p{L})(wavelength|wellenlänge|time|zeit|t|plate|platte|at|bei|nm|longueur d'onde|temps|lambda)(?!\\p{L})",
                        " ")
                .replaceAll("[\\s;,|:=()\\[\\]@_-]+", " ")
                .strip();
        Set<Meaning> meanings = Words.in(text);
        boolean order = Words.split(text.toLowerCase(Locale.ROOT)).stream()
                .anyMatch(word -> Vocabulary.of("BEFORE").contains(word)
                        || Vocabulary.of("AFTER").contains(word));
        if (meanings.contains(Meaning.EVENT)
                && !order
                && !meanings.contains(Meaning.VALUE)
                && !meanings.contains(Meaning.RAW)
                && !meanings.contains(Meaning.PROCESSED)) {
            // Marks of pages and injections name no readings.
            return "";
        }
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
        return has(Meaning.STATISTIC)
                || has(Meaning.OTHER_SIGNAL) && !has(Meaning.ABSORBANCE)
                || (has(Meaning.OTHER) || has(Meaning.TEMPERATURE)) && !reading;
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
                completed.plate,
                completed.wavelengthNm,
                completed.time,
                completed.cycle,
                completed.label,
                both,
                completed.doubt);
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
                both,
                doubt.isEmpty() ? other.doubt : doubt);
    }

    Facts withTime(Optional<Moment> replaced) {
        return new Facts(plate, wavelengthNm, replaced, cycle, label, meanings, doubt);
    }

    Facts withCycle(OptionalInt replaced) {
        return new Facts(plate, wavelengthNm, time, replaced, label, meanings, doubt);
    }

    Facts withLabel(String replaced) {
        return new Facts(plate, wavelengthNm, time, cycle, replaced, meanings, doubt);
    }

    Facts withWavelength(double nm) {
        return new Facts(plate, OptionalDouble.of(nm), time, cycle, label, meanings, doubt);
    }

    /** What is said without the wavelength. */
    Facts withoutWavelength() {
        return new Facts(plate, OptionalDouble.empty(), time, cycle, label, meanings, doubt);
    }

    /** What is said without the plate. */
    Facts withoutPlate() {
        return new Facts(Optional.empty(), wavelengthNm, time, cycle, label, meanings, doubt);
    }

    Facts withDoubt(String reason) {
        return new Facts(plate, wavelengthNm, time, cycle, label, meanings, doubt.isEmpty() ? reason : doubt);
    }

    Facts withPlate(String name) {
        return new Facts(Optional.of(name), wavelengthNm, time, cycle, label, meanings, doubt);
    }

    Facts withMeanings(Collection<Meaning> replaced) {
        return new Facts(plate, wavelengthNm, time, cycle, label, Set.copyOf(replaced), doubt);
    }

    Facts plus(Meaning meaning) {
        Set<Meaning> more = EnumSet.of(meaning);
        more.addAll(meanings);
        return new Facts(plate, wavelengthNm, time, cycle, label, more, doubt);
    }

    Facts without(Meaning meaning) {
        Set<Meaning> fewer = EnumSet.noneOf(Meaning.class);
        fewer.addAll(meanings);
        fewer.remove(meaning);
        return new Facts(plate, wavelengthNm, time, cycle, label, fewer, doubt);
    }

    /** Whether a number may be a wavelength in nanometres that such readers measure at. */
    static boolean isWavelength(double value) {
        return value >= SHORTEST && value <= LONGEST;
    }
}
